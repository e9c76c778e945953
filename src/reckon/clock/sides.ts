import type { ClockReckoned, Minute, Run } from '../model.ts';

/**
 * Left and right of one bowl, which are meant to match.
 *
 * Reads: the clock of a visit. Gives: how far the sides of a bowl are apart. Runs again: when the visit changes.
 */
export type SideSpread = {
  readonly bowl: string | undefined;
  /** What both sides share of their zone: `back` of `back left` and `back right`; '' for the sides themselves. */
  readonly zone: string;
  readonly left: Run;
  readonly right: Run;
  /** Minutes that the right went on after the left; below nought before it. */
  readonly on: Minute;
  /** Minutes from first on that the right was on longer than the left; undefined while one of them is not off. */
  readonly longer: number | undefined;
};

const SIDES = ['left', 'right'] as const;

const sideOf = (zone: string): { readonly side: (typeof SIDES)[number]; readonly shared: string } | undefined => {
  const words = zone.split(' ');
  const side = SIDES.find((word) => words.includes(word));
  return side && { side, shared: words.filter((word) => word !== side).join(' ') };
};

/** Every pair of runs of one bowl whose zones differ by left and right alone, in the order of the clock. */
export const sidesOf = ({ runs }: Pick<ClockReckoned, 'runs'>): SideSpread[] => {
  const taken = new Set<Run>();
  return runs.flatMap((first, index) => {
    const own = sideOf(first.zone);
    if (own === undefined || taken.has(first)) return [];
    const second = runs.slice(index + 1).find((run) => {
      const other = sideOf(run.zone);
      const matches = run.bowl === first.bowl && other?.shared === own.shared && other.side !== own.side;
      return matches && !taken.has(run);
    });
    if (second === undefined) return [];
    taken.add(second);
    const [left, right] = own.side === 'left' ? [first, second] : [second, first];
    const longer =
      left.fromFirst === undefined || right.fromFirst === undefined ? undefined : right.fromFirst - left.fromFirst;
    return [{ bowl: first.bowl, zone: own.shared, left, right, on: right.firstOn - left.firstOn, longer }];
  });
};

/** When a run that is still on is looked at next, if it is looked at every so many minutes; undefined once it is off. */
export const nextLook = ({ off, firstOn, checks }: Run, every: number): Minute | undefined => {
  if (off !== undefined) return undefined;
  const looked = checks.flatMap(({ at }) => at ?? []);
  return Math.max(firstOn, ...looked) + every;
};
