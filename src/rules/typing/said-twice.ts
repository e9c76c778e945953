import type { Stood } from '../../journal/source.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { type Place, spanOf } from '../../text/span.ts';
import { defineRule, type Found } from '../rule.ts';

/** Done twice in one visit with nothing more to say of it; two bowls of one name are another rule's. */
const MAY_REPEAT: ReadonlySet<string> = new Set(['check', 'rinse', 'wash', 'dry', 'cut', 'more', 'bowl', 'unread']);

/** A number that equal lines share, white space and letter case apart. */
const signature = (line: string): number => {
  let sign = 0;
  for (let index = 0; index < line.length; index++) {
    const code = line.charCodeAt(index);
    // Bit 32 parts a capital from its small letter; lines that meet by chance are compared in full.
    if (code > 32) sign = (Math.imul(sign, 31) + (code | 32)) | 0;
  }
  return sign;
};

const plain = (line: string): string => line.replace(/\s+/g, '').toLowerCase();

type Typed = { readonly line: number; readonly text: string };

/** The place of a line without the white space around it. */
const whole = (stood: Stood, { line, text }: Typed): Place => ({
  in: stood,
  line,
  at: spanOf(text.length - text.trimStart().length, text.trimEnd().length),
});

const repeated = (stood: Stood, lines: readonly string[]): readonly Found[] => {
  const all: Found[] = [];
  const before = new Map<number, Typed>();
  let last = -1;
  for (const fact of stood.entry.facts) {
    const text = lines[fact.line];
    if (text === undefined || fact.line === last || MAY_REPEAT.has(fact.word)) continue;
    last = fact.line;
    const here = { line: fact.line, text };
    const sign = signature(here.text);
    const first = before.get(sign);
    if (first === undefined) before.set(sign, here);
    else if (plain(first.text) === plain(here.text))
      all.push({
        place: whole(stood, here),
        message: sentence`The line stands twice in this entry, first at ${lineName(whole(stood, first))}.`,
        todo: 'Take one of the two out.',
        label: 'said twice',
        also: [{ place: whole(stood, first), says: 'first said here' }],
      });
  }
  return all;
};

export default defineRule({
  name: 'said-twice',
  family: 'typing',
  severity: 'fix',
  bears: 'never',
  over: 'entry',
  what: 'A line stands twice in one entry, white space and capitals apart.',
  why: 'A pasted line counts twice: in money, in stock, or in what was put on.',
  source: { kind: 'notation' },
  check: repeated,
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      left A 5 binned
      left a  5 binned
      ^^^^^^^^^^^^^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      left A 5 binned`,
});
