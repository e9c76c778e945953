import type { ClientFile } from '../../journal/journal.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { grantsColour } from '../../trade/letters.ts';
import { placeOf } from '../cite.ts';

/**
 * Letters of doctors about a client: the one thing that lifts a reaction, a positive test or black henna, and a hold
 * `to letter`.
 *
 * Reads: the client's entries. Gives: letters, oldest first. Runs again: when one of them changes.
 */
export type LetterOnFile = {
  /** ISO date. */
  readonly date: string;
  readonly text: string;
  /** Whether it lets her have hair colour. */
  readonly grants: boolean;
  readonly place: Place;
};

const lettersIn = ({ entries }: ClientFile): readonly LetterOnFile[] => {
  const letters: LetterOnFile[] = [];
  for (const stood of entries)
    for (const fact of stood.entry.facts) {
      // Without its day or its words nothing says what it lifts.
      if (fact.word !== 'letter' || fact.date === undefined || fact.says === undefined) continue;
      const { text } = fact.says;
      letters.push({
        date: fact.date.date,
        text,
        grants: grantsColour(text),
        place: placeOf(stood, fact, fact.date.at),
      });
    }
  return letters.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
};

/** The letters on file, oldest first. Rules on skin ask at every visit. */
export const lettersOf: (client: ClientFile) => readonly LetterOnFile[] = recently(lettersIn);

/**
 * The newest letter up to a day that lets her have colour, written on a day or later; undefined without one, and where a
 * newer letter takes it back.
 */
export const leaveSince = (client: ClientFile, from: string, upTo: string): LetterOnFile | undefined => {
  const last = lettersOf(client).findLast(({ date }) => date <= upTo);
  return last?.grants && last.date >= from ? last : undefined;
};

/** The day of the first letter of that kind, from a day on; '' is for ever. */
export const firstLeave = (client: ClientFile, from: string): string | undefined =>
  lettersOf(client).find(({ date, grants }) => grants && date >= from)?.date;
