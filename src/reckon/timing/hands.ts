import type { Place } from '../../text/span.ts';
import { isColour } from '../head/services.ts';
import type { Minute, VisitReckoned } from '../model.ts';

/** One hand putting colour on one head, from a minute to a minute of a day; the time it develops is not in it. */
export type HandOn = {
  /** ISO date. */
  readonly date: string;
  readonly by: string;
  readonly client: string;
  readonly bowl: string;
  readonly from: Minute;
  readonly to: Minute;
  /** The span of the `on` line. */
  readonly place: Place;
};

/**
 * The hands of a visit: a span of an `on` line is by whom the line says, else by whom the visit is. A time without a
 * span, a hedged one, and a visit that is shared between stylists without a word of whose hand, say nothing.
 */
export const handsOf = ({ visit, client, date, clock, bowls }: VisitReckoned): HandOn[] => {
  const hands: HandOn[] = [];
  if (clock.runs.every(({ spanned }) => !spanned)) return hands;
  const { facts, by } = visit.entry;
  const isShared = facts.some(({ word }) => word === 'split');
  const lines = new Set<number>();
  for (const { bowl, spanned, about, firstOn, allOn, onPlace } of clock.runs) {
    if (!spanned || about || allOn <= firstOn || bowl === undefined || lines.has(onPlace.line)) continue;
    const fact = facts.find(({ line }) => line === onPlace.line);
    const hand = fact?.by ?? (isShared ? undefined : by);
    const mixed = bowls.find(({ name }) => name === bowl);
    if (hand === undefined || mixed === undefined || !isColour(mixed)) continue;
    lines.add(onPlace.line);
    hands.push({ date, by: hand.name, client: client.name, bowl, from: firstOn, to: allOn, place: onPlace });
  }
  return hands;
};
