import { BODY_WORDS, isBodyWord } from '../../notation/words.ts';
import { bindBody } from '../read-body.ts';
import type { Fact } from '../schema/entry.ts';
import { type Said, spaced } from './said.ts';

/** Whether two facts say the same, wherever they stand. */
const isSame = (a: unknown, b: unknown): boolean => {
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [own, other] = [fieldsOf(a), fieldsOf(b)];
  return own.size === other.size && [...own].every(([key, value]) => isSame(value, other.get(key)));
};

const fieldsOf = (value: object): Map<string, unknown> =>
  new Map(
    Object.entries(value).filter(
      ([key, inner]) => inner !== undefined && !((key === 'at' || key === 'line') && typeof inner === 'number'),
    ),
  );

/** Whether a line reads as this fact alone. */
const readsAs = (line: string, fact: Said<Fact>): boolean => {
  const [kind] = isBodyWord(fact.word) ? BODY_WORDS[fact.word].under : [];
  const facts: object[] = [];
  if (kind !== undefined) bindBody(line, 0, kind, facts, []);
  return facts.length === 1 && isSame(facts[0], fact);
};

/**
 * Where a text may stand among the things of a line: behind it, then before and behind each of its things from the last
 * to the first.
 */
const spotsIn = (line: string, word: string): number[] =>
  [...line.matchAll(/(?=[ ,])|$/gu)]
    .map(({ index }) => index)
    .filter((at) => at >= word.length)
    .reverse();

/**
 * The line of a fact with what was not read of it, where it again is not read: nearly always behind what was. Undefined
 * where it would be read at any place, as when it stood behind a figure that was reported and not kept.
 */
export const withRest = (fact: Said<Fact>, rest: string, said: string, close: string): string | undefined =>
  spotsIn(said, fact.word)
    .map((at) => spaced(`${said.slice(0, at)} ${rest}${said.slice(at)}`, close))
    .find((line) => readsAs(line, fact));
