import type { ClientFile } from '../journal/journal.ts';
import { recently } from '../text/recently.ts';
import { type Kind, kindFacts } from '../trade/kinds.ts';
import { isZone } from '../trade/zones.ts';
import { shownBowl } from './clock-lines.ts';
import type { BowlReckoned, FactsOf, VisitReckoned } from './model.ts';

/** What a visit's bowls do to the hair, and where they go. */

/** The portions of a bowl, and of the bowls it is taken out of. */
const inside = ({ portions }: BowlReckoned): BowlReckoned['portions'] =>
  portions.some(({ from }) => from !== undefined)
    ? portions.flatMap((portion) => (portion.from === undefined ? [portion] : inside(portion.from)))
    : portions;

/** Whether something in the bowl leaves colour in the hair or can lighten it. */
export const isColour = (bowl: BowlReckoned): boolean =>
  inside(bowl).some(({ item }) => {
    const facts = item?.kind && kindFacts(item.kind);
    return facts !== undefined && (facts.colours || facts.lightens);
  });

/** Whether a developer was mixed in. */
const isDeveloped = (bowl: BowlReckoned): boolean => inside(bowl).some(({ role }) => role === 'developer');

/** Whether a product of a kind works by oxidation in a bowl. */
const isOxidativeIn = (bowl: BowlReckoned, kind: Kind | undefined): boolean => {
  const oxidative = kind !== undefined && kind !== 'developer' && kindFacts(kind).oxidative;
  return oxidative === true || (oxidative === 'with developer' && isDeveloped(bowl));
};

/** Whether the bowl works by oxidation: by what it holds, or by the developer mixed in. */
export const isOxidative = (bowl: BowlReckoned): boolean =>
  inside(bowl).some(({ item }) => isOxidativeIn(bowl, item?.kind));

/** Whether the bowl is there to lighten: it holds a lightener or a high-lift colour. */
export const isLightening = (bowl: BowlReckoned): boolean =>
  inside(bowl).some(({ item }) => item?.kind === 'lightener' || item?.kind === 'high-lift');

/** Whether a bowl goes on hair off the head alone, so that no skin is met: a piece, rinsed and dried before it is fitted. */
export const isOffHead = (visit: Pick<VisitReckoned, 'visit' | 'clock'>, { name }: BowlReckoned): boolean => {
  const zones = zonesOfBowl(visit, name);
  return zones.length > 0 && zones.every((zone) => zone.split(' ').includes('off-head'));
};

/**
 * Names of the products of a visit that a skin test is on record for first, each once, in order: those that hold
 * oxidative dye as they are mixed, in bowls that go on the head.
 */
export const productsToTest = (visit: Pick<VisitReckoned, 'visit' | 'clock' | 'bowls'>): string[] => [
  ...new Set(
    visit.bowls
      .filter((bowl) => !isOffHead(visit, bowl))
      .flatMap((bowl) =>
        inside(bowl).flatMap(({ item }) =>
          item?.kind !== undefined && kindFacts(item.kind).skinTest && isOxidativeIn(bowl, item.kind)
            ? [item.name]
            : [],
        ),
      ),
  ),
];

/** Whether a visit put on anything that colours or lightens. */
export const putsOnColour = ({ bowls }: Pick<VisitReckoned, 'bowls'>): boolean => bowls.some(isColour);

/** The `place` lines of a bowl. */
export const placingsOf = ({ entry }: ClientFile['visits'][number], bowl: string): FactsOf<'place'>[] =>
  entry.facts.filter(
    (fact): fact is FactsOf<'place'> =>
      fact.word === 'place' && fact.bowls.some(({ name }) => shownBowl(name) === bowl),
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
    const named = new Set(placingsOf(visit, bowl).flatMap((placing) => placing.zones.map(({ zone }) => zone)));
    for (const run of clock.runs) if (run.bowl === bowl && run.zone !== '') named.add(run.zone);
    zones = [...named];
    known.set(bowl, zones);
  }
  return zones;
};

const AWAY: ReadonlySet<string> = new Set(['mids', 'lengths', 'ends', 'off-head', 'brow', 'lashes', 'beard']);
const WHOLE: ReadonlySet<string> = new Set(['roots', 'all', 'full-head']);

/** Whether a place of the head goes down to its new growth: roots, or no word of its lengths, ends or own places. */
const isDownToRoots = (zone: string): boolean => {
  const words = zone.split(' ');
  return words.includes('roots') || words.every((word) => isZone(word) && !AWAY.has(word));
};

/** Whether everything that colours in the bowl is toner: it shades what was lightened and draws no new line at the roots. */
const isOnlyToner = (bowl: BowlReckoned): boolean =>
  inside(bowl).every(
    ({ item }) => item?.kind === undefined || item.kind === 'toner' || !kindFacts(item.kind).colours,
  ) && !isLightening(bowl);

/**
 * Whether a visit did the roots, so that new growth counts from it: oxidative colour on roots, on the scalp or all over,
 * or a lightener at a place of the head that goes down to the roots, foils a little off the scalp among them.
 */
export const reachesRoots = (reckoned: Pick<VisitReckoned, 'visit' | 'bowls' | 'clock'>): boolean =>
  reckoned.bowls.some((bowl) => {
    if (!isColour(bowl) || !isOxidative(bowl) || isOnlyToner(bowl)) return false;
    const zones = zonesOfBowl(reckoned, bowl.name);
    if (zones.length === 0 || placingsOf(reckoned.visit, bowl.name).some(({ scalp }) => scalp === 'on')) return true;
    const lightening = isLightening(bowl);
    return zones.some((zone) => zone.split(' ').some((word) => WHOLE.has(word)) || (lightening && isDownToRoots(zone)));
  });
