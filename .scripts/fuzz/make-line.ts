import { tokensOf } from '../../src/notation/lexer.ts';
import type { Chance } from './chance.ts';
import type { Corpus } from './corpus.ts';
import { FIGURES, SCRAPS } from './scraps.ts';

/** A character of any plane, lone surrogates among them. */
const anyCharacter = ({ below, pick }: Chance): string => {
  const top = pick([0x80, 0x100, 0x800, 0x3000, 0x10000, 0x20000, 0x110000]);
  return String.fromCodePoint(below(top));
};

const scrap = (corpus: Corpus, chance: Chance): string => {
  const kind = chance.below(10);
  if (kind < 5) return chance.pick(SCRAPS);
  if (kind < 7) return chance.pick(FIGURES);
  return kind < 9 ? chance.pick(corpus.allTokens) : anyCharacter(chance);
};

/** What slips of the hand make of a text: characters put in, left out, typed twice, turned round. */
export const slipped = (text: string, slips: number, corpus: Corpus, chance: Chance): string => {
  let out = text;
  for (let slip = 0; slip < slips; slip++) {
    const from = chance.below(out.length + 1);
    const to = Math.min(out.length, from + 1 + chance.below(6));
    const [before, here, after] = [out.slice(0, from), out.slice(from, to), out.slice(to)];
    const kind = chance.below(6);
    if (kind < 2) out = before + scrap(corpus, chance) + here + after;
    else if (kind === 2) out = before + after;
    else if (kind === 3) out = before + here + here + after;
    else if (kind === 4) out = before + [...here].reverse().join('') + after;
    else out = before + scrap(corpus, chance) + after;
  }
  return out;
};

/** A line of the corpus with some of its words and figures changed for others of the same kind. */
export const recast = (line: string, corpus: Corpus, chance: Chance): string => {
  let out = '';
  let done = 0;
  for (const { tokenType, image, startOffset } of tokensOf(line)) {
    out += line.slice(done, startOffset);
    done = startOffset + image.length;
    const kind = chance.below(40);
    if (kind < 8) out += chance.pick(corpus.tokens.get(tokenType.name) ?? [image]);
    else if (kind === 8) out += chance.pick(corpus.allTokens);
    else if (kind === 9) out += image.replace(/\d+(?:[.,]\d+)?/, () => chance.pick(FIGURES));
    else if (kind !== 10) out += image;
  }
  return out + line.slice(done);
};

const JOINTS = [' ', ' ', ' ', ' ', ', ', ' + ', '', ': ', '-', '/', '  '];

/** A line from the notation's own words: a first word, then words and figures of any kind. */
const made = (corpus: Corpus, chance: Chance): string => {
  let out = chance.pick(corpus.firstWords);
  for (let left = chance.below(12); left > 0; left--)
    out += (out.length > 0 ? chance.pick(JOINTS) : '') + chance.pick(corpus.allTokens);
  return out;
};

/** One line of notes, good or bad, without a line feed in it. */
export const makeLine = (lines: readonly string[], corpus: Corpus, chance: Chance): string => {
  const kind = chance.below(20);
  const line = kind < 15 ? chance.pick(lines) : made(corpus, chance);
  if (kind < 8) return recast(line, corpus, chance);
  if (kind < 17) return slipped(line, 1 + chance.below(4), corpus, chance).replaceAll('\n', ' ');
  if (kind < 19) return line;
  let out = '';
  for (let left = chance.below(14); left > 0; left--) out += scrap(corpus, chance);
  return out.replaceAll('\n', ' ');
};
