/** A value seen at `x`, known to lie from `low` to `high`; equal where it is known to a point. */
export type Observation = {
  readonly x: number;
  readonly low: number;
  readonly high: number;
  /** How much it counts beside the others; 1 when absent. */
  readonly weight?: number;
};

/**
 * How much the middle of a span pulls beside its ends. Within a span any value is as good as another; this settles
 * which, and is too little to move a value by a tenth where anything else decides. A choice, no source.
 */
export const MIDDLE_PULL = 0.001;

/** An observation with the value of the fit there. */
export type Fitted<T extends Observation = Observation> = T & { readonly value: number };

type Block<T extends Observation> = { readonly members: readonly T[]; readonly value: number };

/** Half the slope of the members' loss at `y`. */
const slopeAt = (members: readonly Observation[], y: number): number =>
  members.reduce((slope, { low, high, weight = 1 }) => {
    const outside = y < low ? y - low : y > high ? y - high : 0;
    return slope + weight * (outside + MIDDLE_PULL * (y - (low + high) / 2));
  }, 0);

/**
 * The members and the value with the least loss over them all. The slope is straight between neighbouring ends of spans,
 * not above nought at the lowest end and not below it at the highest.
 */
const blockOf = <T extends Observation>(members: readonly T[]): Block<T> => {
  const ends = [...new Set(members.flatMap(({ low, high }) => [low, high]))].sort((a, b) => a - b);
  let value = Math.min(...ends);
  let slope = slopeAt(members, value);
  for (const end of ends) {
    if (slope >= 0) break;
    const next = slopeAt(members, end);
    value = next > 0 ? value + ((end - value) * -slope) / (next - slope) : end;
    slope = next;
  }
  return { members, value };
};

/**
 * The values that never fall as `x` grows and are nearest to what was seen, by ascending `x`.
 *
 * Nearest: the weighted sum of squares of the distance from each value to its span (nought within it), plus
 * `MIDDLE_PULL` times the square of the distance to the span's middle. Every such loss is strictly convex, so there is
 * one answer, and pooling neighbours that fall finds it exactly: the pool-adjacent-violators algorithm (Ayer, Brunk,
 * Ewing, Reid and Silverman, Annals of Mathematical Statistics 26(4), 1955), which holds for any convex loss; both from
 * memory. Observations at one `x` share a value. Weights are above nought.
 */
export const monotoneFit = <T extends Observation>(observations: readonly T[]): Fitted<T>[] => {
  const byX = new Map<number, T[]>();
  for (const one of observations.toSorted((a, b) => a.x - b.x)) byX.set(one.x, [...(byX.get(one.x) ?? []), one]);
  const blocks: Block<T>[] = [];
  for (const members of byX.values()) {
    let block = blockOf(members);
    for (let last = blocks.at(-1); last !== undefined && last.value > block.value; last = blocks.at(-1)) {
      blocks.pop();
      block = blockOf([...last.members, ...block.members]);
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ members, value }) => members.map((one) => ({ ...one, value })));
};
