import type { ClientFile, Journal } from '../journal/journal.ts';
import type { Stood } from '../journal/source.ts';
import { lineAt } from '../reckon/cite.ts';
import type { Client, ClientFact, Visit, VisitFact } from '../records/schema/entry.ts';
import { type Place, spanOf } from '../text/span.ts';
import type { HarmKind } from '../trade/harm/signs.ts';
import { type HarmTold, harmOf } from '../trade/harm/told-harm.ts';

/** A line of a client's entries or visits that tells of harm in words, and where in it. */
export type HarmLine = {
  readonly stood: Stood<Client> | Stood<Visit>;
  readonly fact: ClientFact | VisitFact;
  readonly harm: HarmTold;
  readonly place: Place;
};

/**
 * Lines whose words are not read for harm: those that are the notation's own way to say it, reasons, and what is told to
 * the client to do.
 */
const NOT_READ: ReadonlySet<string> = new Set([
  'reaction',
  'allergy',
  'caution',
  'hold',
  'because',
  'care',
  'photo',
  'asked',
  'letter',
]);

/** What earlier hands did to hair has rules of its own; hurt skin is told in a `history` line as well as in any other. */
const SKIN_ONLY: ReadonlySet<string> = new Set(['history', 'test']);

/** A test of the fibre or for metal is read by the rules on tests. */
const isOfHair = (fact: ClientFact | VisitFact): boolean => fact.word === 'test' && fact.test.name !== 'skin';

/** Outside quotation marks these are colours, stages of lift and names of shades. */
const COLOURS =
  /(?<![\p{L}\d-])(?:red|pink|hot|rot|rote|rouge|vermelh[oa]|roj[oa]|burnt|scarlet|crimson|raw)(?![\p{L}\d-])/giu;

/** Words whose whole line is text. */
const FREE: ReadonlySet<string> = new Set(['aim', 'note']);

/** Hair left out on purpose because it breaks is care, and no news. */
const isLeft = (fact: ClientFact | VisitFact, kind: HarmKind): boolean => fact.word === 'leave' && kind === 'fibre';

/** A comment behind a line; in free text a `#` is text. */
const COMMENT = /\s#(?=\s).*$/u;

/** Words whose line may have prose outside quotation marks; of all others the remark alone is read. */
const PROSE: ReadonlySet<string> = new Set([
  ...['check', 'result', 'start', 'stopped', 'declined', 'next', 'call', 'about', 'leave', 'off', 'rinse', 'wash'],
  ...['history', 'test'],
]);

const blank = (text: string): string => ' '.repeat(text.length);

/** A line with its first word, and colours that are not quoted, left blank, so that every place in it stays. */
const textIn = (line: string, word: string): string => {
  const first = /^\s*\p{L}+/u.exec(line)?.[0] ?? '';
  const rest = line.slice(first.length);
  // An unread line has no first word of the notation.
  const begun = word === 'unread' ? first : blank(first);
  if (FREE.has(word) || word === 'unread') return begun + rest;
  const said = rest.replace(COMMENT, '');
  const quote = said.search(/["“”„«]/u);
  const typed = quote < 0 ? said : said.slice(0, quote);
  return begun + (PROSE.has(word) ? typed.replace(COLOURS, blank) : blank(typed)) + said.slice(typed.length);
};

/** The lines of an entry that tell of one kind of harm, in order, each once. */
export const harmLinesOf = (
  journal: Journal,
  stood: Stood<Client> | Stood<Visit>,
  kind: HarmKind,
): readonly HarmLine[] => {
  const lines: HarmLine[] = [];
  const seen = new Set<number>();
  for (const fact of stood.entry.facts) {
    if (
      NOT_READ.has(fact.word) ||
      isOfHair(fact) ||
      isLeft(fact, kind) ||
      seen.has(fact.line) ||
      (kind === 'fibre' && SKIN_ONLY.has(fact.word))
    )
      continue;
    seen.add(fact.line);
    const where = { in: stood, line: fact.line };
    const harm = harmOf(textIn(lineAt(journal, where), fact.word), kind);
    if (harm !== undefined) lines.push({ stood, fact, harm, place: { ...where, at: spanOf(harm.from, harm.to) } });
  }
  return lines;
};

/** Whether any visit of a client tells of harm to hair or skin in a line that could not be read. */
export const unreadHarm = (journal: Journal, { visits }: ClientFile): readonly HarmLine[] =>
  visits.flatMap((stood) =>
    (['skin', 'fibre'] as const).flatMap((kind) =>
      harmLinesOf(journal, stood, kind).filter(({ fact }) => fact.word === 'unread'),
    ),
  );
