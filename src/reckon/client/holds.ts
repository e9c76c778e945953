import type { ClientFile } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import type { Caution, Hold } from '../../records/schema/client.ts';
import type { Client, Visit } from '../../records/schema/entry.ts';
import { addDays } from '../../text/dates.ts';
import type { Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import { isColour, isOxidative } from '../head/services.ts';
import type { BowlReckoned } from '../model.ts';
import { type Noted, notedUnder, onFile } from '../on-file.ts';
import { dayAfter, firstDayOf } from '../when.ts';
import { firstLeave } from './letters.ts';
import { holdsDye } from './reactions.ts';
import { numberOf } from './visit-number.ts';

/** A hold in force. */
export type HoldInForce = {
  /** A kind, a product, `oxidative`, `dye` or `all`. */
  readonly what: string;
  readonly says: string | undefined;
  /** Its first day; undefined: always. */
  readonly from: string | undefined;
  /** The day it lifts; undefined: for good. */
  readonly until: string | undefined;
  /** Lifts with a letter of a doctor, which is not on file yet. */
  readonly untilLetter: boolean;
  readonly fact: Hold;
  readonly place: Place;
};

/** A caution in force. */
export type CautionInForce = { readonly text: string; readonly until: string | undefined; readonly place: Place };

/** The day after the last visit with a `reaction` line; undefined without one. */
const dayAfterReaction = ({ visits }: ClientFile): string | undefined => {
  const last = visits.findLast(({ entry }) => entry.facts.some(({ word }) => word === 'reaction'))?.entry.date?.date;
  return last && addDays(last, 1);
};

const holdOf = (
  client: ClientFile,
  stood: Stood<Client> | Stood<Visit>,
  fact: Hold,
  day: string | undefined,
): HoldInForce => {
  const from = fact.from === undefined ? day : firstDayOf(fact.from.when);
  // A length counts from the hold's first day; under a client without one nothing says from when, so it is for good.
  const counted = from !== undefined && fact.length !== undefined ? dayAfter(from, fact.length) : undefined;
  const letter = fact.untilLetter ? firstLeave(client, from ?? '') : undefined;
  // Which visits before the letter it was meant for, a hold without a day does not tell; it came of what happened last.
  const begun = from ?? letter ?? (fact.untilLetter ? dayAfterReaction(client) : undefined);
  return {
    what: fact.what.name,
    says: fact.says?.text,
    from: begun,
    until: fact.until === undefined ? (letter ?? counted) : firstDayOf(fact.until.when),
    untilLetter: fact.untilLetter === true && letter === undefined,
    fact,
    place: placeOf(stood, fact, fact.what.at),
  };
};

const isInForce = ({ from, until }: Pick<HoldInForce, 'from' | 'until'>, date: string): boolean =>
  (from === undefined || from <= date) && (until === undefined || date < until);

/**
 * The holds in force on a day: the client's, and those that earlier visits set. `to 2027-01` lifts on the month's first
 * day, a date on that day. A visit's own hold begins after it, so `visits` are the visits before.
 */
export const holdsOn = (date: string, client: ClientFile, visits: readonly Stood<Visit>[]): HoldInForce[] => {
  return inForceOf(notedUnder(onFile(client).hold, visits), client, date);
};

const inForceOf = (noted: readonly Noted<'hold'>[], client: ClientFile, date: string): HoldInForce[] =>
  noted.map(({ stood, fact, day }) => holdOf(client, stood, fact, day)).filter((hold) => isInForce(hold, date));

/** As `holdsOn`, after so many of the client's visits. */
export const holdsBefore = (date: string, client: ClientFile, visits: number): HoldInForce[] => {
  const isBefore = ({ stood }: Noted<'hold'>): boolean =>
    stood.entry.kind !== 'visit' || numberOf(client, stood as Stood<Visit>) < visits;
  return inForceOf(onFile(client).hold.filter(isBefore), client, date);
};

/** Whether a bowl holds what a hold forbids: its kind, its product, oxidative colour, dye of any kind, or any colour for `all`. */
export const breaksHold = ({ what }: Pick<HoldInForce, 'what'>, bowl: BowlReckoned): boolean => {
  if (what === 'all') return isColour(bowl);
  if (what === 'oxidative') return isOxidative(bowl);
  if (what === 'dye') return holdsDye(bowl) && isColour(bowl);
  return bowl.held.some(({ item, from }) =>
    from === undefined ? item?.name === what || item?.kind === what : breaksHold({ what }, from),
  );
};

const cautionOf = (stood: Stood<Client> | Stood<Visit>, fact: Caution): CautionInForce => ({
  text: fact.text,
  until: fact.until && firstDayOf(fact.until.when),
  place: placeOf(stood, fact),
});

/**
 * The cautions in force on a day; one with an end lifts on that day, or on the first of that month. One under a visit is
 * of that day’s skin, and of the days up to its end where it has one.
 */
export const cautionsOn = (date: string, client: ClientFile): CautionInForce[] => {
  const inForce: CautionInForce[] = [];
  for (const { stood, fact, day } of onFile(client).caution) {
    if (day !== undefined && day !== date && (day > date || fact.until === undefined)) continue;
    const caution = cautionOf(stood, fact);
    if (caution.until === undefined || date < caution.until) inForce.push(caution);
  }
  return inForce;
};
