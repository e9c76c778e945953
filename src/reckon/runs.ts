import type { SalonSettings } from '../journal/salon.ts';
import type { Place } from '../text/span.ts';
import type { Minute } from './model.ts';
import { matchZones } from './zone-match.ts';

/** A run before its end is known. `line` is the `on` line's, counted from the entry's header. */
export type Applied = {
  readonly bowl: string | undefined;
  /** The bowl that a `more` line made this one from. */
  readonly moreOf: string | undefined;
  readonly zone: string;
  readonly firstOn: Minute;
  readonly allOn: Minute;
  readonly spanned: boolean;
  readonly meant: number | undefined;
  readonly about: boolean;
  readonly place: Place;
  readonly line: number;
};

/** The bowls and zones that a clock line names. */
export type Mention = { readonly bowls: readonly string[]; readonly zones: readonly string[] };

/** How closely a line speaks of a run: 0 is not at all, 1 is of everything. */
export type Closeness = number;

const EVERYTHING = 1;
const BOWL = 3;
const BY_ZONE = { rest: 4, within: 5, same: 6 } as const;
const MADE_FROM = 0.5;

const bowlMatch = ({ bowls }: Mention, run: Applied): 'named' | 'weak' | undefined => {
  if (bowls.length === 0) return 'named';
  if (run.bowl === undefined) return 'weak';
  if (bowls.includes(run.bowl)) return 'named';
  return run.moreOf !== undefined && bowls.includes(run.moreOf) ? 'weak' : undefined;
};

/**
 * How closely a line speaks of each run. A bowl alone speaks of all its runs, a zone alone of that zone in any bowl, and
 * neither of everything. A zone that no run of the bowl has is a smaller place of the bowl's.
 */
export const speaksOf = (mention: Mention, runs: readonly Applied[], zones: SalonSettings['zones']): Closeness[] => {
  const matches = runs.map((run) => bowlMatch(mention, run));
  const weaken = (closeness: Closeness, index: number): Closeness =>
    closeness > 0 && matches[index] === 'weak' ? closeness - MADE_FROM : closeness;
  if (mention.zones.length === 0) {
    const closeness = mention.bowls.length > 0 ? BOWL : EVERYTHING;
    return matches.map((match, index) => (match === undefined ? 0 : weaken(closeness, index)));
  }
  const best = runs.map(() => 0);
  for (const zone of mention.zones) {
    const found = runs.map((run, index) => {
      if (matches[index] === undefined) return 0;
      if (run.zone === '') return BOWL;
      const match = matchZones(zone, run.zone, zones);
      return match === undefined ? 0 : BY_ZONE[match];
    });
    const exact = found.includes(BY_ZONE.same);
    const named = found.some((closeness) => closeness > 0);
    for (const [index, closeness] of found.entries()) {
      const own = exact && closeness === BY_ZONE.rest ? 0 : closeness;
      const smaller = !named && mention.bowls.length > 0 && matches[index] !== undefined ? BOWL : 0;
      best[index] = Math.max(best[index] ?? 0, weaken(Math.max(own, smaller), index));
    }
  }
  return best;
};

/** A line that ends runs, with the minute it says. */
export type Ending = Mention & { readonly minute: Minute | undefined; readonly place: Place; readonly about: boolean };

const isAgain = (a: Applied, b: Applied): boolean => a.bowl === b.bowl && a.zone === b.zone && b.firstOn > a.firstOn;

/** The ending of each run among `endings`: the closest that speaks of it, then the earliest, at or after it went on. */
export const endingsOf = (
  runs: readonly Applied[],
  endings: readonly Ending[],
  zones: SalonSettings['zones'],
): (Ending | undefined)[] => {
  const spoken = endings.map((ending) => speaksOf(ending, runs, zones));
  return runs.map((run, index) => {
    const again = Math.min(...runs.filter((other) => isAgain(run, other)).map(({ firstOn }) => firstOn));
    const fit = endings
      .map((ending, which) => ({ ending, closeness: spoken[which]?.[index] ?? 0 }))
      .filter(({ ending, closeness }) => closeness > 0 && (ending.minute ?? run.firstOn - 1) >= run.firstOn);
    const before = fit.filter(({ ending }) => (ending.minute ?? 0) <= again);
    const [first] = (before.length > 0 ? before : fit).sort(
      (a, b) => b.closeness - a.closeness || (a.ending.minute ?? 0) - (b.ending.minute ?? 0),
    );
    return first?.ending;
  });
};
