import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findFiles } from '../../src/journal/find.ts';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { needsOf } from '../../src/reckon/forecast/need.ts';
import type { VisitReckoned } from '../../src/reckon/model.ts';
import { stockLedger } from '../../src/reckon/stock/ledger.ts';
import { touchesOf } from '../../src/reckon/stock/touch.ts';
import { usageInAll } from '../../src/reckon/use/usage-by.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { toNumber } from '../../src/text/exact.ts';

const DAY = '2025-06-28';
const journal = joinSources(findFiles('journals/harbour-row').map((path) => readSource(path, readFileSync(path))));
const all = reckonAll(journal);
const visit = all.get('lettie-pascoe')?.find(({ date }) => date === DAY);
if (visit === undefined) throw new Error('the visit is not in the demo');

/** `bowl N 60 neon teal`, `left N 12 given`, `home N 12 + 180 conditioner`: 60 less 12 is 48 on the hair. */
test('what goes home out of a bowl counts once in the demo, for the bowl, usage, money, the shelf and the forecast', () => {
  const [bowl] = visit.bowls;
  expect(bowl?.used && toNumber(bowl.used)).toBe(48);
  expect(needsOf(visit).map(({ mixed, used }) => [mixed, used])).toEqual([[60, 48]]);
  expect(
    visit.uses.map(({ product, mixed, used, left }) => [
      product,
      ...[mixed, used, left].map((grams) => toNumber(grams)),
    ]),
  ).toEqual([
    ['neon', 60, 48, 12],
    ['conditioner', 180, 180, 0],
  ]);
  const inAll = usageInAll([visit], { from: DAY, to: DAY }, journal.shelf);
  expect(inAll && [inAll.mixed, inAll.used, inAll.left].map(toNumber)).toEqual([240, 228, 12]);
  // 60 g of neon at 8.40 for 100 g, 180 g of conditioner at 11.00 for 1000 g.
  expect(visit.money.cost).toBe(504 + 198);
  expect(touchesOf(journal.shelf, visit).map(({ label, amount }) => [label, amount && toNumber(amount)])).toEqual([
    ['neon teal', 60],
    // A wash of which no note says how much.
    ['clarify', undefined],
    ['conditioner', 180],
  ]);
  /** Grams that the shelf should hold at the next count. */
  const heldAt = (product: string, visits: readonly VisitReckoned[]): number => {
    const { lines } = stockLedger(journal, visits);
    const line = lines.find(({ item, shade }) => item.name === product && (shade === undefined || shade === 'teal'));
    const count = line?.counts.find(({ date }) => date === '2026-01-05');
    return count === undefined ? Number.NaN : toNumber(count.expected);
  };
  const visits = [...all.values()].flat();
  const others = visits.filter((one) => one !== visit);
  expect(heldAt('neon', others) - heldAt('neon', visits)).toBe(60);
  expect(heldAt('conditioner', others) - heldAt('conditioner', visits)).toBe(180);
});
