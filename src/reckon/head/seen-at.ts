import type { ClientFile } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Seen } from '../../records/schema/values.ts';
import { exactOf } from '../../text/exact.ts';
import { capital } from '../../text/fold.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import { type DepthSpan, depthSeen } from '../lift/seen-depth.ts';
import type { VisitReckoned } from '../model.ts';
import { figure } from '../say.ts';
import { matchZones } from '../zone-match.ts';

/** What a `start`, `want`, `result` or `natural` line says of one place of the head; '' when it names none. */
export type SeenAt = {
  readonly zone: string;
  readonly seen: Seen;
  readonly place: Place;
  /** By the depth as typed. */
  readonly depth: DepthSpan | undefined;
};

export type SeenDepth = SeenAt & { readonly depth: DepthSpan };

/** Adds what a line says, place by place. */
const spread = (
  stood: Stood,
  fact: { readonly line: number; readonly seen: readonly Seen[] },
  seens: SeenAt[],
): void => {
  for (const seen of fact.seen) {
    const { zones, words } = seen;
    const place = placeOf(stood, fact, (seen.depth ?? seen.stage ?? words[0] ?? zones[0])?.at);
    const depth = depthSeen(seen);
    if (zones.length === 0) seens.push({ zone: '', seen, place, depth });
    for (const { zone } of zones) seens.push({ zone, seen, place, depth });
  }
};

type Word = 'start' | 'want' | 'result';

const seens = recently((stood: VisitReckoned['visit']) => {
  const all: Record<Word, SeenAt[]> = { start: [], want: [], result: [] };
  for (const fact of stood.entry.facts)
    if (fact.word === 'start' || fact.word === 'want' || fact.word === 'result') spread(stood, fact, all[fact.word]);
  return all;
});

/** What the lines of one word say of a visit, place by place. */
export const seenAt = ({ visit }: Pick<VisitReckoned, 'visit'>, word: Word): readonly SeenAt[] => seens(visit)[word];

const hasDepth = (one: SeenAt): one is SeenDepth => one.depth !== undefined;

const withDepth = (seen: readonly SeenAt[]): readonly SeenDepth[] =>
  seen.every(hasDepth) ? seen : seen.filter(hasDepth);

const depths = recently((visit: VisitReckoned['visit']) => {
  const { start, want, result } = seens(visit);
  return { start: withDepth(start), want: withDepth(want), result: withDepth(result) };
});

/** As `seenAt`, those that give a depth. */
export const depthsAt = ({ visit }: Pick<VisitReckoned, 'visit'>, word: Word): readonly SeenDepth[] =>
  depths(visit)[word];

const naturals = recently(({ entries }: ClientFile): readonly SeenDepth[] => {
  const seens: SeenAt[] = [];
  for (const stood of entries)
    for (const fact of stood.entry.facts) if (fact.word === 'natural') spread(stood, fact, seens);
  return withDepth(seens);
});

/** Her natural depth at a place, else of all of her hair; undefined where no `natural` line gives it. */
export const naturalDepth = (client: ClientFile, zone: string): DepthSpan | undefined => {
  const own = naturals(client);
  return (own.find((one) => one.zone === zone) ?? own.find((one) => one.zone === '' || one.zone === 'all'))?.depth;
};

/** Whether a place meets where a bowl goes; no place at all, on either side, is all over. */
export const meets = (zone: string, zones: readonly string[], own: SalonSettings['zones']): boolean => {
  if (zone === '' || zones.length === 0 || zones.includes('')) return true;
  return zones.some((other) => {
    const match = matchZones(zone, other, own);
    return match === 'same' || match === 'within';
  });
};

const AWAY: ReadonlySet<string> = new Set(['mids', 'lengths', 'ends']);

/** Whether a place is along the hair, away from new growth. */
export const isAway = (zone: string): boolean =>
  AWAY.has(zone) || (zone.includes(' ') && zone.split(' ').some((word) => AWAY.has(word)));

/**
 * The depths that a bowl finds where it goes: by the `start` lines of its places; where they say nothing of it and it
 * does not go to the lengths alone, by the roots, else by the client’s natural depth.
 */
export const startsAt = (visit: VisitReckoned, zones: readonly string[]): readonly SeenDepth[] => {
  const starts = depthsAt(visit, 'start');
  const own = starts.filter(({ zone }) => meets(zone, zones, visit.salon.zones));
  if (own.length > 0 || (zones.length > 0 && zones.every(isAway))) return own;
  const roots = starts.filter(({ zone }) => zone === 'roots');
  return roots.length > 0 ? roots : naturals(visit.client);
};

/** `Roots`, `The hair`: a place as it opens a message. */
export const placeName = (zone: string): string => (zone === '' ? 'The hair' : capital(zone));

/** `4`, `6.5`, `4 to 6`. */
export const depthText = ({ low, high }: DepthSpan): string =>
  low === high ? figure(exactOf(low)) : `${figure(exactOf(low))} to ${figure(exactOf(high))}`;
