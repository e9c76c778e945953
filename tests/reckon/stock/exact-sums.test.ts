import { expect, test } from 'vitest';
import { add, type Exact, exact, mul, sub, toNumber, ZERO } from '../../../src/text/exact.ts';
import { chanceOf } from '../../simulate/chance.ts';

const BOWLS = 1_000_000;
/** Every weight below is a whole number of this part of a gram. */
const PARTS = 20 * 420;

test('a million random bowls taken off a shelf leave what whole-number arithmetic leaves, to the last part of a gram', () => {
  const { even } = chanceOf(5);
  let left: Exact = ZERO;
  let reference = 0n;
  let float = 0;
  for (let bowl = 0; bowl < BOWLS; bowl++) {
    // Tenths of a gram of base, in so many parts, and a developer at 1:1, 1:1.5, 1:2, 1:2.5 or 1:3.
    const tenths = 50 + Math.floor(even() * 900);
    const shared = [1, 2, 3, 4, 5, 6, 7][Math.floor(even() * 7)] ?? 1;
    const halves = 2 + Math.floor(even() * 5);
    const base = exact(tenths, 10 * shared);
    left = sub(sub(left, base), mul(base, exact(halves, 2)));
    reference -= BigInt((tenths * (2 + halves) * PARTS) / (20 * shared));
    float -= (tenths / 10 / shared) * (1 + halves / 2);
    if (bowl % 20 === 0) {
      left = add(left, exact(500));
      reference += BigInt(500 * PARTS);
      float += 500;
    }
  }
  expect(mul(left, exact(PARTS))).toEqual(exact(reference));
  // Floating point does drift here, so the test can tell.
  expect(float).not.toBe(toNumber(left));
});
