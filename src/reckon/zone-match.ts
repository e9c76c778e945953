import type { SalonSettings } from '../journal/salon.ts';
import { GROUP_ZONES, isGroup } from '../trade/zones.ts';
import { pairMemo } from './pair-memo.ts';

type Zones = SalonSettings['zones'];

/** Words that stand for any place: with another word, they leave that word as it is. */
const ANYWHERE: ReadonlySet<string> = new Set(['all', 'full-head', 'rest']);

/** The places a word stands for, each as its words. A salon's own group comes before the trade's. */
const membersOf = (word: string, zones: Zones, within: readonly string[]): readonly (readonly string[])[] => {
  if (ANYWHERE.has(word)) return [[]];
  const own = within.includes(word) ? undefined : zones.get(word)?.zones;
  if (own !== undefined && own.length > 0) return own.flatMap(({ zone }) => placesOf(zone, zones, [...within, word]));
  const group = isGroup(word) ? GROUP_ZONES[word] : undefined;
  return group === undefined ? [[word]] : group.map((zone) => [zone]);
};

/** A zone as the places it covers, each as its words: `roots t-section` is `roots parting` and `roots hairline`. */
const placesOf = (zone: string, zones: Zones, within: readonly string[] = []): readonly (readonly string[])[] => {
  let places: readonly (readonly string[])[] = [[]];
  for (const word of zone.split(' ')) {
    const members = membersOf(word, zones, within);
    places = places.flatMap((place) => members.map((member) => [...place, ...member]));
  }
  return places;
};

const isWithin = (narrow: readonly string[], wide: readonly string[]): boolean =>
  wide.every((word) => narrow.includes(word));

/** How two zones meet: `same` words, one `within` the other (or sharing a member), or only as what is left over. */
export type ZoneMatch = 'same' | 'within' | 'rest';

const matchOthers = pairMemo((a, b, zones): ZoneMatch | undefined => {
  const [left, right] = [placesOf(a, zones), placesOf(b, zones)];
  const meet = left.some((one) => right.some((other) => isWithin(one, other) || isWithin(other, one)));
  if (!meet) return undefined;
  return [a, b].some((zone) => zone.split(' ').includes('rest')) ? 'rest' : 'within';
});

/**
 * Whether two zones speak of the same hair. `back left` is within `back` and within `all`; `parting` is within
 * `t-section`; a salon's groups cover what the salon says. `rest` meets every zone, but loosely.
 */
export const matchZones = (a: string, b: string, zones: Zones): ZoneMatch | undefined =>
  a === b ? 'same' : matchOthers(a, b, zones);

/** The parting lies on the top: one who stands behind the chair says `top` for what is placed along it. */
const onTop = (zone: string): string =>
  zone
    .split(' ')
    .map((word) => (word === 'top' ? 'parting' : word))
    .join(' ');

/** As `matchZones`, for what is looked at: the top is looked at for the parting, and so for the T-section. */
export const matchLooked = (a: string, b: string, zones: Zones): ZoneMatch | undefined =>
  matchZones(a, b, zones) ?? matchZones(onTop(a), onTop(b), zones);
