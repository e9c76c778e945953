import { hindsightLift, type LiftCase } from '../reckon/lift/hindsight.ts';
import { liftOf } from '../reckon/lift/series.ts';
import { ended, failedJson, leftOutLines, openReckoned } from './failed-clients.ts';
import type { HindsightOptions } from './hindsight-options.ts';
import { hindsightTable } from './hindsight-table.ts';
import { deliverJson } from './output.ts';
import { print } from './print.ts';

const tenths = (value: number | undefined): number | undefined => value && Math.round(value * 10) / 10;

const caseJson = ({ minutes, estimate, lastTime, lineMiddle, ...place }: LiftCase): unknown => ({
  ...place,
  minutes: tenths(minutes),
  estimate: estimate && {
    minutes: tenths(estimate.minutes),
    low: tenths(estimate.low),
    high: tenths(estimate.high),
  },
  lastTime: tenths(lastTime),
  lineMiddle: tenths(lineMiddle),
});

/** `bowlbook hindsight lift`: how far out the estimates are on a journal, beside two naive guesses. */
export const hindsightLiftOf = (paths: readonly string[], { others, json }: HindsightOptions): number => {
  const { unreadable, all, faults } = openReckoned(paths);
  const series = [...all.values()].flat().flatMap(liftOf);
  const found = hindsightLift(series, others ? 'others' : 'before');
  if (json) deliverJson({ ...found, cases: found.cases.map(caseJson), ...failedJson(faults) });
  else print([...leftOutLines(faults), hindsightTable(found)].join('\n\n'));
  return ended({ faults, unreadable });
};
