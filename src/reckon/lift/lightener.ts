import type { ShelfItem } from '../../journal/shelf.ts';
import { add, type Exact, mul, sign, toNumber, ZERO } from '../../text/exact.ts';
import { kindFacts } from '../../trade/kinds.ts';
import type { BowlReckoned } from '../model.ts';

/** What lightens in a bowl: the product, and the strength of the developer mixed in, per cent to one decimal. */
export type Lightening = { readonly product: ShelfItem; readonly strength: number | undefined };

const lightens = (item: ShelfItem | undefined): item is ShelfItem =>
  item?.kind !== undefined && kindFacts(item.kind).lightens;

const oneDecimal = (percent: Exact): number => Math.round(toNumber(percent) * 10) / 10;

/** The strength of the developers together, by weight; of the only one without a weight too. */
const developerStrength = ({ held }: BowlReckoned): number | undefined => {
  const developers = held.filter(({ role }) => role === 'developer');
  const [first] = developers;
  if (developers.length === 1) return first?.strength && oneDecimal(first.strength);
  let weight = ZERO;
  let peroxide = ZERO;
  for (const one of developers) {
    if (one.weight === undefined || one.strength === undefined) return undefined;
    weight = add(weight, one.weight);
    peroxide = add(peroxide, mul(one.weight, one.strength));
  }
  return sign(weight) > 0 ? Math.round((toNumber(peroxide) / toNumber(weight)) * 10) / 10 : undefined;
};

/**
 * What lightens in a bowl: the heaviest portion that can, or what lightens in the bowl it is taken out of. Undefined
 * when nothing does. A bowl taken out of another and mixed with developer again has no strength of its own here.
 */
export const lighteningOf = (bowl: BowlReckoned): Lightening | undefined => {
  // A list and not the program's stack: bowls may be poured into each other as often as the notes say.
  const waiting = [{ one: bowl, isThinned: false }];
  const seen = new Set<BowlReckoned>();
  for (let top = waiting.pop(); top !== undefined; top = waiting.pop()) {
    const { one, isThinned } = top;
    if (seen.has(one)) continue;
    seen.add(one);
    const product = ownLightener(one);
    if (product !== undefined) return { product, strength: isThinned ? undefined : developerStrength(one) };
    const thins = isThinned || one.held.some(({ role }) => role === 'developer');
    for (const { from } of one.held.toReversed()) if (from !== undefined) waiting.push({ one: from, isThinned: thins });
  }
  return undefined;
};

/** What lightens among a bowl's own portions, the most of it. */
const ownLightener = ({ held }: BowlReckoned): ShelfItem | undefined => {
  const weightOf = (weight: Exact | undefined): number => (weight === undefined ? 0 : toNumber(weight));
  const own = held.filter(({ item, role }) => role === 'base' && lightens(item));
  return own.toSorted((a, b) => weightOf(b.weight) - weightOf(a.weight))[0]?.item;
};
