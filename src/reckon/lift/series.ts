import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Seen } from '../../records/schema/values.ts';
import type { Place } from '../../text/span.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { isGroup } from '../../trade/zones.ts';
import type { Minute, Run, VisitReckoned } from '../model.ts';
import { matchZones } from '../zone-match.ts';
import { type LiftCurve, type LiftPoint, liftCurve } from './curve.ts';
import { lighteningOf } from './lightener.ts';
import { depthSeen } from './seen-depth.ts';

/**
 * The lift of a visit: for every lightened bowl and place, what was seen when, and the curve through it.
 *
 * Reads: one reckoned visit. Gives: its series, in the order they went on. Runs again: when the visit changes.
 */

/** A look with the time of day and the place in the note. */
export type LiftLook = LiftPoint & { readonly at: Minute; readonly seen: Seen; readonly place: Place };

export type LiftSeries = {
  readonly client: string;
  /** ISO date of the visit. */
  readonly date: string;
  readonly bowl: string;
  /** '' for the whole of a bowl that names no place. */
  readonly zone: string;
  readonly product: ShelfItem;
  /** Of the developer, per cent to one decimal; undefined when the bowl does not say. */
  readonly strength: number | undefined;
  /** Minutes of heat. */
  readonly heat: number;
  readonly firstOn: Minute;
  readonly off: Minute | undefined;
  /** Minutes count from first on. Ascending. */
  readonly looks: readonly LiftLook[];
  readonly curve: LiftCurve;
  /** A time is hedged. */
  readonly about: boolean;
};

/** Whether a zone seen is a smaller place of the run's, to be followed apart from it. */
const isSmaller = (zone: string, run: string, zones: SalonSettings['zones']): boolean => {
  const words = zone.split(' ');
  if (zone === run || words.some(isGroup)) return false;
  if (run === '') return true;
  const own = run.split(' ');
  if (own.some(isGroup) || words.length > own.length) return true;
  return matchZones(zone, run, zones) === undefined;
};

type Told = { readonly zone: string; readonly looks: readonly LiftLook[] };

const looksOf = ({ checks, firstOn, off }: Run, stagesOnly: boolean): LiftLook[] =>
  checks
    .flatMap(({ at, seen, place }) =>
      seen.flatMap((one): LiftLook[] => {
        const depth = depthSeen(one, stagesOnly);
        if (at === undefined || depth === undefined || at < firstOn) return [];
        // What is seen after it came off was reached by then.
        return [{ minute: Math.min(at, off ?? at) - firstOn, ...depth, at, seen: one, place }];
      }),
    )
    .sort((a, b) => a.minute - b.minute);

/**
 * The looks of a run, place by place. One that names a smaller place than the run tells of that place alone; the looks
 * at the whole run before that place was first told apart are of both.
 */
const toldApart = (run: Run, looks: readonly LiftLook[], zones: SalonSettings['zones']): Told[] => {
  const smallerOf = ({ seen }: LiftLook): string[] =>
    seen.zones.map(({ zone }) => zone).filter((zone) => isSmaller(zone, run.zone, zones));
  const whole = looks.filter((look) => smallerOf(look).length < Math.max(1, look.seen.zones.length));
  const smaller = [...new Set(looks.flatMap(smallerOf))];
  const apart = smaller.map((zone): Told => {
    const own = looks.filter((look) => smallerOf(look).includes(zone));
    const first = Math.min(...own.map(({ minute }) => minute));
    return { zone, looks: [...whole.filter(({ minute }) => minute < first), ...own] };
  });
  return [{ zone: run.zone, looks: whole }, ...apart].filter((told) => told.looks.length > 0);
};

/** The lift of every lightened bowl and place of a visit that was looked at. */
export const liftOf = ({ client, date, bowls, clock, salon }: VisitReckoned): LiftSeries[] => {
  const all: LiftSeries[] = [];
  for (const run of clock.runs) {
    const bowl = bowls.find(({ name }) => name === run.bowl);
    const lightening = bowl && lighteningOf(bowl);
    if (bowl === undefined || lightening === undefined) continue;
    // A depth seen under a colour may be the colour's own; a stage is always the hair's.
    const stagesOnly = lightening.product.kind !== undefined && kindFacts(lightening.product.kind).colours;
    for (const { zone, looks } of toldApart(run, looksOf(run, stagesOnly), salon.zones)) {
      // A place of no run's own is told of by all runs of its bowl, and counts from the first.
      if (zone !== run.zone && all.some((one) => one.bowl === bowl.name && one.zone === zone)) continue;
      all.push({
        client: client.name,
        date,
        bowl: bowl.name,
        zone,
        ...lightening,
        heat: run.heat,
        firstOn: run.firstOn,
        off: run.off,
        looks,
        curve: liftCurve(looks),
        about: run.about,
      });
    }
  }
  return all;
};
