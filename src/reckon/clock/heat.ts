import type { Place } from '../../text/span.ts';
import type { FactsOf, Minute } from '../model.ts';
import { minutesOf } from './applied.ts';
import type { Line } from './lines.ts';
import type { Applied, SpokenOf } from './runs.ts';

/** Heat from a minute on (or at no known time) for so many minutes, and the runs it is on. */
export type Heating = {
  readonly from: Minute | undefined;
  readonly minutes: number;
  readonly of: readonly Applied[];
  readonly place: Place;
  /** What the line says of it: its words and its remark. */
  readonly says: string;
};

/**
 * The heat of a `heat` line: its span, or its minutes; a time alone says nothing of how long. A `dry` line is a dryer,
 * unless its words say otherwise.
 */
export const heatingOf = (
  { fact, minute, end, mention, place }: Line<FactsOf<'heat' | 'dry'>>,
  spoken: SpokenOf,
): Heating => {
  const typed = (fact.minutes && minutesOf(fact.minutes)) ?? 0;
  const minutes = minute === undefined || end === undefined ? typed : Math.max(0, end - minute);
  const words = [...fact.words.map(({ word }) => word), fact.says?.text ?? ''].join(' ').trim();
  const says = fact.word === 'dry' ? ['dried', words].filter((word) => word !== '').join(', ') : words;
  return { from: minute, minutes, of: spoken(mention), place, says };
};

/** Minutes of the heat that fall within a run. */
export const heatWithin = ({ from, minutes, of }: Heating, run: Applied, off: Minute | undefined): number => {
  if (!of.includes(run)) return 0;
  if (from === undefined) return minutes;
  const to = from + minutes;
  return Math.max(0, Math.min(to, off ?? to) - Math.max(from, run.firstOn));
};

/** Whether heat was put on a run while it was on, whatever is known of how long. */
export const heats = ({ from, minutes, of }: Heating, run: Applied, off: Minute | undefined): boolean =>
  of.includes(run) &&
  (from === undefined ||
    (from < (off ?? Number.POSITIVE_INFINITY) && Math.max(from + minutes, from + 1) > run.firstOn));
