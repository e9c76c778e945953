import { STAGES } from '../../trade/stages.ts';
import { AIMS } from './aims.ts';
import { minutesToDepth } from './curve.ts';
import type { LiftSeries } from './series.ts';

/** Minutes that one place took on one visit to a depth, with what else the pace may hang on. */
export type Reading = {
  readonly client: string;
  readonly date: string;
  readonly strength: string;
  readonly zone: string;
  readonly heated: string;
  readonly depth: number;
  /** The depth on this head. */
  readonly stage: string;
  readonly minutes: number;
};

/** A strength as a key: `6 %`, or nothing when the notes do not say. */
export const strengthKey = (strength: number | undefined): string => (strength === undefined ? '' : `${strength} %`);

/** Whether heat was used, as a key. */
export const heatKey = (heat: number): string => (heat > 0 ? 'heat' : 'no heat');

/** A depth of one head as a key. */
export const stageKey = (client: string, depth: number): string => `${client} ${depth}`;

const WHOLE_STAGES: ReadonlySet<string> = new Set(STAGES);

/**
 * What a series teaches of pace: the minutes to the last stage reached, half steps among them, and to every whole stage
 * passed between its looks. What was there at the first look already teaches nothing, unless the look is the only one to
 * go by; then it is taken as reached at that look.
 */
export const readingsOf = ({ client, date, strength, zone, heat, curve }: LiftSeries): Reading[] => {
  const found = AIMS.flatMap(({ stage, depth }) => {
    const reached = minutesToDepth(curve, depth);
    return reached === undefined || reached.minutes <= 0 ? [] : [{ stage, depth, ...reached }];
  });
  const last = found.slice(-1);
  const passed = found.filter((one) => !one.byFirst && (WHOLE_STAGES.has(one.stage) || last.includes(one)));
  return (passed.length > 0 ? passed : last).map(({ depth, minutes }) => ({
    client,
    date,
    strength: strengthKey(strength),
    zone,
    heated: heatKey(heat),
    depth,
    stage: stageKey(client, depth),
    minutes,
  }));
};
