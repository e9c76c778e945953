import type { IToken } from 'chevrotain';
import { fold } from '../text/fold.ts';
import {
  Comma,
  Comment,
  DateShape,
  Dotted,
  Fraction,
  MonthShape,
  Pair,
  Plus,
  Quoted,
  Slashed,
  Stop,
  tokensOf,
  Whole,
  Word,
} from './lexer.ts';
import type { Run } from './line-tree.ts';
import { spaceEnd } from './space.ts';
import type { Form } from './words.ts';

/** White space to put in the place of a run of white space, which may be empty. */
export type Gap = Run & { readonly put: string };

const AFTER_COMMA: ReadonlySet<IToken['tokenType']> = new Set([
  Word,
  Whole,
  Dotted,
  Fraction,
  DateShape,
  MonthShape,
  Pair,
  Slashed,
  Quoted,
]);

const endOf = (token: IToken): number => token.startOffset + token.image.length;

/** The white space that belongs between two neighbours. What touches stays together, but for lists and mixes. */
const between = (before: IToken, after: IToken, typed: string, form: Form, commas: boolean): string => {
  if (after.tokenType === Comment) return '  ';
  // A colon or a bracket that touches what it follows says nothing; standing apart it would.
  if (before.tokenType === Plus && after.tokenType === Stop && typed === '') return '';
  // Only in a mix does a plus sign join; elsewhere it may belong to a time (`+10`), a depth (`7+`) or two bowls.
  if (form === 'mix' && (before.tokenType === Plus || after.tokenType === Plus)) return ' ';
  if (commas && after.tokenType === Comma) return '';
  if (commas && before.tokenType === Comma && AFTER_COMMA.has(after.tokenType)) return ' ';
  return typed === '' ? '' : ' ';
};

/** A lot's number is whatever touches; a comma may be part of it where commas do not part the line. */
const hasLot = (tokens: readonly IToken[]): boolean =>
  tokens.some(({ tokenType, image }) => tokenType === Word && fold(image) === 'lot');

/** The line with its white space changed; the gaps stand in order. */
export const withGaps = (line: string, gaps: readonly Gap[]): string => {
  let out = '';
  let done = 0;
  for (const { from, to, put: space } of gaps) {
    out += line.slice(done, from) + space;
    done = to;
  }
  return out + line.slice(done);
};

const sameTokens = (tokens: readonly IToken[], line: string): boolean => {
  const others = tokensOf(line);
  return (
    others.length === tokens.length &&
    others.every(({ tokenType, image }, i) => tokenType === tokens[i]?.tokenType && image === tokens[i]?.image)
  );
};

/**
 * The white space to change between the things on a line that is read. A change after which the line would fall into
 * other tokens is left out: nothing is ever joined or parted by neatening.
 */
export const neatenGaps = (line: string, form: Form): Gap[] => {
  const tokens = tokensOf(line);
  const commas = form !== 'loose' || !hasLot(tokens);
  const gaps: Gap[] = [];
  for (const [index, after] of tokens.entries()) {
    const before = tokens[index - 1];
    if (before === undefined) continue;
    const [from, to] = [endOf(before), after.startOffset];
    const typed = line.slice(from, to);
    const space = between(before, after, typed, form, commas);
    if (space !== typed) gaps.push({ from, to, put: space });
  }
  if (gaps.length === 0 || sameTokens(tokens, withGaps(line, gaps))) return gaps;
  const kept: Gap[] = [];
  for (const gap of gaps) if (sameTokens(tokens, withGaps(line, [...kept, gap]))) kept.push(gap);
  return kept;
};

/** Free text: one space after its first word, and not a character further. */
export const neatenFreeStart = (line: string, wordEnd: number): Gap[] => {
  const to = spaceEnd(line, wordEnd);
  const typed = line.slice(wordEnd, to);
  return typed === '' || typed === ' ' || to === line.length ? [] : [{ from: wordEnd, to, put: ' ' }];
};
