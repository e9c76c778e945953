import { HEADERS } from '../../src/notation/words.ts';
import { linesOf } from '../../src/text/decode.ts';
import type { Chance } from './chance.ts';
import type { Corpus } from './corpus.ts';
import { makeLine, recast, slipped } from './make-line.ts';
import { FIGURES, SCRAPS } from './scraps.ts';

const ENDINGS = ['\n', '\r\n', '\r', '\n\n', '\u2028'];

/** One piece of damage to whole notes: lines doubled, joined, lost, moved; figures and line endings changed. */
const damaged = (text: string, corpus: Corpus, chance: Chance): string => {
  const lines = text.split('\n');
  const at = chance.below(lines.length);
  const line = lines[at] ?? '';
  switch (chance.below(14)) {
    case 0:
      return lines.toSpliced(at, 0, line).join('\n');
    case 1:
      return lines.toSpliced(at, 2, line + (lines[at + 1] ?? '')).join('\n');
    case 2:
      return lines.toSpliced(at, 1 + chance.below(4)).join('\n');
    case 3: {
      const without = lines.toSpliced(at, 1);
      return without.toSpliced(chance.below(without.length + 1), 0, line).join('\n');
    }
    case 4:
      return text.replace(/\d+/g, (figure) => (chance.comes(0.05) ? chance.pick(FIGURES) : figure));
    case 5:
      return text.replaceAll('\n', () => (chance.comes(0.2) ? chance.pick(ENDINGS) : '\n'));
    case 6:
      return text.replaceAll('\n', '\r\n');
    case 7:
      return `\ufeff${text}`;
    case 8:
      return text.slice(0, chance.below(text.length + 1));
    case 9:
      return lines.toSpliced(at, 0, chance.pick(SCRAPS)).join('\n');
    case 10:
      return lines.toSpliced(at, 1, recast(line, corpus, chance)).join('\n');
    case 11:
      return lines.toSpliced(at, 0, makeLine(corpus.lines, corpus, chance)).join('\n');
    default:
      return slipped(text, 1 + chance.below(3), corpus, chance);
  }
};

/** The notes after some damage. */
export const damage = (text: string, times: number, corpus: Corpus, chance: Chance): string => {
  let out = text;
  for (let left = times; left > 0; left--) out = damaged(out, corpus, chance);
  return out;
};

/** Entries made from the notation's own words: headers of every kind with lines that may stand under them. */
const madeEntries = (corpus: Corpus, chance: Chance): string => {
  const lines: string[] = [];
  for (let left = 1 + chance.below(4); left > 0; left--) {
    const { heads, body } = corpus.under[chance.pick(HEADERS)];
    const head = chance.pick(heads.length > 0 ? heads : corpus.lines);
    lines.push(chance.comes(0.3) ? recast(head, corpus, chance) : head);
    for (let more = chance.below(12); more > 0; more--)
      lines.push(makeLine(body.length > 0 ? body : corpus.lines, corpus, chance));
  }
  return lines.join('\n');
};

const someLines = (text: string, chance: Chance): string => {
  const lines = linesOf(text);
  const from = chance.below(lines.length);
  return lines.slice(from, from + 1 + chance.below(40)).join('\n');
};

/** A file of notes as text: a run of the corpus or entries made from its words, with some damage. */
export const makeText = (corpus: Corpus, chance: Chance): string => {
  const text = chance.comes(0.5) ? someLines(chance.pick(corpus.files), chance) : madeEntries(corpus, chance);
  return damage(text, chance.below(6), corpus, chance);
};

/** Bytes with some of them flipped, lost or put in: seldom valid UTF-8 any more. */
const damagedBytes = (bytes: Buffer, chance: Chance): Buffer => {
  const out = [...bytes];
  for (let left = 1 + chance.below(4); left > 0; left--) {
    const at = chance.below(out.length + 1);
    const kind = chance.below(3);
    if (kind === 0) out.splice(at, 1);
    else out.splice(at, kind === 1 ? 1 : 0, chance.below(256));
  }
  return Buffer.from(out);
};

/** A file of notes as bytes: usually UTF-8, at times damaged, in another coding, or bytes of any kind. */
export const makeBytes = (corpus: Corpus, chance: Chance): Buffer => {
  const kind = chance.below(40);
  if (kind === 0) return Buffer.from(Array.from({ length: chance.below(300) }, () => chance.below(256)));
  if (kind === 1) return Buffer.from(`\ufeff${makeText(corpus, chance)}`, 'utf16le');
  if (kind === 2) return Buffer.from(`\ufeff${makeText(corpus, chance)}`, 'utf16le').swap16();
  if (kind < 5) {
    const whole = Buffer.from(chance.pick(corpus.files));
    return whole.subarray(0, chance.below(whole.length + 1));
  }
  const bytes = Buffer.from(makeText(corpus, chance));
  return kind < 12 ? damagedBytes(bytes, chance) : bytes;
};

/** A small journal whose names belong together, so that reckoning and rules have much to do; with some damage. */
export const makeJournal = (corpus: Corpus, chance: Chance): Buffer[] => {
  const { shelf, notes } = chance.pick(corpus.journals);
  const other = chance.comes(0.3) ? chance.pick(corpus.journals).notes : [];
  const recastLines = (text: string): string =>
    text
      .split('\n')
      .map((line) => (chance.comes(0.15) ? recast(line, corpus, chance) : line))
      .join('\n');
  return [
    ...shelf.map((text) => (chance.comes(0.2) ? damage(text, 1 + chance.below(3), corpus, chance) : text)),
    ...[...notes, ...other].map((text) => damage(recastLines(text), chance.below(4), corpus, chance)),
  ].map((text) => Buffer.from(text));
};
