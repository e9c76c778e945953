/**
 * A rational number held exactly: `n / d`, in lowest terms, `d` above nought.
 * Both are plain numbers whenever both are safe integers, otherwise both are bigints, so equal values look equal.
 */
export type Exact = { readonly n: number | bigint; readonly d: number | bigint };

export const ZERO: Exact = { n: 0, d: 1 };
export const ONE: Exact = { n: 1, d: 1 };

const MOST = Number.MAX_SAFE_INTEGER;

const isSmall = (x: number): boolean => x <= MOST && x >= -MOST;

function gcd(a: number, b: number): number {
  let x = Math.abs(a);
  let y = b;
  while (y !== 0) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x;
}

function gcdBig(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/** Lowest terms of two safe integers, `d` above nought. */
function reduce(n: number, d: number): Exact {
  if (d === 1) return { n: n + 0, d };
  const g = gcd(n, d);
  return { n: n / g + 0, d: d / g };
}

function reduceBig(n: bigint, d: bigint): Exact {
  if (d === 0n) throw new RangeError('division by nought');
  const g = d < 0n ? -gcdBig(n, -d) : gcdBig(n, d);
  const [top, bottom] = [n / g, d / g];
  const [low, high] = [Number(top), Number(bottom)];
  return isSmall(low) && isSmall(high) ? { n: low, d: high } : { n: top, d: bottom };
}

/** The exact value `n / d` of two whole numbers. Throws RangeError when one is not whole or `d` is nought. */
export function exact(n: number | bigint, d: number | bigint = 1): Exact {
  if (typeof n === 'number' && typeof d === 'number' && isSmall(n) && isSmall(d)) {
    if (!Number.isInteger(n) || !Number.isInteger(d)) throw new RangeError(`not whole numbers: ${n} / ${d}`);
    if (d === 0) throw new RangeError('division by nought');
    return d < 0 ? reduce(-n, -d) : reduce(n, d);
  }
  return reduceBig(BigInt(n), BigInt(d));
}

/**
 * The exact value of a number as typed. Up to six decimals are taken as they stand; beyond, a whole number of
 * twenty-fourths (what the signs ½ ⅓ ¼ ⅙ ⅛ can write) is taken as that fraction, anything else as its shortest
 * decimal digits. Throws RangeError when the number is not finite.
 */
export function exactOf(x: number): Exact {
  if (!Number.isFinite(x)) throw new RangeError(`not a finite number: ${x}`);
  if (Number.isInteger(x)) return exact(x);
  // A quotient of two safe integers is rounded as its decimal text is, so equality means these are the typed digits.
  for (let scale = 10; scale <= 1_000_000; scale *= 10) {
    const whole = Math.round(x * scale);
    if (whole / scale === x && isSmall(whole)) return reduce(whole, scale);
  }
  const parts = Math.round(x * 24);
  // Whole and sign are added as floats before they come here, which can cost the last bits.
  if (Math.abs(parts / 24 - x) <= 4 * Number.EPSILON * Math.abs(x)) return exact(parts, 24);
  const [digits = '', power = '0'] = String(x).split('e');
  const [whole = '', decimals = ''] = digits.split('.');
  const scale = decimals.length - Number(power);
  return exact(BigInt(whole + decimals), 10n ** BigInt(scale));
}

/** `a + b`. */
export function add(a: Exact, b: Exact): Exact {
  const { n: an, d: ad } = a;
  const { n: bn, d: bd } = b;
  if (an === 0) return b;
  if (typeof an === 'number' && typeof ad === 'number' && typeof bn === 'number' && typeof bd === 'number') {
    if (ad === bd && isSmall(an + bn)) return reduce(an + bn, ad);
    const left = an * bd;
    const right = bn * ad;
    const d = ad * bd;
    if (isSmall(left) && isSmall(right) && isSmall(d) && isSmall(left + right)) return reduce(left + right, d);
  }
  return reduceBig(BigInt(an) * BigInt(bd) + BigInt(bn) * BigInt(ad), BigInt(ad) * BigInt(bd));
}

/** `-a`. */
export function neg(a: Exact): Exact {
  return { n: typeof a.n === 'number' ? 0 - a.n : -a.n, d: a.d };
}

/** `a - b`. */
export function sub(a: Exact, b: Exact): Exact {
  return b.n === 0 ? a : add(a, neg(b));
}

/** `a × b`. */
export function mul(a: Exact, b: Exact): Exact {
  const { n: an, d: ad } = a;
  const { n: bn, d: bd } = b;
  if (bn === 1 && bd === 1) return a;
  if (typeof an === 'number' && typeof ad === 'number' && typeof bn === 'number' && typeof bd === 'number') {
    const n = an * bn;
    const d = ad * bd;
    if (isSmall(n) && isSmall(d)) return reduce(n, d);
  }
  return reduceBig(BigInt(an) * BigInt(bn), BigInt(ad) * BigInt(bd));
}

/** `a ÷ b`. Throws RangeError when `b` is nought. */
export function div(a: Exact, b: Exact): Exact {
  const { n: an, d: ad } = a;
  const { n: bn, d: bd } = b;
  // A scale shows whole grams, and money is in whole minor units.
  if (bn === 1 && bd === 1) return a;
  if (typeof an === 'number' && typeof ad === 'number' && typeof bn === 'number' && typeof bd === 'number') {
    const n = an * bd;
    const d = ad * bn;
    if (isSmall(n) && isSmall(d)) return exact(n, d);
  }
  return reduceBig(BigInt(an) * BigInt(bd), BigInt(ad) * BigInt(bn));
}

/** -1, 0 or 1: below, at or above nought. */
export function sign(a: Exact): -1 | 0 | 1 {
  return a.n < 0 ? -1 : a.n > 0 ? 1 : 0;
}

/** -1, 0 or 1: `a` is less than, equal to or more than `b`. */
export function compare(a: Exact, b: Exact): -1 | 0 | 1 {
  if (a.d === b.d) return a.n < b.n ? -1 : a.n > b.n ? 1 : 0;
  if (typeof a.n === 'number' && typeof b.n === 'number') {
    const left = a.n * Number(b.d);
    const right = b.n * Number(a.d);
    // In lowest terms two denominators are never of one value.
    if (isSmall(left) && isSmall(right)) return left < right ? -1 : 1;
  }
  return sign(sub(a, b));
}

/** Whether two exact values are the same value. */
export function equal(a: Exact, b: Exact): boolean {
  return a.n === b.n && a.d === b.d;
}

/** Whether the value is nought. */
export function isZero(a: Exact): boolean {
  return a.n === 0;
}

/** The lesser of the values given. */
export function min(first: Exact, ...rest: readonly Exact[]): Exact {
  return rest.reduce((least, x) => (compare(x, least) < 0 ? x : least), first);
}

/** The greater of the values given. */
export function max(first: Exact, ...rest: readonly Exact[]): Exact {
  return rest.reduce((most, x) => (compare(x, most) > 0 ? x : most), first);
}

/** The values added up; nought for an empty list. */
export function sum(list: readonly Exact[]): Exact {
  return list.reduce(add, ZERO);
}

/** The floating-point number for drawing and sorting, right to its last bits; never for a further reckoning. */
export function toNumber(a: Exact): number {
  if (typeof a.n === 'number' && typeof a.d === 'number') return a.n / a.d;
  const [n, d] = [BigInt(a.n), BigInt(a.d)];
  const [top, bottom] = [spareBits(n), spareBits(d)];
  return (Number(n >> top) / Number(d >> bottom)) * 2 ** Number(top - bottom);
}

/** How many low bits can go before what is left fits a float with room to spare; it keeps far more than a float holds. */
function spareBits(x: bigint): bigint {
  return BigInt(Math.max(0, 4 * x.toString(16).length - 500));
}
