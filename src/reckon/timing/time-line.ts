import type { ShelfItem } from '../../journal/shelf.ts';
import type { TimeLine } from '../../records/schema/shelf.ts';
import type { Duration } from '../../records/schema/values.ts';
import { MINUTES_IN } from '../../text/dates.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { itemsIn } from '../bowl/contents.ts';
import { greyShare, wasLightened } from '../client/state.ts';
import { isAt } from '../head/hair-meets.ts';
import { liesOnScalp } from '../head/on-scalp.ts';
import { isAway } from '../head/seen-at.ts';
import { placingsOf } from '../head/services.ts';
import type { BowlReckoned, Minute, PutOn, Run, Unclocked, VisitReckoned } from '../model.ts';
import { matchZones } from '../zone-match.ts';

/** Whether a run of a bowl is on the scalp: by the `place` line that names its zone, or by any where none does. */
export const isOnScalp = ({ visit, salon }: VisitReckoned, bowl: BowlReckoned, run: PutOn): boolean => {
  const placings = placingsOf(visit, bowl.name);
  const own = placings.filter(({ zones }) => zones.some(({ zone }) => matchZones(zone, run.zone, salon.zones)));
  return (own.length > 0 ? own : placings).some(
    (placing) =>
      placing.scalp === 'on' ||
      // Of roots and lengths on one line, the roots are on the scalp.
      ((run.zone === '' || isAt(run.zone, 'roots')) && liesOnScalp(placing, bowl)),
  );
};

type Case = {
  readonly visit: VisitReckoned;
  readonly earlier: readonly VisitReckoned[];
  readonly bowl: BowlReckoned;
  /** Without a clock it has no minute at which it went on. */
  readonly run: PutOn & { readonly firstOn?: Minute };
};

/** What went on without a clock is taken to go over what the visit lightened: a choice. */
const LATE: Minute = Number.POSITIVE_INFINITY;

/** A length of time in minutes: near end and far end. */
export const minutesOf = ({ value, to, unit }: Duration): { readonly near: number; readonly far: number } => ({
  near: value * MINUTES_IN[unit],
  far: (to ?? value) * MINUTES_IN[unit],
});

const asksFor = (line: TimeLine, condition: NonNullable<TimeLine['when']>['if']): boolean =>
  line.when?.if === condition;

const isConditional = ({ when }: TimeLine): boolean => when !== undefined;

/**
 * The `time` line of an item that applies to a run. Conditions are asked in this order: on the scalp, with a product in
 * the bowl, on lightened hair, by the share of grey; else the plain line. A choice, since makers do not rank them.
 */
export const timeLineOf = (item: ShelfItem, { visit, earlier, bowl, run }: Case): TimeLine | undefined => {
  const { times } = item;
  if (!times.some(isConditional)) return times[0];
  const onScalp = times.find((line) => asksFor(line, 'on-scalp'));
  if (onScalp !== undefined && isOnScalp(visit, bowl, run)) return onScalp;
  const withProduct = times.find(
    ({ when }) => when?.if === 'with' && itemsIn(bowl).some(({ name }) => name === when.product.name),
  );
  if (withProduct !== undefined) return withProduct;
  const lightened = times.find((line) => asksFor(line, 'pre-lightened'));
  if (lightened !== undefined && wasLightened(visit.client, earlier, visit, run.firstOn ?? LATE)) return lightened;
  return byGrey(times, visit) ?? times.find(({ when }) => when === undefined);
};

/** The line with the highest share of grey that the client reaches. */
const byGrey = (times: readonly TimeLine[], { client, visit }: VisitReckoned): TimeLine | undefined => {
  const lines = times.flatMap((line) => (line.when?.if === 'grey' ? [{ line, percent: line.when.percent }] : []));
  if (lines.length === 0) return undefined;
  const grey = greyShare(client, visit)?.percent ?? 0;
  return lines.filter(({ percent }) => percent <= grey).toSorted((a, b) => b.percent - a.percent)[0]?.line;
};

/**
 * Minutes from when the whole of a bowl was on: colour that goes on in sections is timed from the last one (textbook
 * practice for a first application, lengths before roots; common practice, no source). Ends that are only refreshed
 * after the roots, and what went on after this run came off, do not put the roots off.
 */
const fromWhole = (run: Run, off: number, runs: readonly Run[]): number => {
  let wholeOn = run.allOn;
  for (const other of runs) {
    if (other.bowl !== run.bowl || other.allOn <= wholeOn || other.allOn > off) continue;
    if (isAway(run.zone) || !isAway(other.zone)) wholeOn = other.allOn;
  }
  return off - wholeOn;
};

/** How long something was on: from when its minutes count, in words, by its own place, and by the whole of its bowl. */
export type MinutesOn = {
  readonly from: 'first on' | 'all on' | 'section by section' | undefined;
  /** Undefined without a clock. */
  readonly off: number | undefined;
  readonly minutes: number;
  readonly whole: number;
};

const fromOf = (item: ShelfItem, line: TimeLine): 'first-on' | 'all-on' =>
  line.from ?? (item.kind === undefined ? 'all-on' : kindFacts(item.kind).timeFrom);

/** How long something was on that the notes give minutes of and no clock; undefined where they give none. */
export const minutesUnclocked = ({ minutes, last }: Unclocked): MinutesOn | undefined =>
  minutes === undefined || last
    ? undefined
    : { from: undefined, off: undefined, minutes: minutes.most, whole: minutes.least };

/** From when an item's minutes count, in words and in the run's own minutes; undefined while it is not taken off. */
export const minutesOn = (item: ShelfItem, line: TimeLine, run: Run, runs: readonly Run[]): MinutesOn | undefined => {
  const from = fromOf(item, line);
  const { off, told, sections } = run;
  if (told !== undefined) return { from: from === 'first-on' ? 'first on' : 'all on', off, minutes: told, whole: told };
  // Each section is held against the time by itself.
  if (sections !== undefined) return { from: 'section by section', off, minutes: sections.least, whole: sections.most };
  const minutes = from === 'first-on' ? run.fromFirst : run.fromAll;
  if (off === undefined || minutes === undefined) return undefined;
  // Lightener is watched place by place.
  const inSections = from === 'all-on' && item.kind !== 'lightener';
  const whole = inSections ? fromWhole(run, off, runs) : minutes;
  return { from: from === 'first-on' ? 'first on' : 'all on', off, minutes, whole };
};

/** `20 to 50 min from first on`, as a `time` line says it. */
export const timeText = ({ minutes }: TimeLine, from: MinutesOn['from']): string => {
  const { near, far } = minutesOf(minutes);
  return `${near === far ? near : `${near} to ${far}`} min${fromText(from)}`;
};

/** ` from first on`, after a number of minutes; nothing where the notes have no clock. */
export const fromText = (from: MinutesOn['from']): string =>
  from === undefined ? '' : from === 'section by section' ? `, ${from}` : ` from ${from}`;
