import type { Looked, Run } from '../reckon/model.ts';
import type { Stage } from '../records/schema/values.ts';
import type { Place } from '../text/span.ts';
import { stageSpan } from '../trade/stages.ts';

/** A stage of lift seen at a check, at one place of the head. */
export type SeenStage = {
  readonly stage: Stage;
  readonly zone: string;
  readonly look: Looked & { readonly at: number };
};

/** The stages seen while a run was on, place by place, in order of the clock; the run’s own place where none is named. */
export const stagesOf = ({ checks, zone: own }: Run): SeenStage[] =>
  checks
    .filter((look): look is Looked & { at: number } => look.at !== undefined)
    .toSorted((a, b) => a.at - b.at)
    .flatMap((look) =>
      look.seen.flatMap(({ stage, zones }) => {
        if (stage === undefined) return [];
        const named = zones.length === 0 ? [own] : zones.map(({ zone }) => zone);
        return named.map((zone) => ({ stage, zone, look }));
      }),
    );

/** The more lifted end of a stage, as its place in the order of stages. */
export const farEnd = ({ stage: { stage, to } }: SeenStage): number => Number(stageSpan(stage, to ?? stage)?.to);

/** Where a stage stands in its file. */
export const placeOfStage = ({ look, stage }: SeenStage): Place => ({ ...look.place, at: stage.at });

/** Stages back before it is no matter of the light or the eye. */
export const BACK = 2;

/** Whether any stage is so far behind an earlier one, of whatever place. */
export const goesBack = (seen: readonly SeenStage[]): boolean => {
  let most = 0;
  for (const one of seen) {
    if (most - farEnd(one) >= BACK) return true;
    most = Math.max(most, farEnd(one));
  }
  return false;
};
