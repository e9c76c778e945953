import type { ClientFile } from '../../journal/journal.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import { daysBetween } from '../../text/dates.ts';
import { type Exact, toNumber } from '../../text/exact.ts';
import type { Severity } from '../../text/finding.ts';
import { countAtFront } from '../../text/ordered.ts';
import { recently } from '../../text/recently.ts';
import { STRONG_DEVELOPER } from '../../trade/condition.ts';
import { LIGHTENER_REST } from '../../trade/intervals.ts';
import { developerStrength, itemsIn } from '../bowl/contents.ts';
import {
  greyShare,
  isLightening,
  type Lightened,
  lightenedBefore,
  placingsOf,
  testsOfFibre,
  zonesOfBowl,
} from '../client/state.ts';
import { anyMeet, isAt } from '../head/hair-meets.ts';
import { areLeftOut } from '../head/left-out.ts';
import { depthsAt, isAway, naturalDepth, type SeenDepth } from '../head/seen-at.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';
import { isTooLate } from './tried-since.ts';

/** Where lightener goes over hair that is blonde by lightening: by place, start depth and history. */

export type LightenedHair = Lightened;

/** Words for the new growth alone. */
export const RETOUCH = /\b(?:roots?|regrowth|new growth|retouch|re-touch|touch[ -]?up|top[ -]?up)\b/iu;

/** The depth at which nothing is left to lift: pale yellow. Common practice, no source. */
const PALE = 10;

/** Ways of putting on that leave no hair out. */
const SATURATES: ReadonlySet<string | undefined> = new Set(['apply', 'comb-through', 'block']);

/** What a visit was for, in its own words. */
export const aimOf = ({ visit }: VisitReckoned): string =>
  visit.entry.facts.flatMap((fact) => (fact.word === 'aim' ? [fact.text] : [])).join(' ');

/** The depth from which lightened hair is not lightened again with strong developer: common practice, no source. */
const BLONDE = 8;

/** The depth from which it is left out altogether: common practice, no source. */
const LIGHT = 9;

/** The developer in per cent up to which it is a bleach wash: common practice, no source. */
const WASH = 3;

/** Depths lighter than her own from which hair is lightened though no note says by whom: past what tint lifts. A choice. */
const LIGHTER = 3;

/** The share of grey in per cent from which light hair may be white and not lightened: a choice. */
const MOSTLY_GREY = 50;

/** Lightener over blonde hair. */
export type Overlap = {
  readonly item: ShelfItem;
  /** Of the developer, in per cent. */
  readonly strength: Exact;
  /** The hair it went on, as the start or an earlier result gives it. */
  readonly start: SeenDepth;
  /** The newest lightening of that hair; undefined where it came so from elsewhere. */
  readonly lightened: Lightened | undefined;
  /** What shows that it touched: the places named, or lengths that came out lighter. Else nothing says that it did not. */
  readonly proven: 'placed' | 'lighter' | undefined;
  /** How it is spoken of: it burns or breaks, it is to be put right, it is worth a thought. */
  readonly severity: Severity;
};

/** Where and when the hair that still hangs was lightened, of other days, newest first. */
export const lightenedHere = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): readonly Lightened[] =>
  lightenedBefore(visit, earlier).filter(({ when }) => when !== visit.date);

const BELOW: readonly string[] = ['mids', 'lengths', 'ends'];

/** `lengths` is all that hangs: mids and ends are of it. */
const asHair = (zone: string): string =>
  zone
    .split(' ')
    .filter((word) => word !== 'lengths')
    .join(' ');

/** Whether some places hold hair of others below the roots; roots of an earlier day have grown down by now. */
const meetsBelow = (visit: VisitReckoned, zones: readonly string[], old: readonly string[]): boolean =>
  anyMeet(
    zones.map(asHair),
    old.map((zone) => asHair(zone.replace('roots', 'all'))),
    visit.salon.zones,
  );

const isRoots = (zone: string): boolean => isAt(zone, 'roots') && !isAt(zone, ...BELOW);

/** The depths that one line gives of hair below the roots, where a bowl goes. */
const depthsBelow = (
  visit: VisitReckoned,
  word: 'start' | 'want' | 'result',
  zones: readonly string[],
): readonly SeenDepth[] =>
  depthsAt(visit, word).filter(
    ({ zone }) => !isRoots(zone) && meetsBelow(visit, zones, [zone]) && !areLeftOut(visit, [zone]),
  );

const shareWord = (zone: string, zones: readonly string[]): boolean =>
  BELOW.some((word) => isAt(zone, word) && zones.some((other) => isAt(other, word)));

/** The numbers of the client's visits whose results say how deep something came out: few do, and every bowl asks. */
const showing = recently(({ visits }: ClientFile): readonly number[] =>
  visits.flatMap((visit, number) => (depthsAt({ visit }, 'result').length > 0 ? [number] : [])),
);

/** The lightest hair below the roots that a bowl finds: by the start, else by what the last visit that saw it made of it. */
const foundAt = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
  zones: readonly string[],
): SeenDepth | undefined => {
  const lightest = (seen: readonly SeenDepth[]): SeenDepth | undefined => {
    // `mids 6, lengths 9` of a bowl on the mids: the line itself says which.
    const named = seen.filter(({ zone }) => shareWord(zone, zones));
    return (named.length > 0 ? named : seen).toSorted((a, b) => b.depth.low - a.depth.low)[0];
  };
  const starts = depthsBelow(visit, 'start', zones);
  if (starts.length > 0) return lightest(starts);
  const shown = showing(visit.client);
  for (let at = countAtFront(shown, (number) => number < earlier.length) - 1; at >= 0; at--) {
    const before = earlier[shown[at] as number] as VisitReckoned;
    const results = depthsBelow(before, 'result', zones);
    if (before.date < visit.date && results.length > 0) return lightest(results);
  }
  return undefined;
};

/** Whether hair is so much lighter than her own that something lightened it. */
const isLighterThanOwn = (visit: VisitReckoned, { zone, depth }: SeenDepth): boolean => {
  const own = naturalDepth(visit.client, zone)?.high;
  const grey = greyShare(visit.client, visit.visit)?.percent ?? 0;
  return own !== undefined && grey < MOSTLY_GREY && depth.low - own >= LIGHTER;
};

/** Whether a bowl is put on all of the hair from the scalp down, none of it left out between sections. */
const isSaturated = (visit: VisitReckoned, { name }: BowlReckoned): boolean =>
  placingsOf(visit.visit, name).some(
    ({ technique, zones, sections }) =>
      SATURATES.has(technique?.word) &&
      sections === undefined &&
      zones.some(({ zone }) => zone === 'full-head' || zone === 'all'),
  );

const growthMeasured = ({ growth: { measured } }: VisitReckoned): boolean => measured !== undefined;

const touchedBy = (
  visit: VisitReckoned,
  bowl: BowlReckoned,
  zones: readonly string[],
  start: SeenDepth,
): Overlap['proven'] => {
  // Where long new growth was measured, mids may be of it.
  const below = growthMeasured(visit) ? ['lengths', 'ends'] : BELOW;
  if (zones.some((zone) => isAt(zone, ...below) && !isAt(zone, 'roots')) || isSaturated(visit, bowl)) return 'placed';
  const isLighter = (word: 'want' | 'result'): boolean =>
    depthsBelow(visit, word, zones).some(
      ({ zone, depth }) => (isAway(zone) || zone === start.zone) && depth.low > start.depth.high,
    );
  const others = visit.bowls.some((one) => one !== bowl && isLightening(one));
  return !others && (isLighter('result') || isLighter('want')) ? 'lighter' : undefined;
};

/** Whether a strand of the hair was tried since it was last lightened, with what now goes on it or without a product named. */
const isTried = (visit: VisitReckoned, bowl: BowlReckoned): boolean =>
  testsOfFibre(visit.client, visit.salon.hours, visit.date).some(
    ({ kind, result, notNeeded, made, products }) =>
      (kind === 'strand' || kind === 'stretch') &&
      result !== 'adverse' &&
      !notNeeded &&
      made !== undefined &&
      made.date <= visit.date &&
      !isTooLate(visit, made) &&
      daysBetween(made.date, visit.date) <= LIGHTENER_REST &&
      (products.length === 0 || itemsIn(bowl).some(({ name }) => products.includes(name))),
  );

/**
 * Whether the notes let a bowl stay on new growth: it was measured, a remark where the bowl went says so, or a look at it
 * was at roots.
 */
const isOnNewGrowth = (reckoned: VisitReckoned, { name }: BowlReckoned): boolean =>
  growthMeasured(reckoned) ||
  reckoned.clock.runs.some(
    ({ bowl, checks }) =>
      bowl === name && checks.some(({ seen }) => seen.some(({ zones }) => zones.some(({ zone }) => isRoots(zone)))),
  ) ||
  [
    ...placingsOf(reckoned.visit, name),
    ...reckoned.visit.entry.facts.filter(
      (fact) => fact.word === 'on' && fact.bowls.some((one) => one.name.toUpperCase() === name),
    ),
  ].some(({ says }) => says !== undefined && RETOUCH.test(says.text));

/**
 * Where a bowl that lightens goes over hair that is blonde by lightening, at one of a client's visits; undefined where it
 * goes on new growth, on hair darker than 8, on 8 with less than 9 %, or is a bleach wash.
 */
export const overlapOn = (
  visit: VisitReckoned,
  earlier: readonly VisitReckoned[],
  bowl: BowlReckoned,
): Overlap | undefined => {
  if (!isLightening(bowl)) return undefined;
  const item = itemsIn(bowl).find(({ kind }) => kind === 'lightener' || kind === 'high-lift');
  const strength = developerStrength(bowl);
  if (item === undefined || strength === undefined || toNumber(strength) <= WASH) return undefined;
  const zones = zonesOfBowl(visit, bowl.name);
  if (zones.length > 0 && zones.every(isRoots)) return undefined;
  const start = foundAt(visit, earlier, zones);
  if (start === undefined || start.depth.low < BLONDE) return undefined;
  const lightened = lightenedHere(visit, earlier).find(
    (one) => meetsBelow(visit, zones, one.zones) && (start.zone === '' || meetsBelow(visit, [start.zone], one.zones)),
  );
  if (lightened === undefined && !isLighterThanOwn(visit, start)) return undefined;
  const proven = touchedBy(visit, bowl, zones, start);
  const isStrong = toNumber(strength) >= STRONG_DEVELOPER;
  if (!isStrong && (proven === undefined || start.depth.low < LIGHT)) return undefined;
  if (proven === undefined && (RETOUCH.test(aimOf(visit)) || isOnNewGrowth(visit, bowl))) return undefined;
  const tried = isTried(visit, bowl);
  const isGrave = isStrong || start.depth.low >= PALE || isSaturated(visit, bowl);
  if (tried && !isGrave) return undefined;
  if (!isGrave || tried || proven === undefined) return { item, strength, start, lightened, proven, severity: 'mind' };
  // New growth was measured, and all of the blonde below it has the same mix: a retouch that went too far.
  const isRetouch = growthMeasured(visit) && isSaturated(visit, bowl) && start.depth.low >= LIGHT;
  return { item, strength, start, lightened, proven, severity: isRetouch ? 'stop' : 'fix' };
};
