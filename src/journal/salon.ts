import type { Salon } from '../records/schema/entry.ts';
import type { Policy, ZoneLine } from '../records/schema/shelf.ts';
import type { Duration } from '../records/schema/values.ts';
import { MINUTES_IN } from '../text/dates.ts';
import { type Exact, exactOf, ONE } from '../text/exact.ts';
import { DEFAULT_GROWTH } from '../trade/growth.ts';
import type { Stood } from './stood.ts';

/** What a salon's own lines settle for every note made there. */
export type SalonSettings = {
  readonly name: string | undefined;
  readonly full: string | undefined;
  readonly currency: string | undefined;
  /** The smallest step of the scales, in grams. */
  readonly scale: Exact;
  /** Opening hours in minutes since midnight. */
  readonly hours: { readonly from: number; readonly to: number } | undefined;
  /** Growth until a client's own is measured, mm a day. */
  readonly growth: Exact;
  /** A millilitre without a density weighs a gram: `policy ml as g`. */
  readonly mlAsGrams: boolean;
  readonly law: string | undefined;
  readonly skinTest: {
    /** Minutes between a test and its reading, and between a test and the visit. */
    readonly lead: number | undefined;
    /** How long a test holds; the day that its length comes to is the last. */
    readonly every: Duration | undefined;
    /** What that length counts from. */
    readonly from: 'made' | 'read';
    readonly voidAfterReaction: boolean;
    /** The line that sets the lead. */
    readonly policy: Policy | undefined;
    /** The line that says how long a test holds; often the same. */
    readonly term: Policy | undefined;
  };
  /** Under this age only the kinds named. */
  readonly under: { readonly age: number; readonly only: readonly string[]; readonly policy: Policy } | undefined;
  readonly zones: ReadonlyMap<string, ZoneLine>;
  readonly policies: readonly Policy[];
  readonly stood: Stood<Salon> | undefined;
};

/** The most minutes that a lead can be, a fortnight: what is longer says how long a test holds. A choice, no source. */
const LONGEST_LEAD = 14 * 1440;

/** What one `policy skin-test` line says: the time before the colour, and how long a test holds, from when. */
export type SkinTestTerms = {
  readonly lead: Duration | undefined;
  readonly every: Duration | undefined;
  readonly from: 'made' | 'read' | undefined;
};

const leadMinutes = ({ value, unit }: Duration): number =>
  unit === 'mo' ? Number.POSITIVE_INFINITY : value * MINUTES_IN[unit];

/** The terms of a `policy skin-test` line: `48h every 26w from read`, `every 6mo`, `48h 26w`. */
export const skinTestTerms = ({ words, durations }: Policy): SkinTestTerms => {
  const word = words.find((one) => one.word === 'every');
  const after = word && durations.find(({ at }) => at > word.at);
  const [first, second] = durations.filter((one) => one !== after);
  const lead = first !== undefined && leadMinutes(first) <= LONGEST_LEAD ? first : undefined;
  const from = words[words.findIndex((one) => one.word === 'from') + 1]?.word;
  return {
    lead,
    every: after ?? (word === undefined ? second : undefined),
    from: !words.some((one) => one.word === 'from')
      ? undefined
      : from === 'read' || from === 'reading'
        ? 'read'
        : from === 'made' || from === 'test'
          ? 'made'
          : undefined,
  };
};

/** A closing hour before the opening one is in the afternoon (9-7), else on the next day (20:00-2:00). */
const closingAfter = (from: number, to: number): number => (to > from ? to : to + 720 > from ? to + 720 : to + 1440);

const settled = new WeakMap<Stood<Salon>, SalonSettings>();

/**
 * The settings of a salon entry, one object an entry; what its lines leave out has the defaults that the notation names.
 */
export const salonSettings = (stood: Stood<Salon> | undefined): SalonSettings => {
  if (stood === undefined) return DEFAULTS;
  let settings = settled.get(stood);
  if (settings === undefined) {
    settings = settingsOf(stood);
    settled.set(stood, settings);
  }
  return settings;
};

const settingsOf = (stood: Stood<Salon> | undefined): SalonSettings => {
  const facts = stood?.entry.facts ?? [];
  let currency: string | undefined;
  let scale: Exact = ONE;
  let hours: SalonSettings['hours'];
  let growth: Exact = DEFAULT_GROWTH;
  const policies: Policy[] = [];
  const zones = new Map<string, ZoneLine>();
  for (const fact of facts) {
    if (fact.word === 'money') currency = fact.currency.name.toUpperCase();
    else if (fact.word === 'scale' && fact.step.value > 0) scale = exactOf(fact.step.value);
    else if (fact.word === 'hours' && fact.from.minutes !== undefined && fact.to.minutes !== undefined) {
      hours = { from: fact.from.minutes, to: closingAfter(fact.from.minutes, fact.to.minutes) };
    } else if (fact.word === 'growth') growth = exactOf(fact.rate);
    else if (fact.word === 'policy') policies.push(fact);
    else if (fact.word === 'zone') zones.set(fact.zone.name, fact);
  }
  const about = (topic: string): Policy[] => policies.filter((policy) => policy.topic.name === topic);
  const has = (policy: Policy, ...words: string[]): boolean =>
    words.every((word) => policy.words.some((one) => one.word === word));
  const skin = about('skin-test');
  // One line may set the lead and another the term.
  const terms = skin.map((policy) => ({ policy, ...skinTestTerms(policy) }));
  const leading = terms.find(({ lead }) => lead !== undefined);
  const lasting = terms.find(({ every }) => every !== undefined);
  const under = about('under').find(({ numbers }) => numbers.length > 0);
  return {
    name: stood?.entry.name?.name,
    full: stood?.entry.full?.text,
    currency,
    scale,
    hours,
    growth,
    mlAsGrams: about('ml').some((policy) => has(policy, 'as', 'g')),
    law: about('law')[0]?.words[0]?.word,
    skinTest: {
      lead: leading?.lead && leadMinutes(leading.lead),
      every: lasting?.every,
      from: lasting?.from ?? 'made',
      voidAfterReaction: skin.some((policy) => has(policy, 'void', 'after', 'reaction')),
      policy: leading?.policy,
      term: lasting?.policy,
    },
    under: under && {
      age: under.numbers[0] ?? 0,
      only: under.words.map(({ word }) => word).filter((word) => word !== 'only'),
      policy: under,
    },
    zones,
    policies,
    stood,
  };
};

const DEFAULTS: SalonSettings = settingsOf(undefined);
