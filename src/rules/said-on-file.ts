import type { ClientFile } from '../journal/journal.ts';
import { allergies, cautionsOn } from '../reckon/state.ts';
import { firstDayOf } from '../reckon/when.ts';
import type { Place } from '../text/span.ts';

/** Words on file about a client, and where they stand. */
export type SaidOnFile = { readonly text: string; readonly place: Place };

/** The cautions in force on a day, and the allergies. */
export const alertsOn = (date: string, client: ClientFile): readonly SaidOnFile[] => [
  ...cautionsOn(date, client),
  ...allergies(client),
];

/** What `history` lines that begin by a day say, their remarks included. */
export const historySaid = (date: string, client: ClientFile): readonly SaidOnFile[] =>
  client.entries.flatMap((stood) =>
    stood.entry.facts.flatMap((fact) => {
      if (fact.word !== 'history' || (fact.when !== undefined && firstDayOf(fact.when.when) > date)) return [];
      const said = [fact.when?.when, ...fact.kinds.map(({ word }) => word), fact.says?.text];
      const at = fact.says?.at ?? 0;
      return [{ text: said.filter(Boolean).join(' '), place: { file: stood.file, line: stood.line + fact.line, at } }];
    }),
  );

/** The first day of a date, month or year named in a text; undefined where it names none. */
export const dayNamed = (text: string): string | undefined => {
  const when = /(?<!\d)\d{4}(?:-\d{2}){0,2}(?![\d-])/.exec(text)?.[0];
  return when === undefined ? undefined : firstDayOf(when);
};
