import { factsOf } from '../facts-of.ts';
import type { VisitReckoned } from '../model.ts';
import { matchZones } from '../zone-match.ts';

/** Whether a place lies in what another names: each word of the wide one is said of it, or they are the same. */
const liesIn = (visit: VisitReckoned, zone: string, wide: string): boolean =>
  matchZones(zone, wide, visit.salon.zones) === 'same' ||
  wide.split(' ').every((word) => zone.split(' ').includes(word));

/** Whether all of some places are left out at a visit by its `leave` lines; none at all is the whole head, and is not. */
export const areLeftOut = (visit: VisitReckoned, zones: readonly string[]): boolean => {
  const left = factsOf(visit.visit, 'leave').flatMap((fact) =>
    fact.word === 'leave' ? fact.zones.map(({ zone }) => zone) : [],
  );
  return left.length > 0 && zones.length > 0 && zones.every((zone) => left.some((wide) => liesIn(visit, zone, wide)));
};
