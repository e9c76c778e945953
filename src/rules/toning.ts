import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { isLightening, zonesOfBowl } from '../reckon/services.ts';
import { lightenedBefore } from '../reckon/state.ts';
import { toNumber, ZERO } from '../text/exact.ts';
import { recently } from '../text/recently.ts';
import type { Place } from '../text/span.ts';
import type { ShadeBlend } from '../trade/blend.ts';
import { neutralisesStage, temperatureOf } from '../trade/neutralise.ts';
import { stageAt, stageDepth, stageIndex } from '../trade/stages.ts';
import { bowlsPutOn } from './applied.ts';
import { basesIn } from './contents.ts';
import { kindsMixed, mixesLightening } from './kinds-mixed.ts';
import { isAway, meets, seenAt } from './seen-at.ts';
import { blendOf, toneWordsIn } from './shade-blend.ts';
import { placeOfStage, stagesOf } from './stages-seen.ts';
import { bowlOf } from './timed-runs.ts';

/** The last stage seen at a place before it was toned, and the lightest depth that can mean. */
export type LastStage = {
  readonly zone: string;
  readonly stage: string;
  readonly depth: number;
  readonly place: Place;
};

/** A bowl of toner, or of demi used as one, and what it goes over. */
export type Toning = { readonly bowl: BowlReckoned; readonly blend: ShadeBlend; readonly over: readonly LastStage[] };

const lastStage = (zone: string, end: number, place: Place): LastStage => {
  // A place in the order of stages is a stage’s own, and every stage has its depth.
  const stage = stageAt(end) as string;
  return { zone, stage, depth: stageDepth(stage) as number, place };
};

/** By the checks of what lightened before a minute; of several at one place the last. */
const lastSeen = (visit: VisitReckoned, before: number): LastStage[] => {
  const seen = new Map<string, LastStage>();
  for (const run of visit.clock.runs) {
    const bowl = bowlOf(visit, run);
    if (bowl === undefined || !isLightening(bowl) || run.firstOn >= before) continue;
    for (const one of stagesOf(run)) seen.set(one.zone, lastStage(one.zone, one.end, placeOfStage(one)));
  }
  return [...seen.values()];
};

/** By the `start` lines, where nothing is lightened on the day: a tone there is a stage where the hair was lightened before. */
const atStart = (visit: VisitReckoned, visits: readonly VisitReckoned[]): LastStage[] =>
  seenAt(visit, 'start').flatMap(({ zone, seen, place, depth }) => {
    const ends = seen.words.flatMap(({ word }) => stageIndex(word) ?? []);
    if (ends.length === 0) return [];
    const lightened = lightenedBefore(visit.client, visits.slice(0, visits.indexOf(visit)), visit.date);
    // Lengths are what grew out of any place that was lightened.
    if (!lightened.some(({ zones }) => isAway(zone) || meets(zone, zones, visit.salon.zones))) return [];
    const one = lastStage(zone, Math.max(...ends), place);
    return [{ ...one, depth: Math.max(one.depth, depth?.high ?? 0) }];
  });

const isToner = (bowl: BowlReckoned): boolean => {
  const bases = basesIn(bowl);
  return bases.length > 0 && bases.every(({ kind }) => kind === 'toner' || kind === 'demi');
};

const overOf = (visit: VisitReckoned, visits: readonly VisitReckoned[], bowl: BowlReckoned): readonly LastStage[] => {
  const begins = visit.clock.runs.find((run) => run.bowl === bowl.name)?.firstOn ?? Number.POSITIVE_INFINITY;
  const all = mixesLightening(visit) ? lastSeen(visit, begins) : atStart(visit, visits);
  if (all.length === 0) return all;
  const zones = zonesOfBowl(visit, bowl.name);
  // The lengths, after places of the head were lightened, are all of those.
  if (zones.every(isAway) && all.every(({ zone }) => !isAway(zone))) return all;
  return all.filter(({ zone }) => meets(zone, zones, visit.salon.zones));
};

const NONE: readonly Toning[] = [];

const toningsIn = (visit: VisitReckoned, visits: readonly VisitReckoned[]): readonly Toning[] => {
  const kinds = kindsMixed(visit);
  if (!kinds.includes('toner') && !kinds.includes('demi')) return NONE;
  return bowlsPutOn(visit).flatMap((bowl) => {
    const blend = isToner(bowl) ? blendOf(bowl) : undefined;
    const over = blend === undefined ? [] : overOf(visit, visits, bowl);
    return blend === undefined || over.length === 0 ? NONE : [{ bowl, blend, over }];
  });
};

/**
 * The toners of one of all visits of a client, each over the last stages seen where it goes; those over nothing known are
 * left out.
 */
export const toningsOf: (visit: VisitReckoned, visits: readonly VisitReckoned[]) => readonly Toning[] =
  recently(toningsIn);

/** Whether a toner is there to take warmth out, and takes out none of what was seen anywhere it goes. */
export const isWrongOpposite = ({ blend, over }: Toning): boolean => {
  let isCool = false;
  for (const { family } of blend.tones) {
    if (temperatureOf(family) === 'warm') return false;
    if (temperatureOf(family) !== 'cool' || family === 'cool') continue;
    if (over.some(({ stage }) => neutralisesStage(family, stage))) return false;
    isCool = true;
  }
  return isCool;
};

const YELLOW = stageIndex('yellow') as number;
const PALE_YELLOW = stageIndex('pale-yellow') as number;

const isYellow = ({ stage }: LastStage): boolean => {
  const place = stageIndex(stage);
  return place !== undefined && place >= YELLOW && place <= PALE_YELLOW;
};

/** What of the toner blue must be beyond before the yellow under it turns: half, and twice the violet. A choice. */
const isBlueHeavy = ({ tones }: ShadeBlend): boolean => {
  const shareOf = (family: string): number => toNumber(tones.find((tone) => tone.family === family)?.share ?? ZERO);
  return shareOf('blue') > 0.5 && shareOf('blue') > 2 * shareOf('violet');
};

/**
 * Whether a toner is blue over yellow alone, which make green (colour mixing; common practice): `blue` where the range
 * or the shade says blue, `ash` where it says ash, which may be made with less of it.
 */
export const turnsGreen = ({ bowl, blend, over }: Toning): 'blue' | 'ash' | undefined => {
  if (!over.every(isYellow) || !isBlueHeavy(blend)) return undefined;
  if (blend.tones.some(({ family }) => temperatureOf(family) === 'warm')) return undefined;
  return toneWordsIn(bowl).includes('blue') ? 'blue' : 'ash';
};
