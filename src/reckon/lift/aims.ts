import { STAGES, stageAt, stageDepth, stageIndex } from '../../trade/stages.ts';

/** A stage or half step: its place among the stages, and the depth that it is rough sign of. */
export type Step = { readonly stage: string; readonly place: number; readonly depth: number };

/** Every stage and half step, least lifted first. */
export const STEPS: readonly Step[] = STAGES.flatMap((_, index) => [index, index + 0.5]).flatMap((place) => {
  const stage = stageAt(place);
  const depth = stage === undefined ? undefined : stageDepth(stage);
  return stage === undefined || depth === undefined ? [] : [{ stage, place, depth }];
});

/** The last stage that lift is aimed at: past it the fibre itself is going. */
const LAST_AIM = 'pale-yellow';

const isAim = (stage: string): boolean => {
  const [place, last] = [stageIndex(stage), stageIndex(LAST_AIM)];
  return place !== undefined && last !== undefined && place <= last;
};

/** The stages and half steps to aim at. */
export const AIMS: readonly Step[] = STEPS.filter(({ stage }) => isAim(stage));

/** The depth that a stage to aim at is rough sign of; undefined for other words and past pale yellow. */
export const aimDepth = (stage: string): number | undefined => (isAim(stage) ? stageDepth(stage) : undefined);
