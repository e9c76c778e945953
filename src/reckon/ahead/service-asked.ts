import { isLightening, placingsOf, putsOnColour, touchesRoots, zonesOfBowl } from '../head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';
import { changesOf } from './asked-words.ts';

/**
 * Which service the next visit is asked for, and the last visit like it.
 *
 * Reads: the client's reckoned visits and the `next` lines of one. Gives: a visit, and which of its bowls the words ask for. Runs
 * again: when one of the visits changes.
 */

/** Words as they are compared: in small letters, one or several of a thing alike. */
const stemsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .map((word) => word.replace(/s$/, ''))
    .filter((word) => word !== '');

/** The services that the `next` lines of a visit ask for, each in its words: `roots`, `half head`; what changes a bowl is none. */
const servicesIn = (planned: VisitReckoned | undefined): string[] =>
  (planned === undefined ? [] : changesOf(planned)).flatMap(({ bowl, words, text }) =>
    bowl === undefined && words.length > 0 ? [text] : [],
  );

/** The items that a visit charged for, in their words. */
const chargedFor = ({ visit }: VisitReckoned): string[] =>
  visit.entry.facts.flatMap((fact) =>
    fact.word === 'charge' && !fact.total && fact.discount === undefined && fact.item !== '' ? [fact.item] : [],
  );

/**
 * What a bowl did, in words: its products, their kinds, techniques and places. `foil` stands for a lightener in foils
 * alone: low lights in foil are charged for as such (common practice, no source).
 */
const wordsOfBowl = (visit: VisitReckoned, bowl: BowlReckoned): Set<string> => {
  const placings = placingsOf(visit.visit, bowl.name);
  const foils = isLightening(bowl) && placings.some(({ cover }) => cover?.word === 'foil');
  const said = [
    ...bowl.portions.flatMap(({ item, role }) => (item === undefined || role !== 'base' ? [] : [item.name, item.kind])),
    ...placings.map(({ technique }) => technique?.word),
    ...zonesOfBowl(visit, bowl.name),
    foils && 'foil',
    touchesRoots({ ...visit, bowls: [bowl] }) && 'root',
  ];
  return new Set(said.flatMap((one) => (one ? stemsOf(one) : [])));
};

const holdsAll = (words: ReadonlySet<string>, service: string): boolean =>
  stemsOf(service).every((stem) => words.has(stem));

const isCharged = (service: string, items: readonly string[]): boolean =>
  items.some((item) => holdsAll(new Set(stemsOf(item)), service));

/** Whether a visit did a service: it charged for it, or one of its bowls did it. */
const did = (visit: VisitReckoned, service: string): boolean =>
  isCharged(service, chargedFor(visit)) || visit.bowls.some((bowl) => holdsAll(wordsOfBowl(visit, bowl), service));

/** The last visit like the one that is asked for. */
export type AskedVisit = {
  readonly visit: VisitReckoned;
  /** The services asked for that it did, as typed. */
  readonly services: readonly string[];
  /** Names of its bowls for another service, one that it charged for by name and nobody asked for. */
  readonly others: ReadonlySet<string>;
};

/**
 * Bowls for something else: named by an item charged for that is not asked for, or mixed before the first that is asked
 * for. What follows it belongs to it, a toner after foils, unless it was charged for by name.
 */
const othersIn = (visit: VisitReckoned, services: readonly string[]): string[] => {
  const items = chargedFor(visit);
  const unasked = items.filter((item) => !services.some((service) => isCharged(service, [item])));
  const isAsked = visit.bowls.map((bowl) => {
    const words = wordsOfBowl(visit, bowl);
    return services.some((service) => holdsAll(words, service));
  });
  const first = isAsked.indexOf(true);
  const others = visit.bowls.filter((bowl, index) => {
    if (isAsked[index]) return false;
    const words = wordsOfBowl(visit, bowl);
    return index < first || unasked.some((item) => stemsOf(item).some((stem) => words.has(stem)));
  });
  // Where everything would be left out the words name the visit and none of its bowls.
  return others.length === visit.bowls.length ? [] : others.map(({ name }) => name);
};

/**
 * The last visit that put on colour and did the most of what the plan of a visit asks for; undefined where the plan
 * names no service, or none that she has had. `visits` are hers before the day, oldest first.
 */
export const askedVisit = (
  planned: VisitReckoned | undefined,
  visits: readonly VisitReckoned[],
): AskedVisit | undefined => {
  const asked = servicesIn(planned);
  const found = visits.filter(putsOnColour).map((visit) => ({
    visit,
    services: asked.filter((service) => did(visit, service)),
  }));
  const most = Math.max(0, ...found.map(({ services }) => services.length));
  const last = most === 0 ? undefined : found.findLast(({ services }) => services.length === most);
  return last && { ...last, others: new Set(othersIn(last.visit, last.services)) };
};
