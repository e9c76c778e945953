import { type Journal, joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import { lineText } from '../../src/journal/where.ts';
import { type BowlMemo, reckonBowls } from '../../src/reckon/bowl/bowls.ts';
import type { BowlReckoned, Portion } from '../../src/reckon/model.ts';
import { salonOf } from '../../src/reckon/salon-of.ts';
import { figure } from '../../src/reckon/say.ts';
import type { Exact } from '../../src/text/exact.ts';
import { sliceOf } from '../../src/text/span.ts';

/** A small shelf that most tests stand on. */
export const SHELF = `
range cream permanent
  mix 1:1.5
  uses dev-3 dev-6 dev-9
  tones 0 natural, 1 ash, 3 gold, 4 copper
  shades clear
  pack 60 g 6.00
range toner toner
  mix 1:1
  uses gloss-act
  tones 1 ash, 2 violet
  shades clear, pearl
  pack 60 ml 6.00
  density 1.2
product clay lightener
  mix 1:1.5-1:2
  uses dev-3 dev-6 dev-9
  pack 500 g 24.00
  pack 500 g 25.50 from 2026-03-01
  measure scoop 10 g
product dev-3 developer 3%
  pack 1 kg 7.50
product dev-6 developer 6%
  pack 1 kg 7.50
product dev-9 developer 9%
  pack 1 kg 7.50
product gloss-act developer 1.9%
  pack 1 kg 8.00
product bond additive
  pack 250 ml 32.00
  density 1
product oil additive in ratio
  pack 100 g 10.00
product conditioner conditioner
  mix none
  pack 1 l 11.00
  density 1
`;

/** A journal of notes given by file, or of one file `t.bowl`. */
export const journalOfNotes = (notes: string | Record<string, string>): Journal =>
  joinSources(
    Object.entries(typeof notes === 'string' ? { 't.bowl': notes } : notes).map(([path, text]) =>
      readSource(path, Buffer.from(text)),
    ),
  );

/** The bowls of the last visit of a client. */
export const bowlsIn = (journal: Journal, client = 'wren-abbott', memo?: BowlMemo): readonly BowlReckoned[] => {
  const file = journal.clients.get(client);
  const visit = file?.visits.at(-1);
  if (file === undefined || visit === undefined) throw new Error(`${client} has no visit`);
  return reckonBowls(journal, salonOf(journal, visit), file, visit, memo);
};

/** The bowls that these lines of one visit give. */
export const bowlsOf = (lines: string, { shelf = SHELF, salon = '', earlier = '' } = {}): readonly BowlReckoned[] =>
  bowlsIn(
    journalOfNotes(
      `salon harbour\n  money GBP\n${salon}\n${shelf}\n${earlier}\nvisit 2026-09-04 wren-abbott\n${lines}\n`,
    ),
  );

/** A figure, or `?` while it is not known. */
export const fig = (value: Exact | undefined): string => (value === undefined ? '?' : figure(value));

type Mixed = Pick<BowlReckoned, 'portions' | 'shownTotal'>;

/** What the scales show: `40 clay + 80 dev-6 = 120`. */
export const shown = ({ portions, shownTotal }: Mixed): string =>
  `${portions.map((portion: Portion) => `${fig(portion.shown)} ${portion.label}`).join(' + ')} = ${fig(shownTotal)}`;

/** The first bowl of these lines as the scales show it. */
export const shownOf = (lines: string, given?: Parameters<typeof bowlsOf>[1]): string => {
  const [bowl] = bowlsOf(lines, given);
  return bowl === undefined ? 'none' : shown(bowl);
};

/** All problems of the bowls, each as `kind: message`. */
export const problemsIn = (bowls: readonly BowlReckoned[]): string[] =>
  bowls.flatMap(({ problems }) => problems.map(({ kind, message }) => `${kind}: ${message}`));

export const problemsOf = (lines: string, given?: Parameters<typeof bowlsOf>[1]): string[] =>
  problemsIn(bowlsOf(lines, given));

/** The characters that the problems of the bowls point at. */
export const pointedAt = (journal: Journal, bowls: readonly BowlReckoned[]): string[] =>
  bowls.flatMap(({ problems }) => problems.map(({ place }) => sliceOf(lineText(journal, place), place.at)));

/** The only bowl of a visit, on a shelf of its own or none. */
export const mixOf = (mix: string, shelf = '', salon = ''): BowlReckoned => {
  const [bowl] = bowlsOf(`  bowl A ${mix}`, { shelf, salon });
  if (bowl === undefined) throw new Error(`no mix: ${mix}`);
  return bowl;
};
