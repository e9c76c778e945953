import { add, div, isZero, mul, neg, sign, sum } from '../../text/exact.ts';
import type { BowlReckoned } from '../model.ts';
import type { VisitPlan } from './plan.ts';

/** The first mix of a bowl and its further mixes: what is left belongs to all of them. */
const usedTogether = (group: readonly BowlReckoned[]): BowlReckoned[] => {
  const known = group.flatMap(({ used }) => (used === undefined ? [] : [used]));
  const over = sum(known.filter((used) => sign(used) < 0).map(neg));
  const spare = sum(known.filter((used) => sign(used) > 0));
  const mixed = group.map((bowl) => bowl.mixed);
  const whole = mixed.every((weight) => weight !== undefined) ? sum(mixed) : undefined;
  return group.map((bowl, index) => {
    const { used } = bowl;
    const together = index === 0 && group.length > 1 && whole !== undefined ? { mixedWithMore: whole } : {};
    if (used === undefined || isZero(over) || isZero(spare)) return { ...bowl, ...together };
    // More is left of one mix than it held, so the others give up their share of that.
    const share = sign(used) < 0 ? neg(used) : neg(mul(over, div(used, spare)));
    return { ...bowl, ...together, used: add(used, share) };
  });
};

const isMoreMixed = (bowls: VisitPlan['bowls']): boolean => {
  for (const { more } of bowls.values()) if (more !== undefined) return true;
  return false;
};

/**
 * Shares what is left of a bowl between its mixes, where `more` made some. What was used of a bowl alone is mixed, less
 * what is left and what was taken: below nought where more is left.
 */
export const shareLeft = (all: readonly BowlReckoned[], { bowls }: VisitPlan): readonly BowlReckoned[] => {
  if (!isMoreMixed(bowls)) return all;
  // In the order of the plan: a further mix stands after what it is a further mix of.
  const roots = new Map<string, string>();
  for (const { name, more } of bowls.values())
    roots.set(name, more === undefined ? name : (roots.get(more.of) ?? more.of));
  const groups = new Map<string, BowlReckoned[]>();
  for (const bowl of all) {
    const root = roots.get(bowl.name) ?? bowl.name;
    const group = groups.get(root);
    if (group === undefined) groups.set(root, [bowl]);
    else group.push(bowl);
  }
  const order = new Map(all.map(({ name }, index) => [name, index]));
  const placeOf = ({ name }: BowlReckoned): number => Number(order.get(name));
  return [...groups.values()].flatMap(usedTogether).sort((a, b) => placeOf(a) - placeOf(b));
};
