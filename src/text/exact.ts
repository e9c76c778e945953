/** Exact rational numbers: the arithmetic, and the one rounding at the end. */
export {
  add,
  compare,
  div,
  type Exact,
  equal,
  exact,
  exactOf,
  isZero,
  max,
  min,
  mul,
  neg,
  ONE,
  sign,
  sub,
  sum,
  toNumber,
  ZERO,
} from './exact-arithmetic.ts';
export { largestRemainder, roundTo, toFixed } from './exact-rounding.ts';
