import { add, compare, div, type Exact, equal, exact, mul, neg, ONE, sign, sub, sum } from './exact-arithmetic.ts';

/** The greatest whole number not above `a`. */
function floor(a: Exact): Exact {
  if (typeof a.n === 'number' && typeof a.d === 'number') return { n: Math.floor(a.n / a.d) + 0, d: 1 };
  const [n, d] = [BigInt(a.n), BigInt(a.d)];
  const whole = n / d;
  return exact(n < 0n && whole * d !== n ? whole - 1n : whole);
}

const HALF: Exact = { n: 1, d: 2 };

/** The nearest whole number; halves go away from nought. */
function roundWhole(a: Exact): Exact {
  if (a.d === 1) return a;
  return a.n < 0 ? neg(roundWhole(neg(a))) : floor(add(a, HALF));
}

function requireStep(step: Exact): void {
  if (sign(step) <= 0) throw new RangeError('a rounding step is above nought');
}

/** The multiple of `step` nearest to `a`; halves go up, away from nought. Throws RangeError unless `step` is above nought. */
export function roundTo(a: Exact, step: Exact): Exact {
  requireStep(step);
  return mul(roundWhole(div(a, step)), step);
}

/**
 * The value in plain decimal digits with `places` decimals, rounded once on the exact value; halves go up, away from
 * nought, and a nought has no sign. Throws RangeError unless `places` is a whole number from 0 on.
 */
export function toFixed(a: Exact, places: number): string {
  if (!Number.isInteger(places) || places < 0) throw new RangeError(`not a number of decimals: ${places}`);
  const whole = BigInt(roundWhole(mul(a, exact(10n ** BigInt(places)))).n);
  const digits = String(whole < 0n ? -whole : whole).padStart(places + 1, '0');
  const point = digits.length - places;
  const text = places === 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`;
  return whole < 0n ? `-${text}` : text;
}

/**
 * Rounds every part to a multiple of `step` so that together they are `total` rounded to `step` (largest-remainder
 * method). Parts that do not add up to `total` are first scaled to it. Each is rounded down; the steps still missing
 * go one each to the largest remainders, a tie to the larger part, then to the one named first. A part that is
 * already a multiple of `step` therefore stays as it is whenever the parts add up to `total`.
 * Throws RangeError when `step` is not above nought, or the parts add up to nought and `total` does not.
 */
export function largestRemainder(parts: readonly Exact[], total: Exact, step: Exact): Exact[] {
  requireStep(step);
  const whole = sum(parts);
  const scale = equal(whole, total) ? ONE : div(total, whole);
  const shares = parts.map((part, place) => {
    const steps = div(mul(part, scale), step);
    const down = floor(steps);
    return { place, steps, down, rest: sub(steps, down) };
  });
  const missing = Number(sub(roundWhole(div(total, step)), sum(shares.map((share) => share.down))).n);
  const order = shares.toSorted((a, b) => compare(b.rest, a.rest) || compare(b.steps, a.steps) || a.place - b.place);
  const raised = new Set(order.slice(0, missing).map((share) => share.place));
  return shares.map(({ place, down }) => mul(raised.has(place) ? add(down, ONE) : down, step));
}
