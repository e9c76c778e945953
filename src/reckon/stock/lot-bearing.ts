import type { Journal } from '../../journal/journal.ts';
import { shadeOf } from '../../records/bind/component.ts';
import { fold } from '../../text/fold.ts';
import { nearNames } from '../../text/near.ts';
import { datesIn, isBefore, namesIn } from './note-chunks.ts';

/** What decides whether a line can bear on a lot. */
export type Sought = {
  /** As it is compared. */
  readonly lot: string;
  readonly names: readonly string[];
  /** Its shades as records write them, where it came in as shades with a slash and no other. */
  readonly shades: ReadonlySet<string> | undefined;
  readonly shelf: Journal['shelf'];
  readonly developer: boolean;
  /** The day it came in first. */
  readonly arrived: string;
};

/** Tells of a line, by its first word and the rest of it, whether it can bear on the lot. */
export type Bears = (word: string, rest: string) => boolean;

const STRENGTH = /\d\s*(?:%|vol)/i;

/** Whether a part plainly gives one shade, and none of these: `30 cream 7/0`. Whatever is less plain may be any. */
const isOtherShade = (part: string, shades: ReadonlySet<string>): boolean => {
  const figures = part.split(/\s+/).filter((word) => /\p{N}/u.test(word));
  const slashed = figures.filter((word) => /^\d+\/[\p{L}\d]+$/u.test(word));
  const [only, ...more] = slashed;
  const rest = figures.filter((word) => word !== only);
  return (
    only !== undefined &&
    more.length === 0 &&
    rest.every((word) => /^\d+g?$/.test(word)) &&
    !shades.has(shadeOf(only, 0).shade)
  );
};

const MIXES: ReadonlySet<string> = new Set(['bowl', 'plus', 'weighed', 'home']);

/** Whether a test is plainly dated, and before the lot came in. */
const isEarlyTest = (word: string, rest: string, arrived: string): boolean => {
  if (word !== 'test') return false;
  const dates = datesIn(rest);
  return dates.length > 0 && dates.every((date) => isBefore(date, arrived));
};

/** What bears on the lot; `again` is for the caller to follow. */
export const bearing = ({ names, shades, shelf, developer, lot, arrived }: Sought): Bears => {
  const known = new Map<string, boolean>();
  const isSought = (typed: string): boolean => {
    let found = known.get(typed);
    if (found === undefined) {
      const name = fold(typed);
      found = names.includes(name) || (!shelf.has(name) && names.some((one) => nearNames(name, [one]).length > 0));
      known.set(typed, found);
    }
    return found;
  };
  const partBears = (part: string): boolean => {
    const typed = namesIn(part);
    if (typed.some(isSought)) return shades === undefined || !isOtherShade(part, shades);
    if (STRENGTH.test(part)) return developer;
    // A part that names nothing on the shelf can be anything, and so can one whose name is not there.
    return !typed.some((word) => shelf.has(fold(word)) || fold(word) === 'water');
  };
  const bears: Bears = (word, rest) => {
    if (fold(rest).includes(lot)) return true;
    if (isEarlyTest(word, rest, arrived)) return false;
    if (MIXES.has(word)) return rest.split(/[+,]/).some(partBears);
    return namesIn(rest).some(isSought) || (developer && STRENGTH.test(rest));
  };
  // A large journal says the same lines again and again.
  const lines = new Map<string, Map<string, boolean>>();
  return (word, rest) => {
    let rests = lines.get(word);
    if (rests === undefined) {
      rests = new Map();
      lines.set(word, rests);
    }
    let found = rests.get(rest);
    if (found === undefined) {
      found = bears(word, rest);
      rests.set(rest, found);
    }
    return found;
  };
};
