import type { ClientFile } from '../journal/journal.ts';
import { placeOf } from '../reckon/cite.ts';
import { lastDayOf } from '../reckon/client/cut-off.ts';
import { allergies, cautionsOn } from '../reckon/client/state.ts';
import { onFile } from '../reckon/on-file.ts';
import { firstDayOf } from '../reckon/when.ts';
import { recently } from '../text/recently.ts';
import type { Place } from '../text/span.ts';

/** Words on file about a client, and where they stand. */
export type SaidOnFile = { readonly text: string; readonly place: Place };

/** The cautions in force on a day, and the allergies. */
export const alertsOn = (date: string, client: ClientFile): readonly SaidOnFile[] => [
  ...cautionsOn(date, client),
  ...allergies(client),
];

type Says = (text: string) => boolean;

const onFileThat = recently((_client: ClientFile) => new Map<Says, boolean>());

/**
 * Whether anything on file of a client, of whatever day, says so: asked first, since it seldom does. `says` is asked of
 * each text once a client, so it is one function and not made anew at each visit.
 */
export const isOnFile = (client: ClientFile, says: Says): boolean => {
  const known = onFileThat(client);
  let isThere = known.get(says);
  if (isThere === undefined) {
    isThere =
      onFile(client).caution.some(({ fact }) => says(fact.text)) ||
      allergies(client).some(({ text }) => says(text)) ||
      historySaid(client).some(({ text }) => says(text)) ||
      notesOf(client).some(({ text }) => says(text));
    known.set(says, isThere);
  }
  return isThere;
};

type Begun = SaidOnFile & { readonly from: string };

const historyOf = recently(({ entries }: ClientFile): readonly Begun[] =>
  entries.flatMap((stood) =>
    stood.entry.facts.flatMap((fact) => {
      if (fact.word !== 'history') return [];
      const said = [fact.when?.when, ...fact.kinds.map(({ word }) => word), fact.says?.text];
      const place = placeOf(stood, fact, fact.says?.at);
      const from = fact.when === undefined ? '' : firstDayOf(fact.when.when);
      return [{ text: said.filter(Boolean).join(' '), place, from }];
    }),
  ),
);

/** What `history` lines say, their remarks included: those that begin by a day, or all. */
export const historySaid = (client: ClientFile, date?: string): readonly SaidOnFile[] =>
  date === undefined ? historyOf(client) : historyOf(client).filter(({ from }) => from <= date);

const notesOf = recently(({ entries, visits }: ClientFile): readonly Begun[] =>
  [...entries, ...visits].flatMap((stood) =>
    stood.entry.facts.flatMap((fact) =>
      fact.word === 'note'
        ? [{ text: fact.text, place: placeOf(stood, fact), from: stood.entry.kind === 'visit' ? dayOf(stood) : '' }]
        : [],
    ),
  ),
);

const notesThat = recently((_client: ClientFile) => new Map<Says, readonly Begun[]>());

/**
 * The notes up to a day that say so, under the client and under her visits; each with the day it is of, '' for ever.
 * `says` is asked of each note once a client, so it is one function and not made anew at each visit.
 */
export const notesSaid = (client: ClientFile, date: string, says: Says): readonly Begun[] => {
  const known = notesThat(client);
  let notes = known.get(says);
  if (notes === undefined) {
    notes = notesOf(client).filter(({ text }) => says(text));
    known.set(says, notes);
  }
  return notes.length === 0 ? notes : notes.filter(({ from }) => from <= date);
};

const dayOf = ({ entry }: ClientFile['entries'][number] | ClientFile['visits'][number]): string =>
  (entry.kind === 'visit' && entry.date?.date) || '';

/** The first day of a date, month or year named in a text; undefined where it names none. */
export const dayNamed = (text: string): string | undefined => {
  const when = /(?<!\d)\d{4}(?:-\d{2}){0,2}(?![\d-])/.exec(text)?.[0];
  return when === undefined ? undefined : firstDayOf(when);
};

/** The latest day, month or year named in a text, as it is written there; undefined where it names none. */
export const lastNamed = (text: string): string | undefined =>
  [...text.matchAll(/(?<![\d/.])(?:19|20)\d{2}(?:-\d{2}){0,2}(?![\d-])/gu)]
    .map(([when]) => when)
    .sort((a, b) => (lastDayOf(a) < lastDayOf(b) ? -1 : 1))
    .at(-1);
