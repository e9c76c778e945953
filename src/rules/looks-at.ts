import { kindsMixed } from '../reckon/bowl/kinds-mixed.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { LooksAt } from './rule.ts';

/** A rule, and what it looks at as bits: nought where anything will do. */
type Asked<R> = { readonly rule: R; readonly words: number; readonly kinds: number };

/** Bits that a number holds without a sign. */
const MOST = 31;

/** A bit a name, in the order they come. Throws where there are more names than bits: then the rules need a second number. */
const bitsOf = <T>(names: Iterable<T>): ReadonlyMap<T, number> => {
  const bits = new Map<T, number>();
  for (const name of new Set(names)) bits.set(name, 1 << bits.size);
  if (bits.size > MOST) throw new Error(`rules look at ${bits.size} words or kinds; one number holds ${MOST}`);
  return bits;
};

const maskOf = <T>(names: Iterable<T>, bits: ReadonlyMap<T, number>): number => {
  let mask = 0;
  for (const name of names) mask |= bits.get(name) ?? 0;
  return mask;
};

const has = (asked: number, there: number): boolean => asked === 0 || (asked & there) !== 0;

/**
 * Of some rules those that can find anything in a visit, in their order: what a visit says and mixes is worked out once,
 * as two numbers, and held against what each rule looks at.
 */
export const dispatcher = <R extends { readonly looksAt?: LooksAt }>(
  rules: readonly R[],
): ((visit: VisitReckoned, ask: (rule: R) => void) => void) => {
  const wordBits = bitsOf(rules.flatMap(({ looksAt }) => looksAt?.words ?? []));
  const kindBits = bitsOf(rules.flatMap(({ looksAt }) => looksAt?.kinds ?? []));
  const all = rules.map(
    (rule): Asked<R> => ({
      rule,
      words: maskOf(rule.looksAt?.words ?? [], wordBits),
      kinds: maskOf(rule.looksAt?.kinds ?? [], kindBits),
    }),
  );
  return (visit, ask) => {
    let said = 0;
    for (const { word } of visit.visit.entry.facts) said |= wordBits.get(word) ?? 0;
    let mixed = 0;
    for (const kind of kindsMixed(visit)) if (kind !== undefined) mixed |= kindBits.get(kind) ?? 0;
    for (const { rule, words, kinds } of all) if (has(words, said) && has(kinds, mixed)) ask(rule);
  };
};
