import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit, VisitFact } from '../../records/schema/entry.ts';
import type { Clock, Name, Zone } from '../../records/schema/values.ts';
import { joinSpans, type Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import type { FactsOf, Minute } from '../model.ts';
import type { Mention } from './runs.ts';
import { dayBegins, endOfSpan, minuteOf, pastMidnight } from './settle.ts';

type Hours = SalonSettings['hours'];

/** Lines that say when. */
export type ClockFact = FactsOf<
  'on' | 'off' | 'check' | 'heat' | 'reaction' | 'stopped' | 'wash' | 'rinse' | 'dry' | 'cut'
>;

/** A clock line, its time settled. */
export type Line<F extends ClockFact = ClockFact> = {
  readonly fact: F;
  /** Undefined without a time, and while it counts from an `on`. */
  readonly minute: Minute | undefined;
  /** The end of a span. */
  readonly end: Minute | undefined;
  /** Minutes after an `on`. */
  readonly after: number | undefined;
  readonly about: boolean;
  readonly mention: Mention;
  /** The time or span, where there is one; else the first bowl. */
  readonly place: Place;
};

/** The clock lines of a visit by what they do. */
export type ClockLines = {
  readonly ons: readonly Line<FactsOf<'on'>>[];
  readonly ends: readonly Line<FactsOf<'off' | 'stopped'>>[];
  readonly checks: readonly Line<FactsOf<'check'>>[];
  readonly heats: readonly Line<FactsOf<'heat'>>[];
  readonly others: readonly Line[];
};

/** A bowl's name as pages show it. */
export const shownBowl = (name: string): string => name.toUpperCase();

const NONE: readonly string[] = [];

/** The bowls and zones a line names. */
export const mentionOf = (bowls: readonly Name[], zones: readonly Zone[]): Mention => ({
  bowls: bowls.length === 0 ? NONE : bowls.map(({ name }) => shownBowl(name)),
  zones: zones.length === 0 ? NONE : zones.map(({ zone }) => zone),
});

const zonesOf = (fact: ClockFact): readonly Zone[] => {
  if (fact.word !== 'check') return fact.zones;
  const [only] = fact.seen;
  return only !== undefined && fact.seen.length === 1 ? only.zones : fact.seen.flatMap(({ zones }) => zones);
};

const fromOf = (fact: ClockFact): Clock | undefined =>
  fact.word === 'off' || fact.word === 'reaction' || fact.word === 'stopped' ? fact.time : fact.period?.from;

const toOf = (fact: ClockFact): Clock | undefined =>
  fact.word === 'off' ? fact.until : fact.word === 'reaction' || fact.word === 'stopped' ? undefined : fact.period?.to;

/** How the times of a visit are settled. */
type Ground = {
  readonly hours: Hours;
  /** The minute that `0+25` counts from: that of the visit's first `zero` line; undefined where none stands. */
  readonly zero: Minute | undefined;
};

const groundOf = ({ entry }: Stood<Visit>, hours: Hours): Ground => {
  const line = entry.facts.find((fact) => fact.word === 'zero');
  return { hours, zero: line?.word === 'zero' ? minuteOf(line.time, hours) : undefined };
};

const minuteOn = (clock: Clock, { hours, zero }: Ground): Minute | undefined =>
  clock.head === undefined ? minuteOf(clock, hours) : zero === undefined ? undefined : zero + clock.head;

/** The minute that a time typed in a visit means; undefined for one that counts from an `on`, or from a missing `zero`. */
export const minuteIn = (visit: Stood<Visit>, clock: Clock, hours: Hours): Minute | undefined =>
  minuteOn(clock, groundOf(visit, hours));

/** When the work of a visit begins: from its `on` lines and its header. */
const visitBegins = ({ entry }: Stood<Visit>, ground: Ground): Minute | undefined => {
  const minutes: Minute[] = [];
  for (const fact of entry.facts) {
    const minute = fact.word === 'on' && fact.period ? minuteOn(fact.period.from, ground) : undefined;
    if (minute !== undefined) minutes.push(minute);
  }
  const came = minutes.length > 0 && entry.time !== undefined ? minuteOf(entry.time, ground.hours) : undefined;
  if (came !== undefined) minutes.push(came);
  return dayBegins(minutes);
};

const settledOf = (clock: Clock | undefined, ground: Ground, begins: Minute | undefined): Minute | undefined => {
  const minute = clock && minuteOn(clock, ground);
  return minute === undefined ? undefined : pastMidnight(minute, begins);
};

const lineOf = <F extends ClockFact>(
  fact: F,
  visit: Stood<Visit>,
  ground: Ground,
  begins: Minute | undefined,
): Line<F> => {
  const from = fromOf(fact);
  const to = toOf(fact);
  const minute = settledOf(from, ground, begins);
  const end = settledOf(to, ground, begins);
  return {
    fact,
    minute,
    end: minute === undefined || end === undefined ? undefined : endOfSpan(minute, end),
    after: from?.after,
    about: from?.about === true || to?.about === true,
    mention: mentionOf(fact.bowls, zonesOf(fact)),
    place: placeOf(
      visit,
      fact,
      from === undefined ? (fact.bowls[0]?.at ?? 0) : to ? joinSpans(from.at, to.at) : from.at,
    ),
  };
};

/** The clock lines of a visit with their times settled by the salon's hours. */
export const clockLines = (visit: Stood<Visit>, hours: Hours): ClockLines => {
  const ground = groundOf(visit, hours);
  const begins = visitBegins(visit, ground);
  const lines = {
    ons: [] as Line<FactsOf<'on'>>[],
    ends: [] as Line<FactsOf<'off' | 'stopped'>>[],
    checks: [] as Line<FactsOf<'check'>>[],
    heats: [] as Line<FactsOf<'heat'>>[],
    others: [] as Line[],
  };
  for (const fact of visit.entry.facts) {
    switch (fact.word) {
      case 'on':
        lines.ons.push(lineOf(fact, visit, ground, begins));
        break;
      case 'off':
      case 'stopped':
        lines.ends.push(lineOf<FactsOf<'off' | 'stopped'>>(fact, visit, ground, begins));
        break;
      case 'check':
        lines.checks.push(lineOf(fact, visit, ground, begins));
        break;
      case 'heat':
        lines.heats.push(lineOf(fact, visit, ground, begins));
        break;
      case 'reaction':
      case 'wash':
      case 'rinse':
      case 'dry':
      case 'cut':
        lines.others.push(lineOf<ClockFact>(fact, visit, ground, begins));
        break;
    }
  }
  return lines;
};

/** Every clock line of a visit. */
export const allLines = ({ ons, ends, checks, heats, others }: ClockLines): readonly Line[] => [
  ...ons,
  ...ends,
  ...checks,
  ...heats,
  ...others,
];

/** Asks of each of the times that a line of a visit gives, with the line. */
export const eachClock = (fact: VisitFact, ask: (clock: Clock | undefined, line: number) => void): void => {
  switch (fact.word) {
    case 'on':
    case 'check':
    case 'heat':
    case 'wash':
    case 'rinse':
    case 'dry':
    case 'cut':
      ask(fact.period?.from, fact.line);
      ask(fact.period?.to, fact.line);
      break;
    case 'zero':
      ask(fact.time, fact.line);
      break;
    case 'off':
      ask(fact.time, fact.line);
      ask(fact.until, fact.line);
      break;
    case 'reaction':
    case 'stopped':
    case 'more':
    case 'next':
    case 'call':
      ask(fact.time, fact.line);
      break;
    case 'test':
      ask(fact.time, fact.line);
      ask(fact.readTime, fact.line);
      break;
  }
};
