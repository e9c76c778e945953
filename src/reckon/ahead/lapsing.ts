import type { ClientFile, Journal } from '../../journal/journal.ts';
import { compareText } from '../../text/fold.ts';
import { reactionsOf } from '../client/state.ts';
import { productsToTest } from '../head/services.ts';
import type { VisitReckoned } from '../model.ts';
import { type SkinTestStanding, skinTestOn } from '../testing/skin-test.ts';
import { testsFor } from '../testing/tests.ts';

/**
 * Whose skin test lapses between two days, whether or not she is awaited.
 *
 * Reads: the clients, their reckoned visits, two days. Gives: one entry for each test that ends. Runs again: when a
 * client or a day changes.
 */

/** A skin test that holds on the day asked for, and no longer than a day by the end. */
export type Lapsing = {
  readonly client: ClientFile;
  /** The products it stands for; none where neither the test nor a visit names any. */
  readonly products: readonly string[];
  /** The last day on which it holds. */
  readonly last: string;
  readonly test: SkinTestStanding['test'];
};

/** Stands for every product, where a test names none and nothing was used yet. */
const ANY = '';

const lapsingOf = (
  journal: Journal,
  client: ClientFile,
  visits: readonly VisitReckoned[],
  on: string,
  until: string,
): Lapsing[] => {
  const past = visits.filter(({ date }) => date <= on);
  const salon = past.at(-1)?.salon ?? journal.salon;
  const tests = testsFor(client, salon.hours, on);
  const tested = tests.filter(({ kind }) => kind === 'skin').flatMap(({ products }) => products);
  const used = new Set([...tested, ...visits.flatMap(productsToTest)]);
  const reactions = reactionsOf(
    client,
    past.map(({ visit }) => visit),
    salon.hours,
    on,
  ).filter(({ by }) => by === 'visit');
  const products = used.size === 0 ? [ANY] : [...used].sort(compareText);
  const found = new Map<string, { last: string; test: SkinTestStanding['test']; products: string[] }>();
  for (const { product, status, last, test } of skinTestOn(
    { date: on, minute: undefined },
    products,
    tests,
    salon,
    reactions,
  )) {
    if (status !== 'valid' || last === undefined || last > until) continue;
    const key = `${last}\n${test === undefined ? '' : tests.indexOf(test)}`;
    const one = found.get(key) ?? { last, test, products: [] };
    if (product !== ANY) one.products.push(product);
    found.set(key, one);
  }
  return [...found.values()].map((one) => ({ client, ...one }));
};

/** Every skin test that holds on a day and lapses by another, both counted; the earliest first, then by name. */
export const lapsingTests = (
  journal: Journal,
  all: ReadonlyMap<string, readonly VisitReckoned[]>,
  on: string,
  until: string,
): Lapsing[] =>
  [...journal.clients.values()]
    .flatMap((client) => lapsingOf(journal, client, all.get(client.name) ?? [], on, until))
    .sort((a, b) => compareText(a.last, b.last) || compareText(a.client.name, b.client.name));
