import type { ClientFile } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Client, ClientFact, Visit } from '../../records/schema/entry.ts';
import type { Seen } from '../../records/schema/values.ts';
import type { Reaction } from '../../records/schema/visit.ts';
import { recently } from '../../text/recently.ts';
import type { Place } from '../../text/span.ts';
import { historyFacts, isHistory } from '../../trade/hair.ts';
import { dayOf } from '../bowl/plan.ts';
import { placeOf } from '../cite.ts';
import { minuteOf } from '../clock/settle.ts';
import { isLightening } from '../head/services.ts';
import type { Minute, VisitReckoned } from '../model.ts';
import { notedUnder, onFile } from '../on-file.ts';
import { type Moment, testsFor } from '../testing/tests.ts';
import { firstDayOf } from '../when.ts';
import { isCutOff } from './cut-off.ts';
import { type HoldInForce, holdsBefore } from './holds.ts';
import { numberOf } from './visit-number.ts';

/**
 * What is on file about a client on a day: tests, holds, cautions, reactions, allergies, what was done before.
 *
 * Reads: the client's entries and visits. Gives: what rules and pages ask for. Runs again: when one of them changes.
 */

export { isColour, isLightening, isOxidative, placingsOf, productsToTest, zonesOfBowl } from '../head/services.ts';
export {
  SKIN_TEST_LEAD,
  type SkinTestStanding,
  type SkinTestStatus,
  skinTestOn,
  type Voiding,
} from '../testing/skin-test.ts';
export { type Moment, type TestMade, testsFor, testsOfFibre, testsOfKind } from '../testing/tests.ts';
export { ageOf, isUnder } from './age.ts';
export { breaksHold, type CautionInForce, cautionsOn, type HoldInForce, holdsOn } from './holds.ts';
export { type LetterOnFile, leaveSince, lettersOf } from './letters.ts';
export { holdsDye } from './reactions.ts';

/** When the first bowl of a visit goes on: its minute, else the header's. */
export const momentOfVisit = ({ date, clock, visit, salon }: VisitReckoned): Moment => {
  const { time } = visit.entry;
  return { date, minute: clock.runs[0]?.firstOn ?? (time && minuteOf(time, salon.hours)) };
};

/** The holds in force when a visit is made. */
export const holdsOfVisit = ({ client, date, visit }: VisitReckoned): HoldInForce[] =>
  holdsBefore(date, client, numberOf(client, visit));

type Said<W extends ClientFact['word']> = {
  readonly stood: Stood<Client>;
  readonly fact: Extract<ClientFact, { word: W }>;
};

const saidOf = <W extends ClientFact['word']>({ entries }: ClientFile, word: W): Said<W>[] => {
  const said: Said<W>[] = [];
  const isOfWord = (fact: ClientFact): fact is Said<W>['fact'] => fact.word === word;
  for (const stood of entries) for (const fact of stood.entry.facts) if (isOfWord(fact)) said.push({ stood, fact });
  return said;
};

/** A reaction on file: a `reaction` line of a visit, or a skin test that was positive. */
export type ReactionOnFile = Moment & {
  readonly by: 'visit' | 'skin-test';
  readonly bowls: readonly string[];
  readonly zones: readonly string[];
  readonly words: readonly string[];
  readonly products: readonly string[];
  readonly says: string | undefined;
  readonly place: Place;
};

const reactionOf = (visit: Stood<Visit>, fact: Reaction, minute: Minute | undefined): ReactionOnFile => ({
  date: dayOf(visit),
  minute,
  by: 'visit',
  bowls: fact.bowls.map(({ name }) => name.toUpperCase()),
  zones: fact.zones.map(({ zone }) => zone),
  words: fact.words.map(({ word }) => word),
  products: [],
  says: fact.says?.text,
  place: placeOf(visit, fact, fact.time?.at ?? 0),
});

/** The `reaction` lines of some of a client’s visits, in order. */
const visitReactions = (
  client: ClientFile,
  visits: readonly Stood<Visit>[],
  hours: SalonSettings['hours'],
): ReactionOnFile[] =>
  notedUnder(onFile(client).reaction, visits).map(({ stood, fact }) =>
    // Only a visit has such a line.
    reactionOf(stood as Stood<Visit>, fact, fact.time && minuteOf(fact.time, hours)),
  );

/** The reactions on file in the visits given and in skin tests read up to the day, oldest first. */
export const reactionsOf = (
  client: ClientFile,
  visits: readonly Stood<Visit>[],
  hours: SalonSettings['hours'],
  upTo?: string,
): ReactionOnFile[] => {
  const reactions = visitReactions(client, visits, hours);
  for (const test of testsFor(client, hours, upTo)) {
    const known = test.read ?? test.made;
    if (test.kind !== 'skin' || test.result !== 'adverse' || known === undefined) continue;
    if (upTo !== undefined && known.date > upTo) continue;
    reactions.push({
      ...known,
      by: 'skin-test',
      bowls: [],
      zones: [],
      words: test.reading.result.flatMap(({ words }) => words.map(({ word }) => word)),
      products: test.products,
      says: test.reading.says?.text,
      place: test.readPlace ?? test.place,
    });
  }
  return reactions.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
};

/** An allergy on file; a line that says there is none is left out. */
export type AllergyOnFile = { readonly text: string; readonly place: Place };

/** The allergies on file, as typed. */
export const allergies: (client: ClientFile) => readonly AllergyOnFile[] = recently((client: ClientFile) =>
  saidOf(client, 'allergy').flatMap(({ stood, fact }) => {
    const said = [
      ...fact.to.map(({ word, at }) => ({ text: word, at })),
      ...(fact.says === undefined ? [] : [{ text: fact.says.text, at: fact.says.at }]),
    ];
    const text = said.map((part) => part.text).join(' ');
    const at = Math.min(...said.map((part) => part.at));
    return /^none\b/i.test(text) ? [] : [{ text, place: placeOf(stood, fact, at) }];
  }),
);

/** Something done to the hair before this journal's visits. */
export type DoneBefore = {
  readonly kind: string;
  /** A day, a month or a year, as typed. */
  readonly when: string | undefined;
  readonly zones: readonly string[];
  /** Its remark. */
  readonly says: string | undefined;
  readonly place: Place;
};

/** What `history` lines say was done, without `none`. */
export const historyKinds: (client: ClientFile) => readonly DoneBefore[] = recently((client: ClientFile) =>
  saidOf(client, 'history').flatMap(({ stood, fact }) =>
    fact.kinds
      .filter(({ word }) => word !== 'none')
      .map(({ word, at }) => ({
        kind: word,
        when: fact.when?.when,
        zones: fact.zones.map(({ zone }) => zone),
        says: fact.says?.text,
        place: placeOf(stood, fact, at),
      })),
  ),
);

/** What `history` lines say was done by the day of a visit, to hair that is not cut off since. */
export const stillHanging = (visit: VisitReckoned): DoneBefore[] =>
  historyKinds(visit.client).filter(
    ({ when }) => (when === undefined || firstDayOf(when) <= visit.date) && !isCutOff(visit, when),
  );

/** A share of grey in per cent, and where it stands. */
export type GreyShare = { readonly percent: number; readonly place: Place };

const greyIn = (stood: Stood, fact: { readonly line: number }, seen: readonly Seen[]): GreyShare[] =>
  seen.flatMap(({ grey }) =>
    grey === undefined ? [] : [{ percent: grey.to ?? grey.value, place: placeOf(stood, fact, grey.at) }],
  );

const most = (shares: readonly GreyShare[]): GreyShare | undefined =>
  [...shares].sort((a, b) => b.percent - a.percent)[0];

/** The largest share of grey on the client’s `grey` lines. */
const greyOnFile = recently((client: ClientFile) =>
  most(saidOf(client, 'grey').flatMap(({ stood, fact }) => greyIn(stood, fact, fact.parts))),
);

/** The largest share of grey found at the visit’s start, else on the client’s `grey` lines; undefined without any. */
export const greyShare = (client: ClientFile, visit: Stood<Visit>): GreyShare | undefined =>
  most(visit.entry.facts.flatMap((fact) => (fact.word === 'start' ? greyIn(visit, fact, fact.seen) : []))) ??
  greyOnFile(client);

/** Where hair was lightened: by a visit, or before by what a `history` line says. */
export type Lightened = {
  /** ISO date of the visit, or as typed on the `history` line. */
  readonly when: string | undefined;
  /** None: all over, or not said. */
  readonly zones: readonly string[];
  readonly place: Place;
};

/**
 * Where and when the hair that still hangs was lightened before a visit, newest first; by visits, then by its history. Of
 * visits that lightened equal places the newest two days. `earlier`: the client's first visits, up to one of them.
 */
export const lightenedBefore = (visit: VisitReckoned, earlier: readonly VisitReckoned[]): Lightened[] => {
  const lightened: Lightened[] = [];
  for (const one of earlier.at(-1)?.lightenings ?? [])
    if (one.when <= visit.date && !isCutOff(visit, one.when)) lightened.push(one);
  for (const done of stillHanging(visit))
    if (isLightenedBy(done, visit.date)) lightened.push({ when: done.when, zones: done.zones, place: done.place });
  return lightened;
};

const isLightenedBy = ({ kind, when }: DoneBefore, date: string): boolean =>
  isHistory(kind) && historyFacts(kind).lightened && (when === undefined || firstDayOf(when) <= date);

/**
 * Whether any of the hair is lightened by the time something is put on at a visit: by an earlier visit, by its history,
 * or by a bowl of this visit that went on before `by`.
 */
export const wasLightened = (
  client: ClientFile,
  earlier: readonly VisitReckoned[],
  visit: VisitReckoned,
  by?: Minute,
): boolean =>
  earlier.some(({ date, bowls }) => date <= visit.date && bowls.some(isLightening)) ||
  historyKinds(client).some((done) => isLightenedBy(done, visit.date)) ||
  visit.bowls.some(
    (bowl) =>
      isLightening(bowl) &&
      by !== undefined &&
      (visit.clock.runs.some((run) => run.bowl === bowl.name && run.firstOn < by) ||
        visit.clock.unclocked.some((run) => run.bowl === bowl.name)),
  );
