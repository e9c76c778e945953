import { add, compare, div, type Exact, equal, exact, mul, ONE, sub, sum, ZERO } from '../text/exact.ts';

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

/** Weights of a lower and a higher strength that make `total` of `target`. Throws RangeError as `alligate` does. */
export function blendWeights(total: Exact, target: Exact, low: Exact, high: Exact): Blend {
  const shares = alligate(low, high, target);
  return { low: mul(total, shares.low), high: mul(total, shares.high) };
}

/**
 * Shares of several strengths, adding up to one, in the order given. Every stronger is linked with every weaker one,
 * so each has its part; one that already has the wanted strength is left out, unless nothing else can make it.
 * Throws RangeError when no mixture of them has the target strength.
 */
export function alligateMany(strengths: readonly Exact[], target: Exact): Exact[] {
  const weaker = strengths.filter((strength) => compare(strength, target) < 0);
  const stronger = strengths.filter((strength) => compare(strength, target) > 0);
  if (weaker.length === 0 || stronger.length === 0) return equalShares(strengths, target);
  const lack = sum(weaker.map((strength) => sub(target, strength)));
  const excess = sum(stronger.map((strength) => sub(strength, target)));
  const whole = add(mul(lack, exact(stronger.length)), mul(excess, exact(weaker.length)));
  return strengths.map((strength) => {
    const side = compare(strength, target);
    return side === 0 ? ZERO : div(side > 0 ? lack : excess, whole);
  });
}

function equalShares(strengths: readonly Exact[], target: Exact): Exact[] {
  const same = strengths.filter((strength) => equal(strength, target)).length;
  if (same === 0) throw outside(target);
  return strengths.map((strength) => (equal(strength, target) ? exact(1, same) : ZERO));
}
