import { minutesOf } from './clock-applied.ts';
import type { Line } from './clock-lines.ts';
import type { FactsOf, Minute } from './model.ts';
import type { Applied, SpokenOf } from './runs.ts';

/** Heat from a minute on (or at no known time) for so many minutes, and the runs it is on. */
export type Heating = {
  readonly from: Minute | undefined;
  readonly minutes: number;
  readonly of: readonly Applied[];
};

/** The heat of a `heat` line: its span, or its minutes; a time alone says nothing of how long. */
export const heatingOf = ({ fact, minute, end, mention }: Line<FactsOf<'heat'>>, spoken: SpokenOf): Heating => {
  const typed = (fact.minutes && minutesOf(fact.minutes)) ?? 0;
  const minutes = minute === undefined || end === undefined ? typed : Math.max(0, end - minute);
  return { from: minute, minutes, of: spoken(mention) };
};

/** Minutes of the heat that fall within a run. */
export const heatWithin = ({ from, minutes, of }: Heating, run: Applied, off: Minute | undefined): number => {
  if (!of.includes(run)) return 0;
  if (from === undefined) return minutes;
  const to = from + minutes;
  return Math.max(0, Math.min(to, off ?? to) - Math.max(from, run.firstOn));
};
