/** Numbers from a seed: the same seed gives the same numbers on every machine. */
export type Chance = { readonly even: () => number; readonly normal: () => number };

/** The generator mulberry32 (Tommy Ettinger, public domain, from memory) and the polar method for normal values. */
export const chanceOf = (seed: number): Chance => {
  let state = seed >>> 0;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = (): number => {
    for (;;) {
      const [x, y] = [2 * even() - 1, 2 * even() - 1];
      const size = x * x + y * y;
      if (size > 0 && size < 1) return x * Math.sqrt((-2 * Math.log(size)) / size);
    }
  };
  return { even, normal };
};
