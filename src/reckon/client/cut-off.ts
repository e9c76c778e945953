import type { ClientFile } from '../../journal/journal.ts';
import { daysBetween, isDate, isMonth, monthEnd } from '../../text/dates.ts';
import { compare, type Exact, exact } from '../../text/exact.ts';
import { recently } from '../../text/recently.ts';
import { regrowth } from '../../trade/growth.ts';
import { longestOf } from '../../trade/hair.ts';
import { isLengthUnit, toMillimetres } from '../../trade/units.ts';
import type { VisitReckoned } from '../model.ts';

/**
 * Hair that was treated and is cut off since: what has grown past the length of the hair is on the floor.
 *
 * Reads: the client's `hair` line, her `cut` lines that say how much is left, and her rate of growth. Gives: whether
 * hair of a day still hangs at a visit. Runs again: when one of them changes.
 */

/** The last day of a day, a month or a year as typed: the latest that it can have been. */
export const lastDayOf = (when: string): string =>
  isDate(when) ? when : isMonth(when) ? monthEnd(when) : `${when}-12-31`;

/** The longest that the last `hair … length` line can mean, in millimetres; undefined where it names none or has no end. */
export const hairLength: (client: ClientFile) => Exact | undefined = recently(({ entries }) => {
  for (const { entry } of entries.toReversed())
    for (const fact of entry.facts.toReversed()) {
      if (fact.word !== 'hair') continue;
      const said = fact.qualities.filter(({ quality }) => quality.word === 'length');
      if (said.length === 0) continue;
      const longest = said.flatMap(({ words }) => words.map(({ word }) => longestOf(word)));
      if (longest.length === 0 || longest.includes(undefined)) return undefined;
      return exact(Math.max(...longest.map(Number)));
    }
  return undefined;
});

const LEFT = [
  /(?<!\d)(\d+(?:[.,]\d+)?)\s?(mm|cm|in)\s(?:is\s|are\s)?left\b/iu,
  /(?<!\d\s?(?:mm|cm|in)?\s)\b(?:down\s)?to\s(?:about\s)?(\d+(?:[.,]\d+)?)\s?(mm|cm|in)\b(?!\s(?:of|off|from|below|above|under|over)\b)/iu,
];
const LEFT_IN_WORDS =
  /\b(?:cut(?:\sdown)?|down|back|short)?\s?(?:(?:in)?to|as)\s(?:an?\s|the\s|her\s|his\s)?(crop|pixie|chin|shoulders?)\b/iu;

const WORD_OF: Readonly<Record<string, string>> = { pixie: 'crop', shoulders: 'shoulder' };

/**
 * Millimetres that a `cut` line says are left (`cut "down to 3 cm"`, `cut "to a crop"`); undefined where it says what
 * came off, or nothing.
 */
export const leftByCut = (text: string): Exact | undefined => {
  for (const pattern of LEFT) {
    const [, figure, unit] = pattern.exec(text) ?? [];
    const of = unit?.toLowerCase();
    if (figure !== undefined && of !== undefined && isLengthUnit(of))
      return toMillimetres(exact(Math.round(Number(figure.replace(',', '.')) * 10), 10), of);
  }
  const word = LEFT_IN_WORDS.exec(text)?.[1]?.toLowerCase();
  const longest = word === undefined ? undefined : longestOf(WORD_OF[word] ?? word);
  return longest === undefined ? undefined : exact(longest);
};

/** The cuts of all of her hair that say how much was left, with their days, in order. Asked of every pair of visits. */
const cutsOf = recently(({ visits }: ClientFile): readonly { readonly day: string; readonly left: Exact }[] =>
  visits.flatMap(({ entry }) => {
    const day = entry.date?.date;
    if (day === undefined) return [];
    return entry.facts.flatMap((fact) => {
      if (fact.word !== 'cut' || fact.zones.length > 0 || fact.says === undefined) return [];
      const left = leftByCut(fact.says.text);
      return left === undefined ? [] : [{ day, left }];
    });
  }),
);

/** Whether what grew from the scalp since a day, up to another, is longer than a length in millimetres. */
const isGrownPast = (from: string, to: string, rate: Exact, length: Exact): boolean =>
  from < to && compare(regrowth(daysBetween(from, to), rate), length) >= 0;

/**
 * Whether hair treated on a day, or in a month or a year as typed, is cut off by the time of a visit: at the client's own
 * rate of growth, else the salon's, it has grown out past her length, or past what an earlier `cut` line left. Counted
 * from the latest day that it can have been, against the longest that a word of length means. False where the day or
 * the length is not said.
 */
export const isCutOff = (visit: VisitReckoned, when: string | undefined): boolean => {
  if (when === undefined || when === '') return false;
  const { client, date } = visit;
  const { rate } = visit.growth;
  const from = lastDayOf(when);
  if (from >= date) return false;
  const length = hairLength(client);
  if (length !== undefined && isGrownPast(from, date, rate, length)) return true;
  for (const { day, left } of cutsOf(client))
    if (day > from && day < date && isGrownPast(from, day, rate, left)) return true;
  return false;
};

/**
 * New growth in mm after so many days at a rate in mm a day, on her hair: no more than its length, since what grew
 * beyond is cut.
 */
export const grownOn = (client: ClientFile, days: number, rate: Exact): Exact => {
  const grown = regrowth(days, rate);
  const length = hairLength(client);
  return length !== undefined && compare(grown, length) > 0 ? length : grown;
};

/** Whether what was done at the roots so many days ago is cut off: all of the hair has grown since. */
export const isAllNew = (client: ClientFile, days: number, rate: Exact): boolean => {
  const length = hairLength(client);
  return length !== undefined && compare(regrowth(days, rate), length) >= 0;
};
