import type { Stage } from '../../records/schema/values.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { stageSpan } from '../../trade/stages.ts';
import type { Looked, Run } from '../model.ts';

/** A stage of lift seen at a check, at one place of the head. */
export type SeenStage = {
  readonly stage: Stage;
  readonly zone: string;
  readonly look: Looked & { readonly at: number };
  /** Its more lifted end, as its place in the order of stages. */
  readonly end: number;
};

const isTimed = (look: Looked): look is SeenStage['look'] => look.at !== undefined;

const stagesIn = ({ checks, zone: own }: Run): readonly SeenStage[] => {
  const stages: SeenStage[] = [];
  for (const look of checks.filter(isTimed).sort((a, b) => a.at - b.at))
    for (const { stage, zones } of look.seen) {
      if (stage === undefined) continue;
      const end = Number(stageSpan(stage.stage, stage.to ?? stage.stage)?.to);
      if (zones.length === 0) stages.push({ stage, zone: own, look, end });
      for (const { zone } of zones) stages.push({ stage, zone, look, end });
    }
  return stages;
};

/** The stages seen while a run was on, place by place, in order of the clock; the run’s own place where none is named. */
export const stagesOf: (run: Run) => readonly SeenStage[] = recently(stagesIn);

/** Where a stage stands in its file. */
export const placeOfStage = ({ look, stage }: SeenStage): Place => ({ ...look.place, at: stage.at });

/** Stages back before it is no matter of the light or the eye. */
export const BACK = 2;

/** Whether any stage is so far behind an earlier one, of whatever place. */
export const goesBack = (seen: readonly SeenStage[]): boolean => {
  let most = 0;
  for (const one of seen) {
    if (most - one.end >= BACK) return true;
    most = Math.max(most, one.end);
  }
  return false;
};
