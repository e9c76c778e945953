import type { Depth, Seen, Stage } from '../../records/schema/values.ts';
import { stageSpan } from '../../trade/stages.ts';
import { STEPS } from './aims.ts';

/** Depths that something seen can mean; equal where it means one. */
export type DepthSpan = { readonly low: number; readonly high: number };

/** How far out a hedged depth or stage may be, and how much lighter than 7 a `7+` is at most: half a step, no source. */
const HALF = 0.5;

const ofDepth = ({ value, to = value, plus, about }: Depth): DepthSpan => {
  const slack = about ? HALF : 0;
  return { low: Math.min(value, to) - slack, high: Math.max(value, to) + (plus ? HALF : 0) + slack };
};

const ofStage = ({ stage, to = stage, about }: Stage): DepthSpan | undefined => {
  const places = stageSpan(stage, to);
  if (places === undefined) return undefined;
  const slack = about ? HALF : 0;
  const depths = STEPS.filter(({ place }) => place >= places.from - slack && place <= places.to + slack).map(
    ({ depth }) => depth,
  );
  return { low: Math.min(...depths), high: Math.max(...depths) };
};

/**
 * The depths that a look can mean. A stage counts by the depth it is rough sign of (`trade/stages.ts`), two joined by a
 * hyphen as the one between them, a span from end to end, a hedge half a step either way. The stage wins over a depth
 * typed beside it. Undefined when neither was noted, or only the depth where `stagesOnly` asks for a stage.
 */
export const depthSeen = ({ stage, depth }: Seen, stagesOnly = false): DepthSpan | undefined => {
  if (stage !== undefined) return ofStage(stage);
  return depth === undefined || stagesOnly ? undefined : ofDepth(depth);
};
