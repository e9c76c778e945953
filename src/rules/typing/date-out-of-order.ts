import { standingOf } from '../../journal/where.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { daysBetween } from '../../text/dates.ts';
import { defineRule, type Found } from '../rule.ts';

/** Days out of order below which a page may well have been written up later. A choice, no source. */
const FAR = 45;

/** Visits in a file from which they show an order. A choice, no source. */
const FEWEST = 4;

/** A visit between its neighbours in the file: the one before, if any, and the one after. */
type Between = {
  readonly before: string | undefined;
  readonly visit: VisitReckoned;
  readonly after: string | undefined;
};

/** Where a list first goes back in time; -1 when it never does. */
const firstStep = (visits: readonly VisitReckoned[]): number =>
  visits.findIndex(({ date }, index) => date < (visits[index - 1]?.date ?? date));

/** How many days a date is outside its neighbours'; nought within. */
const daysOff = ({ before, after }: Between, date: string): number =>
  Math.max(before === undefined ? 0 : daysBetween(date, before), after === undefined ? 0 : daysBetween(after, date), 0);

/** The one visit without which the rest would be in order, and that is far off; undefined when none is, or either of two. */
const strayIn = (visits: readonly VisitReckoned[]): Between | undefined => {
  const step = firstStep(visits);
  if (step < 0) return undefined;
  // Taking out one of the two beside the step mends it, or nothing does.
  const strays = [step - 1, step].flatMap((index) => {
    const visit = visits[index];
    if (visit === undefined || firstStep(visits.filter((_, other) => other !== index)) >= 0) return [];
    const between = { before: visits[index - 1]?.date, visit, after: visits[index + 1]?.date };
    return [{ between, off: daysOff(between, visit.date) }];
  });
  const [worst, next] = strays.sort((a, b) => b.off - a.off);
  return worst === undefined || worst.off <= FAR || worst.off === next?.off ? undefined : worst.between;
};

/** The date with another year, where that puts it between its neighbours. */
const yearMended = (between: Between): string | undefined =>
  [between.before, between.after]
    .flatMap((date) => (date === undefined ? [] : [`${date.slice(0, 4)}${between.visit.date.slice(4)}`]))
    .find((date) => daysOff(between, date) === 0);

const found = (between: Between): Found => {
  const { before, after } = between;
  const { visit, date } = between.visit;
  const place = placeOf(visit, { line: 0 }, visit.entry.date?.at);
  const mended = yearMended(between);
  const beside = [before, after].filter((part) => part !== undefined);
  const stands = `${beside.length === 2 ? 'between' : 'beside'} ${listed(beside)}`;
  return {
    place,
    message: `${date} stands ${stands} in a list that is in order of date.`,
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
  bears: 'never',
  over: 'client',
  what: 'One visit of a client is weeks out of the order that the client’s visits in that file otherwise keep.',
  why: 'A year mistyped puts the visit elsewhere in the client’s story, and tests, holds and growth are reckoned by it.',
  source: { kind: 'notation' },
  *check(_, visits, journal) {
    if (visits.length < FEWEST) return;
    // Only their order is asked for: it changes when one of her own visits moves past another.
    const row = ({ visit }: VisitReckoned): number => standingOf(journal, visit).start;
    for (const file of new Set(visits.map(({ visit }) => visit.file))) {
      const written = visits.filter(({ visit }) => visit.file === file).sort((a, b) => row(a) - row(b));
      if (written.length < FEWEST || firstStep(written) < 0) continue;
      // Newest first is an order too.
      const stray = strayIn(written) ?? strayIn(written.toReversed());
      if (stray !== undefined) yield found(stray);
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
