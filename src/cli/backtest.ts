import { backtestLift, type LiftCase } from '../reckon/lift/backtest.ts';
import { liftOf } from '../reckon/lift/series.ts';
import { reckonAll } from '../reckon/visit.ts';
import { nearNames } from '../text/near.ts';
import { backtestTable } from './backtest-table.ts';
import { openJournal } from './open-journal.ts';
import { print, printJson } from './print.ts';
import { offered, refusal } from './refusal.ts';

export type BacktestOptions = { readonly others?: true; readonly json?: true };

const SUBJECTS: readonly string[] = ['lift'];

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
export const backtest = (subject: string, paths: readonly string[], { others, json }: BacktestOptions): number => {
  if (!SUBJECTS.includes(subject)) {
    const near = nearNames(subject, SUBJECTS);
    throw refusal(
      `\`${subject}\` is nothing that can be tested back.`,
      `Write ${offered((near.length > 0 ? near : SUBJECTS).map((name) => `backtest ${name}`))}.`,
    );
  }
  const { journal, unreadable } = openJournal(paths);
  const series = [...reckonAll(journal).values()].flat().flatMap(liftOf);
  const found = backtestLift(series, others ? 'others' : 'before');
  if (json) printJson({ ...found, cases: found.cases.map(caseJson) });
  else print(backtestTable(found));
  return unreadable.length > 0 ? 2 : 0;
};
