import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Reaction } from '../../records/schema/visit.ts';
import { bringsDye } from '../../trade/dye.ts';
import { dayOf } from '../bowl/plan.ts';
import { placeOf } from '../cite.ts';
import { minuteOf } from '../clock/settle.ts';
import type { BowlReckoned, Reacted, VisitReckoned } from '../model.ts';

/**
 * Reactions noted at visits, with what was on: a reaction under lightener alone says nothing of hair dye.
 *
 * Reads: a visit and its bowls. Gives: reactions. Runs again: when the visit or the shelf changes.
 */

/** Whether a bowl brings dye, oxidative or direct; a bowl of a clear shade, of lightener or of care brings none. */
export const holdsDye = ({ portions }: BowlReckoned): boolean =>
  portions.some(({ from, item, role, shade }) =>
    from === undefined ? role !== 'water' && bringsDye(item?.kind, shade?.toLowerCase()) : holdsDye(from),
  );

/**
 * The bowls that a reaction can have come of: those its line names, else all of the visit.
 */
const bowlsMeant = (fact: Reaction, bowls: readonly BowlReckoned[]): readonly BowlReckoned[] => {
  const named = new Set(fact.bowls.map(({ name }) => name.toUpperCase()));
  return named.size === 0 ? bowls : bowls.filter(({ name }) => named.has(name));
};

const NONE: readonly Reacted[] = [];

/** The reactions of one visit. */
export const reactedAt = (
  visit: Stood<Visit>,
  { bowls, salon }: Pick<VisitReckoned, 'bowls' | 'salon'>,
): readonly Reacted[] => {
  let reacted: Reacted[] | undefined;
  for (const fact of visit.entry.facts) {
    if (fact.word !== 'reaction') continue;
    const meant = bowlsMeant(fact, bowls);
    reacted ??= [];
    reacted.push({
      date: dayOf(visit),
      minute: fact.time && minuteOf(fact.time, salon.hours),
      bowls: meant.map(({ name }) => name),
      // Where no bowl is noted, nobody knows what was on.
      dye: meant.length === 0 || meant.some(holdsDye),
      lightener:
        meant.length === 0 || meant.some(({ portions }) => portions.some(({ item }) => item?.kind === 'lightener')),
      words: fact.words.map(({ word }) => word),
      says: fact.says?.text,
      place: placeOf(visit, fact, fact.time?.at),
    });
  }
  return reacted ?? NONE;
};

/** The reactions of a visit and of those before it, oldest first. */
export const reactedBy = (before: readonly Reacted[], now: readonly Reacted[]): readonly Reacted[] =>
  now.length === 0 ? before : before.length === 0 ? now : [...before, ...now];
