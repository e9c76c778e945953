import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { isLightening, zonesOfBowl } from '../reckon/services.ts';
import type { Place } from '../text/span.ts';
import type { ShadeBlend } from '../trade/blend.ts';
import { neutralisesAt, temperatureOf } from '../trade/neutralise.ts';
import { stageAt, stageDepth } from '../trade/stages.ts';
import { bowlsPutOn } from './applied.ts';
import { basesIn } from './contents.ts';
import { isAway, meets, seenAt } from './seen-at.ts';
import { blendOf } from './shade-blend.ts';
import { farEnd, placeOfStage, stagesOf } from './stages-seen.ts';
import { bowlOf } from './timed-runs.ts';

/** The last stage seen at a place before it was toned, with the depth it is rough sign of. */
export type LastStage = {
  readonly zone: string;
  readonly stage: string;
  readonly depth: number;
  readonly place: Place;
};

/** A bowl of toner, or of demi used as one, and what it goes over. */
export type Toning = { readonly bowl: BowlReckoned; readonly blend: ShadeBlend; readonly over: readonly LastStage[] };

const last = (zone: string, end: number, place: Place): LastStage[] => {
  const stage = stageAt(end);
  const depth = stage === undefined ? undefined : stageDepth(stage);
  return stage === undefined || depth === undefined ? [] : [{ zone, stage, depth, place }];
};

/** By the checks of what lightened before a minute; of several at one place the last. */
const lastSeen = (visit: VisitReckoned, before: number): LastStage[] => {
  const seen = new Map<string, LastStage>();
  for (const run of visit.clock.runs) {
    const bowl = bowlOf(visit, run);
    if (bowl === undefined || !isLightening(bowl) || run.firstOn >= before) continue;
    for (const one of stagesOf(run))
      for (const found of last(one.zone, farEnd(one), placeOfStage(one))) seen.set(one.zone, found);
  }
  return [...seen.values()];
};

/** By the `start` lines, where nothing is lightened on the day. */
const atStart = (visit: VisitReckoned): LastStage[] =>
  seenAt(visit, 'start').flatMap(({ zone, seen, place, depth }) =>
    seen.stage === undefined || depth === undefined
      ? []
      : [{ zone, stage: seen.stage.to ?? seen.stage.stage, depth: depth.high, place }],
  );

const isToner = (bowl: BowlReckoned): boolean => {
  const bases = basesIn(bowl);
  return bases.length > 0 && bases.every(({ kind }) => kind === 'toner' || kind === 'demi');
};

const overOf = (visit: VisitReckoned, bowl: BowlReckoned): LastStage[] => {
  const begins = visit.clock.runs.find((run) => run.bowl === bowl.name)?.firstOn ?? Number.POSITIVE_INFINITY;
  const all = visit.bowls.some(isLightening) ? lastSeen(visit, begins) : atStart(visit);
  const zones = zonesOfBowl(visit, bowl.name);
  // The lengths, after places of the head were lightened, are all of those.
  if (zones.every(isAway) && all.every(({ zone }) => !isAway(zone))) return all;
  return all.filter(({ zone }) => meets(zone, zones, visit.salon.zones));
};

/** The toners of a visit, each over the last stages seen where it goes; those over nothing known are left out. */
export const toningsOf = (visit: VisitReckoned): Toning[] =>
  bowlsPutOn(visit)
    .filter(isToner)
    .flatMap((bowl) => {
      const blend = blendOf(bowl);
      const over = blend === undefined ? [] : overOf(visit, bowl);
      return blend === undefined || over.length === 0 ? [] : [{ bowl, blend, over }];
    });

/** Whether a toner is there to take warmth out, and takes out none of what was seen anywhere it goes. */
export const isWrongOpposite = ({ blend, over }: Toning): boolean => {
  const families = blend.tones.map(({ family }) => family);
  const cool = families.filter((family) => temperatureOf(family) === 'cool' && family !== 'cool');
  if (cool.length === 0 || families.some((family) => temperatureOf(family) === 'warm')) return false;
  return over.every(({ depth }) => cool.every((family) => !neutralisesAt(family, depth)));
};
