import { backtestLift, type LiftCase } from '../reckon/lift/backtest.ts';
import { liftOf } from '../reckon/lift/series.ts';
import { reckonAll } from '../reckon/visit.ts';
import type { BacktestOptions } from './backtest.ts';
import { backtestTable } from './backtest-table.ts';
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

/** `bowlbook backtest lift`: how far out the estimates are on a journal, beside two naive guesses. */
export const backtestLiftOf = (paths: readonly string[], { others, json }: BacktestOptions): number => {
  const { journal, unreadable } = openJournal(paths);
  const series = [...reckonAll(journal).values()].flat().flatMap(liftOf);
  const found = backtestLift(series, others ? 'others' : 'before');
  if (json) printJson({ ...found, cases: found.cases.map(caseJson) });
  else print(backtestTable(found));
  return unreadable.length > 0 ? 2 : 0;
};
