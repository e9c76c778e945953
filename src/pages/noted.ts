import type { Journal } from '../journal/journal.ts';
import type { SalonSettings } from '../journal/salon.ts';
import type { Stood } from '../journal/source.ts';
import { lineText } from '../journal/where.ts';
import type { Client, Visit } from '../records/schema/entry.ts';
import type { Name, Text, Word } from '../records/schema/values.ts';
import { type At, sliceOf } from '../text/span.ts';
import { codeSpan, escapeInside, escapeText } from './escape.ts';

/** Where a fact is noted: the entry, and what its names and times are read by. */
export type Noted = {
  readonly journal: Journal;
  readonly salon: SalonSettings;
  readonly stood: Stood<Client> | Stood<Visit>;
};

type OnLine = { readonly line: number };

/** The characters that a value of a fact was typed with, as Markdown. */
export const typedAt = ({ journal, stood }: Noted, { line }: OnLine, at: At): string =>
  escapeText(sliceOf(lineText(journal, { in: stood, line }), at));

/** Words of a free slot as typed, hedges and capitals too. */
export const typedWords = (noted: Noted, fact: OnLine, words: readonly Word[]): string =>
  words.map(({ at }) => typedAt(noted, fact, at)).join(' ');

/** A bowl's name as the pages write it. */
export const bowlName = ({ name }: { readonly name: string }): string => escapeText(name.toUpperCase());

/** What a stylist is called, or the name as it stands where no entry says. */
export const stylistName = (journal: Journal, { name }: { readonly name: string }): string =>
  escapeText(journal.stylists.get(name)?.entry.full?.text ?? name);

/** What a client is called. */
export const clientName = (journal: Journal, { name }: { readonly name: string }): string =>
  escapeText(journal.clients.get(name)?.full ?? name);

export const quote = (text: string): string => `“${escapeInside(text)}”`;

type Closed = {
  readonly says?: Text | undefined;
  readonly by?: Name | undefined;
  readonly rest?: Text | undefined;
};

/** How a line ends on a page: its remark, whose hand, and what of it was not read. */
export const endOf = (journal: Journal, { says, by, rest }: Closed): string =>
  [
    says === undefined ? '' : ` ${quote(says.text)}`,
    by === undefined ? '' : ` by ${stylistName(journal, by)}`,
    rest === undefined ? '' : ` (not read, kept as typed: ${codeSpan(rest.text)})`,
  ].join('');

/** A piece of a line, or nothing where the note says nothing. */
export type Piece = string | undefined | false;

/** Pieces that stand, joined by `joint`. */
export const joined = (pieces: readonly Piece[], joint: string): string =>
  pieces.filter((piece) => piece !== undefined && piece !== false && piece !== '').join(joint);

/** Pieces that stand, joined by commas. */
export const commas = (pieces: readonly Piece[]): string => joined(pieces, ', ');

/** Pieces that stand, joined by spaces. */
export const spaced = (pieces: readonly Piece[]): string => joined(pieces, ' ');
