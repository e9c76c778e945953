import { hindsightLift, type LiftCase } from '../reckon/lift/hindsight.ts';
import { liftOf } from '../reckon/lift/series.ts';
import { reckonAll } from '../reckon/visit.ts';
import type { HindsightOptions } from './hindsight.ts';
import { hindsightTable } from './hindsight-table.ts';
import { openJournal } from './open-journal.ts';
import { print, printJson } from './print.ts';

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
  const { journal, unreadable } = openJournal(paths);
  const series = [...reckonAll(journal).values()].flat().flatMap(liftOf);
  const found = hindsightLift(series, others ? 'others' : 'before');
  if (json) printJson({ ...found, cases: found.cases.map(caseJson) });
  else print(hindsightTable(found));
  return unreadable.length > 0 ? 2 : 0;
};
