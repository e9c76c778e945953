import { compare, div, type Exact, equal, ONE, sub, ZERO } from '../text/exact.ts';

/*
 * Alligation: how much of each strength makes a mixture of a wanted strength. A method of pharmacy arithmetic, worked
 * in the course notes PHAR 4330, "Dilution and concentration". Shares are parts of one total; nothing is rounded.
 */

function outside(target: Exact): RangeError {
  return new RangeError(`no mixture of these strengths reaches ${String(target.n)}/${String(target.d)}`);
}

export type Blend = { readonly low: Exact; readonly high: Exact };

/**
 * Shares of a lower and a higher strength, adding up to one, that mix to `target`; all three in the same unit, and
 * weights and strengths on the same basis. Equal strengths need none of the higher.
 * Throws RangeError when the target is not between the two.
 */
export function alligate(low: Exact, high: Exact, target: Exact): Blend {
  if (compare(target, low) < 0 || compare(target, high) > 0) throw outside(target);
  if (equal(low, high)) return { low: ONE, high: ZERO };
  const share = div(sub(target, low), sub(high, low));
  return { low: sub(ONE, share), high: share };
}
