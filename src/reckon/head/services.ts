import type { ClientFile } from '../../journal/journal.ts';
import { recently } from '../../text/recently.ts';
import { HEAD_AREA_FACTS, HEAD_AREAS, type HeadArea } from '../../trade/head-areas.ts';
import { type Kind, kindFacts } from '../../trade/kinds.ts';
import { portionsIn } from '../bowl/contents.ts';
import { shownBowl } from '../clock/lines.ts';
import type { BowlReckoned, FactsOf, Portion, VisitReckoned } from '../model.ts';
import { headPlace, ownZones } from './places.ts';

/** What a visit's bowls do to the hair, and where they go. */

/** Whether some portion of a bowl, or of the bowls it is taken out of, is as asked. */
const holds = (bowl: BowlReckoned, fits: (portion: Portion) => boolean): boolean => portionsIn(bowl).some(fits);

const isColouring = ({ item }: Portion): boolean => {
  if (item?.kind === undefined) return false;
  const { colours, lightens } = kindFacts(item.kind);
  return colours || lightens;
};

/** Whether something in the bowl leaves colour in the hair or can lighten it. */
export const isColour = (bowl: BowlReckoned): boolean => holds(bowl, isColouring);

const isDeveloper = ({ role }: Portion): boolean => role === 'developer';

/** Whether a product of a kind works by oxidation in a bowl. */
const isOxidativeIn = (bowl: BowlReckoned, kind: Kind | undefined): boolean => {
  const oxidative = kind !== undefined && kind !== 'developer' && kindFacts(kind).oxidative;
  return oxidative === true || (oxidative === 'with developer' && holds(bowl, isDeveloper));
};

/** Whether a zone has a word: `roots` in `roots back`. A zone is nearly always one word. */
const hasWord = (zone: string, word: string): boolean =>
  zone === word || (zone.includes(' ') && zone.split(' ').includes(word));

/** Whether the bowl works by oxidation: by what it holds, or by the developer mixed in. */
export const isOxidative = (bowl: BowlReckoned): boolean => holds(bowl, ({ item }) => isOxidativeIn(bowl, item?.kind));

const isLightener = ({ item }: Portion): boolean => item?.kind === 'lightener' || item?.kind === 'high-lift';

/** Whether the bowl is there to lighten: it holds a lightener or a high-lift colour. */
export const isLightening = (bowl: BowlReckoned): boolean => holds(bowl, isLightener);

/** Whether a bowl goes on hair off the head alone, so that no skin is met: a piece, rinsed and dried before it is fitted. */
export const isOffHead = (visit: Pick<VisitReckoned, 'visit' | 'clock'>, { name }: BowlReckoned): boolean => {
  const zones = zonesOfBowl(visit, name);
  return zones.length > 0 && zones.every((zone) => hasWord(zone, 'off-head'));
};

/**
 * Names of the products of a visit that a skin test is on record for first, each once, in order: those that hold
 * oxidative dye as they are mixed, in bowls that go on the head.
 */
export const productsToTest = (visit: Pick<VisitReckoned, 'visit' | 'clock' | 'bowls'>): string[] => {
  const products: string[] = [];
  const lookThrough = (bowl: BowlReckoned, { held }: BowlReckoned): void => {
    for (const { from, item } of held) {
      if (from !== undefined) lookThrough(bowl, from);
      else if (
        item?.kind !== undefined &&
        kindFacts(item.kind).skinTest &&
        !products.includes(item.name) &&
        isOxidativeIn(bowl, item.kind)
      )
        products.push(item.name);
    }
  };
  for (const bowl of visit.bowls) if (!isOffHead(visit, bowl)) lookThrough(bowl, bowl);
  return products;
};

/** Whether a visit put on anything that colours or lightens. */
export const putsOnColour = ({ bowls }: Pick<VisitReckoned, 'bowls'>): boolean => bowls.some(isColour);

const namesBowl = ({ bowls }: FactsOf<'place'>, bowl: string): boolean => {
  for (const { name } of bowls) if (shownBowl(name) === bowl) return true;
  return false;
};

/** The `place` lines of a bowl. */
export const placingsOf = (visit: ClientFile['visits'][number], bowl: string): FactsOf<'place'>[] =>
  placeLines(visit).filter((fact) => namesBowl(fact, bowl));

/** The `place` lines of a visit, which every one of its bowls asks. */
const placeLines = recently(({ entry }: ClientFile['visits'][number]) =>
  entry.facts.filter((fact): fact is FactsOf<'place'> => fact.word === 'place'),
);

/** The zones of a visit’s bowls that were asked for; many rules ask of the same bowls. */
const zonesKnown = recently((_clock: VisitReckoned['clock']) => new Map<string, readonly string[]>());

/** Every zone that a bowl's `place` and `on` lines name; none when it goes all over. */
export const zonesOfBowl = (
  { visit, clock }: Pick<VisitReckoned, 'visit' | 'clock'>,
  bowl: string,
): readonly string[] => {
  const known = zonesKnown(clock);
  let zones = known.get(bowl);
  if (zones === undefined) {
    const named: string[] = [];
    const add = (zone: string): void => {
      if (!named.includes(zone)) named.push(zone);
    };
    for (const fact of placeLines(visit)) if (namesBowl(fact, bowl)) for (const { zone } of fact.zones) add(zone);
    for (const run of [...clock.runs, ...clock.unclocked]) if (run.bowl === bowl && run.zone !== '') add(run.zone);
    zones = named;
    known.set(bowl, zones);
  }
  return zones;
};

/**
 * The least part of the head, in per cent, at whose roots a service does the roots: a half head does, a T-section, a
 * parting or pieces at the front do not. A choice.
 */
const MOST_ROOTS = 40;

const holdsKind = (bowl: BowlReckoned, ...kinds: readonly Kind[]): boolean =>
  holds(bowl, ({ item }) => item?.kind !== undefined && kinds.includes(item.kind));

/** Whether a bowl draws a line at the roots: permanent or high-lift colour and lightener do, a gloss fades and draws none. */
const drawsLine = (visit: ClientFile['visits'][number], bowl: BowlReckoned, zones: readonly string[]): boolean => {
  if (holdsKind(bowl, 'permanent', 'high-lift', 'lightener')) return true;
  // What fades, put on the new growth alone and not melted into it, is how some heads have their roots done.
  return (
    holdsKind(bowl, 'demi') &&
    isOxidative(bowl) &&
    zones.length > 0 &&
    zones.every((zone) => hasWord(zone, 'roots')) &&
    !placingsOf(visit, bowl.name).some(({ technique }) => technique?.word === 'melt')
  );
};

/** The parts of the head at whose roots a bowl goes, of two sides each; colour below a place of the head is not there. */
const rootAreas = (
  { visit, salon, client }: RootsAsked,
  bowl: BowlReckoned,
  zones: readonly string[],
): ReadonlyMap<HeadArea, number> => {
  const sides = new Map<HeadArea, number>();
  const own = ownZones(salon, ownZoneLines(client, visit));
  const lightens = isLightening(bowl);
  const onScalp = placingsOf(visit, bowl.name).some(({ scalp }) => scalp === 'on');
  for (const zone of zones.length === 0 ? ['all'] : zones) {
    const place = headPlace(zone, own);
    const { along, areas, half, known, whole } = place;
    if (!known || (along.length > 0 && !along.includes('roots'))) continue;
    if (along.length === 0 && !whole && !lightens && !onScalp) continue;
    for (const area of areas.length > 0 ? areas : whole ? HEAD_AREAS : [])
      sides.set(area, Math.min(2, (sides.get(area) ?? 0) + (half === undefined ? 2 : 1)));
  }
  return sides;
};

type RootsAsked = Pick<VisitReckoned, 'visit' | 'bowls' | 'clock' | 'salon' | 'client'>;

/** The lines of a client and a visit that name places of this head's own. */
export const ownZoneLines = (client: ClientFile, visit: ClientFile['visits'][number]) =>
  [...client.entries, visit].flatMap((stood) => zoneLines(stood));

const zoneLines = recently(({ entry }: ClientFile['entries'][number] | ClientFile['visits'][number]) =>
  entry.facts.flatMap((fact) => (fact.word === 'zone' ? [fact] : [])),
);

/** How much of the head had its roots done, in per cent, all bowls together. */
const rootShare = (reckoned: RootsAsked): number => {
  const most = new Map<HeadArea, number>();
  for (const bowl of reckoned.bowls) {
    if (!isColour(bowl)) continue;
    const zones = zonesOfBowl(reckoned, bowl.name);
    if (!drawsLine(reckoned.visit, bowl, zones)) continue;
    for (const [area, sides] of rootAreas(reckoned, bowl, zones))
      most.set(area, Math.min(2, (most.get(area) ?? 0) + sides));
  }
  return [...most].reduce((sum, [area, sides]) => sum + (HEAD_AREA_FACTS[area].percent * sides) / 2, 0);
};

/**
 * Whether a visit did the roots, so that new growth counts from it: what draws a line went on roots, on the scalp, all
 * over, or as lightener at places of the head that go down to the roots, foils a little off the scalp among them; at two
 * fifths of the head or more, all bowls together.
 */
export const reachesRoots: (reckoned: RootsAsked) => boolean = recently(
  (reckoned: RootsAsked) => rootShare(reckoned) >= MOST_ROOTS,
);

/** As `reachesRoots`, at any part of the head. */
export const touchesRoots = (reckoned: RootsAsked): boolean => rootShare(reckoned) > 0;
