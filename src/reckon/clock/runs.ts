import type { SalonSettings } from '../../journal/salon.ts';
import type { Place } from '../../text/span.ts';
import type { Minute } from '../model.ts';
import { matchLooked, matchZones, type ZoneMatch } from '../zone-match.ts';

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

/** Whether a line that names this bowl alone would speak of any of the runs. */
export const hasRunOf = (bowl: string, runs: readonly Applied[]): boolean =>
  runs.some((run) => run.bowl === undefined || run.bowl === bowl || run.moreOf === bowl);

/** The runs that one zone of a line speaks of; as `rest` only where no run has the very zone. */
const ofZone = (zone: string, runs: readonly Applied[], zones: Zones): readonly Applied[] => {
  const closely = matched(zone, runs, zones, matchZones);
  return closely.length > 0 ? closely : matched(zone, runs, zones, matchLooked);
};

const matchOf = (zone: string, run: Applied, zones: Zones, matches: typeof matchZones): ZoneMatch | undefined =>
  run.zone === '' ? 'within' : matches(zone, run.zone, zones);

const matched = (
  zone: string,
  runs: readonly Applied[],
  zones: Zones,
  matches: typeof matchZones,
): readonly Applied[] => {
  const found: Applied[] = [];
  let isExact = false;
  for (const run of runs) {
    const match = matchOf(zone, run, zones, matches);
    if (match !== undefined) found.push(run);
    isExact ||= match === 'same';
  }
  return isExact ? found.filter((run) => matchOf(zone, run, zones, matches) !== 'rest') : found;
};

const NONE: readonly Applied[] = [];

const spokenOf = (mention: Mention, runs: readonly Applied[], zones: Zones): readonly Applied[] => {
  const own = runs.filter((run) => isOfBowl(mention, run));
  if (mention.zones.length === 0 || own.length === 0) return own;
  const ofOne = (zone: string): readonly Applied[] => {
    const ofThis = ofZone(zone, own, zones);
    return ofThis.length === 0 && mention.bowls.length > 0 ? own : ofThis;
  };
  const [only] = mention.zones;
  if (only !== undefined && mention.zones.length === 1) return ofOne(only);
  const found = new Set<Applied>(mention.zones.flatMap(ofOne));
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
  // A line is asked about more than once.
  const known = new Map<Mention, readonly Applied[]>();
  return (mention) => {
    let spoken = known.get(mention);
    if (spoken === undefined) {
      spoken = spokenOf(mention, runs, zones);
      known.set(mention, spoken);
    }
    return spoken;
  };
};

/** A line that ends runs, with the minute it says. */
export type Ending = {
  readonly mention: Mention;
  readonly minute: Minute | undefined;
  /** The last section off, of a span. */
  readonly end: Minute | undefined;
  readonly place: Place;
  readonly about: boolean;
};

/** The ending of each run that has one, and the lines that ended anything. */
export type Endings<E extends Ending> = { readonly of: Map<Applied, E>; readonly did: ReadonlySet<E> };

/**
 * The endings of runs, in order of the clock: a line ends what it speaks of and is on then. Where all that a line names
 * is off already, it came off in parts, and the later line ends it.
 */
export const endingsOf = <E extends Ending>(endings: readonly E[], spoken: SpokenOf): Endings<E> => {
  const of = new Map<Applied, E>();
  const did = new Set<E>();
  const timed = endings.filter((ending): ending is E & { readonly minute: Minute } => ending.minute !== undefined);
  if (timed.length > 1) timed.sort((a, b) => a.minute - b.minute);
  for (const ending of timed) {
    const { mention } = ending;
    // A section that goes on while the first come off is of a span as well.
    const minute = Math.max(ending.minute, ending.end ?? ending.minute);
    const named = spoken(mention);
    let last = minute;
    let ended = false;
    for (const run of named) {
      if (run.firstOn > minute) continue;
      last = run.firstOn;
      if (of.has(run)) continue;
      of.set(run, ending);
      ended = true;
    }
    if (!ended && !namesNothing(mention))
      for (const run of named) {
        if (run.firstOn !== last) continue;
        of.set(run, ending);
        ended = true;
      }
    if (ended) did.add(ending);
  }
  return { of, did };
};
