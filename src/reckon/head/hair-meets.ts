import type { SalonSettings } from '../../journal/salon.ts';
import { isAlong, OFF_SCALP_HAIR } from '../../trade/zones.ts';
import { pairMemo } from '../pair-memo.ts';
import { matchZones } from '../zone-match.ts';

type Zones = SalonSettings['zones'];

const OWN_HAIR: ReadonlySet<string> = new Set(OFF_SCALP_HAIR);

/** Words for the whole head. */
const WHOLE: ReadonlySet<string> = new Set(['all', 'full-head']);

/** The words of a zone that say where along the hair, and those that say where on the head. */
const parted = (zone: string): { readonly along: readonly string[]; readonly head: string } => {
  const words = zone.split(' ').filter((word) => word !== '' && !WHOLE.has(word));
  return { along: words.filter(isAlong), head: words.filter((word) => !isAlong(word)).join(' ') };
};

/**
 * Whether two zones can hold the same hair: `top` and `lengths` can, since a foil at the top runs down the lengths;
 * `roots` and `ends` cannot, nor `nape` and `top`. '' is the whole head, brows and beard apart.
 */
export const mayMeet = pairMemo((a: string, b: string, zones: Zones): boolean => {
  const [one, other] = [parted(a), parted(b)];
  if (one.along.length > 0 && other.along.length > 0 && !one.along.some((word) => other.along.includes(word)))
    return false;
  if (one.head === '' || other.head === '') return ![one.head, other.head].some((head) => OWN_HAIR.has(head));
  return matchZones(one.head, other.head, zones) !== undefined;
});

/** Whether any of some zones can hold the same hair as any of others; none is the whole head. */
export const anyMeet = (some: readonly string[], others: readonly string[], zones: Zones): boolean =>
  (some.length === 0 ? [''] : some).some((a) =>
    (others.length === 0 ? [''] : others).some((b) => mayMeet(a, b, zones)),
  );

/** A zone with everything below the roots called lengths: hands write `lengths` for all of it, the ends included. */
export const belowRoots = (zone: string): string => zone.replace(/\b(?:mids|ends)\b/gu, 'lengths');

/** As `anyMeet`, with all that is below the roots taken as one. */
export const anyMeetLoosely = (some: readonly string[], others: readonly string[], zones: Zones): boolean =>
  anyMeet(some.map(belowRoots), others.map(belowRoots), zones);

/** Whether a zone names one of these places along the hair. */
export const isAt = (zone: string, ...along: readonly string[]): boolean =>
  zone.includes(' ') ? zone.split(' ').some((word) => along.includes(word)) : along.includes(zone);
