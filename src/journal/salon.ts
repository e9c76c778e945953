import type { Salon } from '../records/schema/entry.ts';
import type { Policy, ZoneLine } from '../records/schema/shelf.ts';
import { type Exact, exactOf, ONE } from '../text/exact.ts';
import { DEFAULT_GROWTH } from '../trade/growth.ts';
import type { Stood } from './source.ts';

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
    /** Days that a test holds. */
    readonly every: number | undefined;
    readonly voidAfterReaction: boolean;
    readonly policy: Policy | undefined;
  };
  /** Under this age only the kinds named. */
  readonly under: { readonly age: number; readonly only: readonly string[]; readonly policy: Policy } | undefined;
  readonly zones: ReadonlyMap<string, ZoneLine>;
  readonly policies: readonly Policy[];
  readonly stood: Stood<Salon> | undefined;
};

const MINUTES = { min: 1, h: 60, d: 1440, w: 10_080, mo: 43_830 } as const;

/** A closing hour before the opening one is in the afternoon (9-7), else on the next day (20:00-2:00). */
const closingAfter = (from: number, to: number): number => (to > from ? to : to + 720 > from ? to + 720 : to + 1440);

/** The settings of a salon entry; what its lines leave out has the defaults that the notation names. */
export const salonSettings = (stood: Stood<Salon> | undefined): SalonSettings => {
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
  const timed = skin.find(({ durations }) => durations.length > 0);
  const [lead, every] = timed?.durations ?? [];
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
      lead: lead && lead.value * MINUTES[lead.unit],
      every: every && Math.round((every.value * MINUTES[every.unit]) / 1440),
      voidAfterReaction: skin.some((policy) => has(policy, 'void', 'after', 'reaction')),
      policy: timed,
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
