import type { ClientFile } from '../journal/journal.ts';
import { recently } from '../text/recently.ts';
import { type Kind, kindFacts } from '../trade/kinds.ts';
import { isZone } from '../trade/zones.ts';
import { shownBowl } from './clock-lines.ts';
import type { BowlReckoned, FactsOf, Portion, VisitReckoned } from './model.ts';

/** What a visit's bowls do to the hair, and where they go. */

/** Whether some portion of a bowl, or of the bowls it is taken out of, is as asked. */
const holds = ({ held }: BowlReckoned, fits: (portion: Portion) => boolean): boolean => {
  for (const portion of held) if (portion.from === undefined ? fits(portion) : holds(portion.from, fits)) return true;
  return false;
};

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
export const placingsOf = ({ entry }: ClientFile['visits'][number], bowl: string): FactsOf<'place'>[] =>
  entry.facts.filter((fact): fact is FactsOf<'place'> => fact.word === 'place' && namesBowl(fact, bowl));

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
    for (const fact of visit.entry.facts)
      if (fact.word === 'place' && namesBowl(fact, bowl)) for (const { zone } of fact.zones) add(zone);
    for (const run of [...clock.runs, ...clock.unclocked]) if (run.bowl === bowl && run.zone !== '') add(run.zone);
    zones = named;
    known.set(bowl, zones);
  }
  return zones;
};

const AWAY: ReadonlySet<string> = new Set(['mids', 'lengths', 'ends', 'off-head', 'brow', 'lashes', 'beard']);
const WHOLE: ReadonlySet<string> = new Set(['roots', 'all', 'full-head']);

const isWhole = (zone: string): boolean =>
  WHOLE.has(zone) || (zone.includes(' ') && zone.split(' ').some((word) => WHOLE.has(word)));

/** Whether a place of the head goes down to its new growth: roots, or no word of its lengths, ends or own places. */
const isDownToRoots = (zone: string): boolean =>
  hasWord(zone, 'roots') || zone.split(' ').every((word) => isZone(word) && !AWAY.has(word));

const isBesideToner = (portion: Portion): boolean => {
  const kind = portion.item?.kind;
  return isLightener(portion) || (kind !== undefined && kind !== 'toner' && kindFacts(kind).colours);
};

/** Whether everything that colours in the bowl is toner: it shades what was lightened and draws no new line at the roots. */
const isOnlyToner = (bowl: BowlReckoned): boolean => !holds(bowl, isBesideToner);

/**
 * Whether a visit did the roots, so that new growth counts from it: oxidative colour on roots, on the scalp or all over,
 * or a lightener at a place of the head that goes down to the roots, foils a little off the scalp among them.
 */
export const reachesRoots = (reckoned: Pick<VisitReckoned, 'visit' | 'bowls' | 'clock'>): boolean =>
  reckoned.bowls.some((bowl) => {
    if (!isColour(bowl) || !isOxidative(bowl) || isOnlyToner(bowl)) return false;
    const zones = zonesOfBowl(reckoned, bowl.name);
    if (zones.length === 0 || zones.some(isWhole)) return true;
    if (isLightening(bowl) && zones.some(isDownToRoots)) return true;
    return reckoned.visit.entry.facts.some(
      (fact) => fact.word === 'place' && fact.scalp === 'on' && namesBowl(fact, bowl.name),
    );
  });
