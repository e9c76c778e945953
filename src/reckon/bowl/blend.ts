import type { ShelfItem } from '../../journal/shelf.ts';
import type { Name } from '../../records/schema/values.ts';
import { compare, type Exact, isZero, ONE, ZERO } from '../../text/exact.ts';
import { alligate } from '../../trade/alligation.ts';
import { listed, perCent, quoted } from '../say.ts';
import { percentTyped } from './developers.ts';
import type { BlendShare, Typed } from './part.ts';
import { strengthInName } from './part-names.ts';
import type { PartProblem } from './part-problems.ts';

type Shelf = ReadonlyMap<string, ShelfItem>;

/** Two developers and their shares of a strength, or why they cannot make it. */
export type Blended =
  | { readonly kind: 'blend'; readonly percent: Exact; readonly shares: readonly BlendShare[] }
  | { readonly kind: 'unknown'; readonly name: Name }
  | { readonly kind: 'problem'; readonly problem: PartProblem };

const problem = (kind: PartProblem['kind'], at: number, message: string, todo: string): Blended => ({
  kind: 'problem',
  problem: { kind, at, message, todo },
});

/** A developer's own per cent; water has none of it. */
const percentOfName = (name: string, shelf: Shelf): Exact | undefined => {
  const strength = shelf.get(name)?.strength;
  if (strength !== undefined) return percentTyped(strength);
  if (name === 'water' && !shelf.has(name)) return ZERO;
  return shelf.size === 0 ? strengthInName(name) : undefined;
};

/**
 * The shares of the developers of `7.5% from dev-6 dev-9`, by alligation (trade/alligation). `water` is 0 %. Three or
 * more developers have no one answer, so each needs its own amount.
 */
export const blendOf = ({ strength, at }: Typed, names: readonly Name[], shelf: Shelf): Blended => {
  const all: Omit<BlendShare, 'share'>[] = [];
  for (const name of names) {
    const item = shelf.get(name.name);
    if (item === undefined && shelf.size > 0 && name.name !== 'water') return { kind: 'unknown', name };
    const percent = percentOfName(name.name, shelf);
    if (percent === undefined) {
      const todo = 'Name two developers that have one, as in `7.5% from dev-6 dev-9`.';
      return problem('outside-blend', name.at, `\`${name.name}\` has no strength of its own to blend with.`, todo);
    }
    all.push({ item, label: name.name, strength: percent });
  }
  const labels = quoted(all.map(({ label }) => label));
  if (strength === undefined)
    return problem(
      'missing-weight',
      at,
      `The note blends ${labels} and does not say to what strength.`,
      'Write the strength before `from`, as in `7.5% from`.',
    );
  const target = percentTyped(strength);
  const inOrder = [...all].sort((a, b) => compare(a.strength, b.strength));
  const [low] = inOrder;
  const high = inOrder.at(-1);
  if (
    low === undefined ||
    high === undefined ||
    compare(target, low.strength) < 0 ||
    compare(target, high.strength) > 0
  ) {
    const made = [...new Set(inOrder.map((one) => perCent(one.strength)))].join(' to ');
    const makes = `${labels} ${all.length === 1 ? 'is' : 'make'} ${made}`;
    const todo = 'Name a weaker and a stronger developer, one on each side of it.';
    return problem('outside-blend', strength.at, `${makes}, and the note says ${perCent(target)}.`, todo);
  }
  if (all.length > 2)
    return problem(
      'missing-weight',
      at,
      `${all.length} developers make ${perCent(target)} in more than one way.`,
      `Write an amount of each, or name two of ${listed(all.map(({ label }) => label))}.`,
    );
  if (low === high) return { kind: 'blend', percent: target, shares: [{ ...low, share: ONE }] };
  const shares = alligate(low.strength, high.strength, target);
  const whole = all.map((one) => ({ ...one, share: one === low ? shares.low : shares.high }));
  return { kind: 'blend', percent: target, shares: whole.filter(({ share }) => !isZero(share)) };
};
