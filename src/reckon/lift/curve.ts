import { aimDepth } from './aims.ts';
import { monotoneFit } from './monotone.ts';

/** A look at lifting hair: minutes since it went on, and the depths that what was seen can mean. */
export type LiftPoint = { readonly minute: number; readonly low: number; readonly high: number };

/** The curve at a minute that was looked at: the depth, and the band that the looks leave it. */
export type CurvePoint = {
  readonly minute: number;
  readonly depth: number;
  readonly least: number;
  readonly most: number;
};

/** A lift that never goes back: straight between its points, which stand at ascending minutes. */
export type LiftCurve = readonly CurvePoint[];

/** Minutes to a depth: as the curve has it, and between which looks it lies. */
export type Reached = {
  readonly minutes: number;
  /** The last look at which it was not there yet; 0 when none was. */
  readonly early: number;
  /** The first look at which it surely was; undefined when no look settles it. */
  readonly late: number | undefined;
  /** Already there at the first look, so that the minutes are an upper end. */
  readonly byFirst: boolean;
};

/** Depths nearer than this are one: half of the tenth that is shown. A choice. */
const ONE_DEPTH = 0.05;

/**
 * The curve through looks: the monotone fit of `monotone.ts`, so that a look that falls behind an earlier one is shared
 * out between them. The band at a look runs from what it and the looks before it must mean at least to what it and those
 * after it can mean at most.
 */
export const liftCurve = (points: readonly LiftPoint[]): LiftCurve => {
  const fitted = monotoneFit(points.map(({ minute, low, high }) => ({ x: minute, low, high })));
  const byMinute = new Map<number, CurvePoint>();
  for (const { x: minute, low, high, value: depth } of fitted) {
    const other = byMinute.get(minute);
    byMinute.set(minute, {
      minute,
      depth,
      least: Math.min(low, depth, other?.least ?? depth),
      most: Math.max(high, depth, other?.most ?? depth),
    });
  }
  const curve = [...byMinute.values()];
  return curve.map((point, index) => ({
    ...point,
    least: Math.max(...curve.slice(0, index + 1).map(({ least }) => least)),
    most: Math.min(...curve.slice(index).map(({ most }) => most)),
  }));
};

/** Minutes until the curve reaches a depth; undefined when it never does. */
export const minutesToDepth = (curve: LiftCurve, depth: number): Reached | undefined => {
  const most = Math.max(...curve.map((point) => point.depth));
  const target = Math.min(depth, most);
  const first = most < depth - ONE_DEPTH ? -1 : curve.findIndex((point) => point.depth >= target);
  const [before, after] = [curve[first - 1], curve[first]];
  if (after === undefined) return undefined;
  const short = before === undefined ? 0 : (after.depth - target) / (after.depth - before.depth);
  const minutes = after.minute - short * (after.minute - (before?.minute ?? 0));
  const sure = curve.find(({ least }) => least >= target - ONE_DEPTH)?.minute;
  return {
    minutes,
    early: curve.findLast((point) => point.most < target - ONE_DEPTH)?.minute ?? 0,
    late: sure === undefined ? undefined : Math.max(sure, minutes),
    byFirst: before === undefined,
  };
};

/** Minutes until a curve reaches a stage. Undefined when it never does, or the stage is no aim: past pale yellow. */
export const minutesTo = (curve: LiftCurve, stage: string): Reached | undefined => {
  const depth = aimDepth(stage);
  return depth === undefined ? undefined : minutesToDepth(curve, depth);
};
