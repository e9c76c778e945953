import type { SalonSettings } from '../journal/salon.ts';
import type { Place } from '../text/span.ts';
import type { Minute } from './model.ts';
import { matchLooked, matchZones } from './zone-match.ts';

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

type Zones = SalonSettings['zones'];

/** Whether a line names neither a bowl nor a zone: it speaks of everything that is on. */
export const namesNothing = ({ bowls, zones }: Mention): boolean => bowls.length === 0 && zones.length === 0;

const isOfBowl = ({ bowls }: Mention, { bowl, moreOf }: Applied): boolean =>
  bowls.length === 0 || bowl === undefined || bowls.includes(bowl) || (moreOf !== undefined && bowls.includes(moreOf));

/** The runs that one zone of a line speaks of; as `rest` only where no run has the very zone. */
const ofZone = (zone: string, runs: readonly Applied[], zones: Zones): Applied[] => {
  const matchedBy = (matches: typeof matchZones) =>
    runs.map((run) => ({ run, match: run.zone === '' ? ('within' as const) : matches(zone, run.zone, zones) }));
  const closely = matchedBy(matchZones);
  const matched = closely.some(({ match }) => match !== undefined) ? closely : matchedBy(matchLooked);
  const exact = matched.some(({ match }) => match === 'same');
  return matched.filter(({ match }) => match !== undefined && !(exact && match === 'rest')).map(({ run }) => run);
};

const NONE: readonly Applied[] = [];

const spokenOf = (mention: Mention, runs: readonly Applied[], zones: Zones): readonly Applied[] => {
  const own = runs.filter((run) => isOfBowl(mention, run));
  if (mention.zones.length === 0 || own.length === 0) return own;
  const found = new Set<Applied>();
  for (const zone of mention.zones) {
    const ofThis = ofZone(zone, own, zones);
    for (const run of ofThis.length === 0 && mention.bowls.length > 0 ? own : ofThis) found.add(run);
  }
  return found.size === own.length ? own : own.filter((run) => found.has(run));
};

/** The runs that a line speaks of, in order of the clock. */
export type SpokenOf = (mention: Mention) => readonly Applied[];

/**
 * Tells of any line which runs it speaks of. A bowl alone names all its runs, and those of its further mixes; a zone
 * alone names that zone in any bowl; neither speaks of all. A zone that no run of the bowl has is a smaller place of the
 * bowl's.
 */
export const speaker = (runs: readonly Applied[], zones: Zones): SpokenOf => {
  if (runs.length === 0) return () => NONE;
  // Most lines of a visit name the same few things.
  const known = new Map<string, readonly Applied[]>();
  return (mention) => {
    const key = `${mention.bowls.join()};${mention.zones.join()}`;
    let spoken = known.get(key);
    if (spoken === undefined) {
      spoken = spokenOf(mention, runs, zones);
      known.set(key, spoken);
    }
    return spoken;
  };
};

/** A line that ends runs, with the minute it says. */
export type Ending = {
  readonly mention: Mention;
  readonly minute: Minute | undefined;
  readonly place: Place;
  readonly about: boolean;
};

/** The ending of each run that has one, and the lines that ended anything. */
export type Endings<E extends Ending> = { readonly of: ReadonlyMap<Applied, E>; readonly did: ReadonlySet<E> };

/**
 * The endings of runs, in order of the clock: a line ends what it speaks of and is on then. Where all that a line names
 * is off already, it came off in parts, and the later line ends it.
 */
export const endingsOf = <E extends Ending>(endings: readonly E[], spoken: SpokenOf): Endings<E> => {
  const of = new Map<Applied, E>();
  const did = new Set<E>();
  const timed = endings.filter((ending): ending is E & { readonly minute: Minute } => ending.minute !== undefined);
  for (const ending of timed.sort((a, b) => a.minute - b.minute)) {
    const { minute } = ending;
    const begun = spoken(ending.mention).filter(({ firstOn }) => firstOn <= minute);
    const on = begun.filter((run) => !of.has(run));
    const last = begun.at(-1)?.firstOn;
    const inParts = namesNothing(ending.mention) ? NONE : begun.filter(({ firstOn }) => firstOn === last);
    for (const run of on.length > 0 ? on : inParts) {
      of.set(run, ending);
      did.add(ending);
    }
  }
  return { of, did };
};
