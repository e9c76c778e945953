import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Client, ClientFact } from '../records/schema/entry.ts';
import type { Finding } from '../text/finding.ts';
import type { Sheet } from './figures/sheet.ts';
import type { Noted } from './noted.ts';

/** What the head of a card, and any other sheet about a client, is made from. */
export type HeadView = {
  readonly journal: Journal;
  readonly client: ClientFile;
  /** The visits up to the day, oldest first. */
  readonly visits: readonly VisitReckoned[];
  /** Those noted for a later day, oldest first. */
  readonly ahead?: readonly VisitReckoned[];
  /** Those under way on the day, where they are left out of `visits`. */
  readonly open?: readonly VisitReckoned[];
  /** Earlier visits that the day's is planned by. */
  readonly planned?: readonly VisitReckoned[];
  /** Findings on the client and her visits, answered ones among them. */
  readonly findings: readonly Finding[];
  /** What would be a `stop` of the day's visit as it is planned. */
  readonly stopsAhead?: readonly Finding[];
  /** The day it is made for, `YYYY-MM-DD`. */
  readonly on: string;
  /** Takes the figures of a page that has some. */
  readonly sheet?: Sheet;
};

/** The client's salon: that of her last visit, else the journal's. */
export const salonOfHead = ({ journal, visits }: HeadView): Noted['salon'] => visits.at(-1)?.salon ?? journal.salon;

export const notedIn = (view: HeadView, stood: Stood<Client>): Noted => ({
  journal: view.journal,
  salon: salonOfHead(view),
  stood,
});

export type ClientLine<W extends ClientFact['word']> = {
  readonly stood: Stood<Client>;
  readonly fact: Extract<ClientFact, { word: W }>;
};

/** The lines of her entries that begin with one of the words, in the order of the words. */
export const clientLines = <W extends ClientFact['word']>({ client }: HeadView, words: readonly W[]): ClientLine<W>[] =>
  words.flatMap((word) =>
    client.entries.flatMap((stood) =>
      stood.entry.facts
        .filter((fact): fact is ClientLine<W>['fact'] => fact.word === word)
        .map((fact): ClientLine<W> => ({ stood, fact })),
    ),
  );

/** Lines as one block of Markdown; no block where there are none. */
export const listOf = (lines: readonly string[]): string[] => (lines.length === 0 ? [] : [lines.join('\n')]);
