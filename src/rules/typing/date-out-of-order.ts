import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { daysBetween } from '../../text/dates.ts';
import { placeOf } from '../cite.ts';
import { defineRule, type Found } from '../rule.ts';

/** Days out of order below which a page may well have been written up later. A choice, no source. */
const FAR = 45;

const dateOf = (stood: Stood<Visit> | undefined): string | undefined => stood?.entry.date?.date;

const isInOrder = (dates: readonly string[]): boolean => dates.every((date, index) => date >= (dates[index - 1] ?? ''));

/** How many days a date is outside its neighbours'; nought within. */
const daysOff = (before: string | undefined, date: string, after: string | undefined): number =>
  Math.max(before === undefined ? 0 : daysBetween(date, before), after === undefined ? 0 : daysBetween(after, date), 0);

/** The one visit without which the rest would be in order, and is far off; undefined when there is none, or several. */
const strayIn = (visits: readonly Stood<Visit>[]): number | undefined => {
  const dates = visits.map((visit) => dateOf(visit) ?? '');
  const strays = dates.flatMap((date, index) =>
    isInOrder(dates.filter((_, other) => other !== index))
      ? [{ index, off: daysOff(dates[index - 1], date, dates[index + 1]) }]
      : [],
  );
  const [worst, next] = strays.sort((a, b) => b.off - a.off);
  return worst === undefined || worst.off <= FAR || worst.off === next?.off ? undefined : worst.index;
};

/** The date with another year, where that puts it between its neighbours. */
const yearMended = (before: string | undefined, date: string, after: string | undefined): string | undefined => {
  const years = [before, after].flatMap((one) => (one === undefined ? [] : [one.slice(0, 4)]));
  return years.map((year) => `${year}${date.slice(4)}`).find((one) => daysOff(before, one, after) === 0);
};

const found = (visits: readonly Stood<Visit>[], index: number): Found | undefined => {
  const visit = visits[index];
  const date = dateOf(visit);
  if (visit === undefined || date === undefined) return undefined;
  const [before, after] = [dateOf(visits[index - 1]), dateOf(visits[index + 1])];
  const place = placeOf(visit, { line: 0 }, visit.entry.date?.at);
  const mended = yearMended(before, date, after);
  const between = [before && `under ${before}`, after && `above ${after}`].filter((part) => part).join(' and ');
  return {
    place,
    message: `${date} stands ${between} in a list that is in order of date.`,
    todo: mended === undefined ? 'Correct the date, or move the visit to its place.' : `Write \`${mended}\`.`,
    ...(mended !== undefined && {
      label: 'another year',
      mend: { title: `write ${mended}`, edits: [{ place, put: mended }], sure: 'likely' },
    }),
  };
};

export default defineRule({
  name: 'date-out-of-order',
  family: 'typing',
  severity: 'mind',
  over: 'client',
  what: 'One visit of a client is weeks out of the order that the client’s visits in that file otherwise keep.',
  why: 'A year mistyped puts the visit elsewhere in the client’s story, and tests, holds and growth are reckoned by it.',
  source: { kind: 'notation' },
  *check(client) {
    const files = new Set(client.visits.map(({ file }) => file));
    for (const file of files) {
      const written = client.visits.filter((visit) => visit.file === file).sort((a, b) => a.line - b.line);
      if (written.length < 4) continue;
      // Newest first is an order too.
      const dates = written.map((visit) => dateOf(visit) ?? '');
      const [first = '', last = ''] = [dates[0], dates.at(-1)];
      const visits = first <= last || strayIn(written) !== undefined ? written : written.toReversed();
      const index = isInOrder(visits.map((visit) => dateOf(visit) ?? '')) ? undefined : strayIn(visits);
      const stray = index === undefined ? undefined : found(visits, index);
      if (stray !== undefined) yield stray;
    }
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2025-11-12 wren-abbott
    visit 2025-12-19 wren-abbott
    visit 2025-01-23 wren-abbott
          ^^^^^^^^^^
    visit 2026-03-06 wren-abbott`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2025-11-12 wren-abbott
    visit 2025-12-19 wren-abbott
    visit 2026-01-23 wren-abbott
    visit 2026-03-06 wren-abbott`,
});
