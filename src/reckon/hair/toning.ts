import type { SalonSettings } from '../../journal/salon.ts';
import type { Seen } from '../../records/schema/values.ts';
import { toNumber, ZERO } from '../../text/exact.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import type { ShadeBlend } from '../../trade/blend.ts';
import { neutralisesStage, temperatureOf } from '../../trade/neutralise.ts';
import { stageAt, stageDepth, stageIndex, stageSpan } from '../../trade/stages.ts';
import { bowlsPutOn } from '../bowl/applied.ts';
import { basesIn } from '../bowl/contents.ts';
import { kindsMixed, mixesLightening } from '../bowl/kinds-mixed.ts';
import { blendOf, toneWordsIn } from '../bowl/shade-blend.ts';
import { placeOf } from '../cite.ts';
import { lightenedBefore } from '../client/state.ts';
import { factsOf } from '../facts-of.ts';
import { isAway, meets, seenAt } from '../head/seen-at.ts';
import { isLightening, zonesOfBowl } from '../head/services.ts';
import { depthSeen } from '../lift/seen-depth.ts';
import type { BowlReckoned, Minute, PutOn, VisitReckoned } from '../model.ts';
import { bowlOf } from '../timing/timed-runs.ts';
import { matchZones } from '../zone-match.ts';

/** What was seen last at a place before it was toned, and the lightest depth that can mean. */
export type LastLook = {
  readonly zone: string;
  /** Undefined where a depth was noted and no stage. */
  readonly stage: string | undefined;
  readonly depth: number;
  readonly place: Place;
  /** Seen some minutes before the lightener came off, which lifted on. */
  readonly early: boolean;
};

export type LastStage = LastLook & { readonly stage: string };

/** A bowl of toner, or of demi used as one, and what it goes over: every last look, and those of them that give a stage. */
export type Toning = {
  readonly bowl: BowlReckoned;
  readonly blend: ShadeBlend;
  readonly looks: readonly LastLook[];
  readonly over: readonly LastStage[];
};

const lookOf = (visit: VisitReckoned, line: number, zone: string, seen: Seen): LastLook | undefined => {
  const { stage, depth } = seen;
  const place = placeOf(visit.visit, { line }, (stage ?? depth)?.at);
  const typed = depthSeen(stage === undefined ? seen : { ...seen, stage: undefined })?.high;
  const end = stage && stageSpan(stage.stage, stage.to ?? stage.stage)?.to;
  if (end === undefined)
    return typed === undefined ? undefined : { zone, stage: undefined, depth: typed, place, early: false };
  // A place in the order of stages is a stage’s own, and every stage has its depth.
  const named = stageAt(end) as string;
  return { zone, stage: named, depth: Math.max(stageDepth(named) as number, typed ?? 0), place, early: false };
};

/** When a toner goes on: its minute, where it has one, and its line. */
type Begins = { readonly minute: Minute; readonly line: number };

type Stamp = { readonly line: number; readonly minute: Minute };

const stampsOf = ({ runs, looks }: VisitReckoned['clock']): readonly Stamp[] => [
  ...runs.flatMap(({ onPlace, offPlace, firstOn, off }) => [
    { line: onPlace.line, minute: firstOn },
    ...(off === undefined || offPlace === undefined ? [] : [{ line: offPlace.line, minute: off }]),
  ]),
  ...looks.flatMap(({ at, place }) => (at === undefined ? [] : [{ line: place.line, minute: at }])),
];

/** A look without a time is taken at the last time on a line above it. */
const minuteAbove = (line: number, stamps: readonly Stamp[]): Minute => {
  let above: Stamp | undefined;
  for (const stamp of stamps) if (stamp.line < line && stamp.line >= (above?.line ?? 0)) above = stamp;
  return above?.minute ?? Number.NEGATIVE_INFINITY;
};

/** Minutes before the lightener comes off after which a look says little of how far it got: a choice. */
const STALE = 9;

/** Minutes before it comes off up to which a look is as good as one after: a choice. */
const FRESH = 5;

/** Whether a bowl takes colour out of the hair: lightener, high-lift colour, or a remover. */
const takesOut = (bowl: BowlReckoned): boolean =>
  isLightening(bowl) || basesIn(bowl).some(({ kind }) => kind === 'remover');

/** Every look at what lightens, or at nothing that is on, before a toner went on; in order. */
const looksBefore = (visit: VisitReckoned, begins: Begins): readonly LastLook[] => {
  const { runs, looks, unclocked } = visit.clock;
  const lightens = (run: PutOn): boolean => {
    const bowl = bowlOf(visit, run);
    return bowl !== undefined && takesOut(bowl);
  };
  const stamps = stampsOf(visit.clock);
  const found: { readonly minute: Minute; readonly look: LastLook }[] = [];
  const facts = factsOf(visit.visit, 'check');
  // Looks are worked out of the `check` lines one by one.
  for (const [index, { at, seen, place }] of looks.entries()) {
    const minute = at ?? minuteAbove(place.line, stamps);
    const isLater =
      at === undefined || begins.minute === Number.POSITIVE_INFINITY ? place.line > begins.line : at > begins.minute;
    if (isLater) continue;
    const named = facts[index]?.bowls ?? [];
    const own = [...runs, ...unclocked].filter(({ checks }) => checks.some((look) => look.place === place));
    const lifting = own.filter(lightens);
    if (lifting.length === 0 && (own.length > 0 || named.length > 0)) continue;
    const offs = lifting.flatMap((run) => ('off' in run && run.off !== undefined ? [run.off] : []));
    const before = offs.length === 0 ? 0 : Math.max(...offs) - minute;
    if (before > STALE) continue;
    const zones = lifting.length === 0 ? [''] : [...new Set(lifting.map(({ zone }) => zone))];
    for (const one of seen)
      for (const zone of one.zones.length === 0 ? zones : one.zones.map((each) => each.zone)) {
        const look = lookOf(visit, place.line, zone, one);
        if (look !== undefined) found.push({ minute, look: { ...look, early: before > FRESH } });
      }
  }
  return found.sort((a, b) => a.minute - b.minute).map(({ look }) => look);
};

const EVERYWHERE: ReadonlySet<string> = new Set(['', 'all', 'full-head']);

/** Whether a look at one place is a look at all of another. */
const covers = (wide: string, narrow: string, own: SalonSettings['zones']): boolean => {
  if (wide === narrow || EVERYWHERE.has(wide)) return true;
  if (EVERYWHERE.has(narrow)) return false;
  return matchZones(wide, narrow, own) === 'within' && narrow.split(' ').length >= wide.split(' ').length;
};

/** The looks that no later look at the same hair has taken the place of. */
const lastOf = (
  looks: readonly LastLook[],
  zones: readonly string[],
  own: SalonSettings['zones'],
): readonly LastLook[] =>
  looks.filter((look, index) => {
    const later = looks.slice(index + 1);
    if (later.some(({ zone }) => covers(zone, look.zone, own))) return false;
    const met = zones.filter((zone) => meets(look.zone, [zone], own));
    return met.length === 0 || !met.every((zone) => later.some((one) => covers(one.zone, zone, own)));
  });

/** By the `start` lines, where nothing is lightened on the day: hair that was lightened before, or that a toner is to tone. */
const atStart = (visit: VisitReckoned, earlier: readonly VisitReckoned[], bowl: BowlReckoned): LastLook[] =>
  seenAt(visit, 'start').flatMap(({ zone, seen, place, depth }): LastLook[] => {
    const ends = seen.words.flatMap(({ word }) => stageIndex(word) ?? []);
    if (ends.length === 0 && depth === undefined) return [];
    const lightened = lightenedBefore(visit, earlier);
    // Lengths are what grew out of any place that was lightened.
    const wasLightened = lightened.some(({ zones }) => isAway(zone) || meets(zone, zones, visit.salon.zones));
    if (ends.length === 0)
      return depth !== undefined && (wasLightened || basesIn(bowl).every(({ kind }) => kind === 'toner'))
        ? [{ zone, stage: undefined, depth: depth.high, place, early: false }]
        : [];
    if (!wasLightened) return [];
    const stage = stageAt(Math.max(...ends)) as string;
    return [{ zone, stage, depth: Math.max(stageDepth(stage) as number, depth?.high ?? 0), place, early: false }];
  });

const isToner = (bowl: BowlReckoned): boolean => {
  const bases = basesIn(bowl);
  return bases.length > 0 && bases.every(({ kind }) => kind === 'toner' || kind === 'demi');
};

const beginsOf = ({ clock }: VisitReckoned, bowl: BowlReckoned): Begins => {
  const clocked = clock.runs.find((run) => run.bowl === bowl.name);
  const run: PutOn | undefined = clocked ?? clock.unclocked.find((one) => one.bowl === bowl.name);
  return {
    minute: clocked?.firstOn ?? Number.POSITIVE_INFINITY,
    line: run?.onPlace.line ?? Number.POSITIVE_INFINITY,
  };
};

const looksUnder = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
  bowl: BowlReckoned,
): readonly LastLook[] => {
  const zones = zonesOfBowl(visit, bowl.name);
  const all =
    mixesLightening(visit) || kindsMixed(visit).includes('remover')
      ? lastOf(looksBefore(visit, beginsOf(visit, bowl)), zones.length === 0 ? [''] : zones, visit.salon.zones)
      : atStart(visit, earlier, bowl);
  if (all.length === 0) return all;
  // The lengths, after places of the head were lightened, are all of those.
  if (zones.every(isAway) && all.every(({ zone }) => !isAway(zone))) return all;
  return all.filter(({ zone }) => meets(zone, zones, visit.salon.zones));
};

const hasStage = (look: LastLook): look is LastStage => look.stage !== undefined;

const NONE: readonly Toning[] = [];

const toningsIn = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): readonly Toning[] => {
  const kinds = kindsMixed(visit);
  if (!kinds.includes('toner') && !kinds.includes('demi')) return NONE;
  return bowlsPutOn(visit).flatMap((bowl) => {
    const blend = isToner(bowl) ? blendOf(bowl) : undefined;
    const looks = blend === undefined ? [] : looksUnder(visit, earlier, bowl);
    return blend === undefined || looks.length === 0 ? NONE : [{ bowl, blend, looks, over: looks.filter(hasStage) }];
  });
};

/**
 * The toners of a visit that others came before, each over what was seen last where it goes, place by place; those over nothing known are
 * left out.
 */
export const toningsOf: (visit: VisitReckoned, earlier: readonly VisitReckoned[]) => readonly Toning[] =
  recently(toningsIn);

/** Whether a toner is there to take warmth out, and takes out none of what was seen anywhere it goes. */
export const isWrongOpposite = ({ blend, over }: Toning): boolean => {
  if (over.length === 0) return false;
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
