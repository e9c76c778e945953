import { isDeepStrictEqual } from 'node:util';
import { expect } from 'vitest';

/** `expect(a).toEqual(b)`, but quick where they are equal, as they are nearly always. */
export const expectSame = (a: unknown, b: unknown): void => {
  if (!isDeepStrictEqual(a, b)) expect(a).toEqual(b);
};
