import type { VisitReckoned } from '../model.ts';

/** Words right before another that take it back: `no green`. */
const NOT = /\b(?:no|not|never|without|nothing)\s+(?:\w+\s+)?$/iu;

const says = (text: string, words: RegExp): string | undefined => {
  const match = words.exec(text);
  return match === null || NOT.test(text.slice(0, match.index)) ? undefined : match[0];
};

/** What the notes say of how a visit came out: its `result` and `call` lines, then later `about` lines of its day. */
const outcomesOf = ({ visit, date }: VisitReckoned, visits: readonly VisitReckoned[]): string[] => [
  ...visit.entry.facts.flatMap((fact) => {
    if (fact.word === 'call') return fact.says?.text ?? [];
    if (fact.word !== 'result') return [];
    return [...fact.seen.flatMap(({ words }) => words.map(({ word }) => word)), fact.says?.text ?? ''];
  }),
  ...visits.flatMap((later) =>
    later.visit.entry.facts.flatMap((fact) =>
      fact.word === 'about' && fact.date.date === date ? (fact.says?.text ?? []) : [],
    ),
  ),
];

/** The word by which the result of a visit, or later news of it, bears a finding out; undefined where none does. */
export const borneOut = (visit: VisitReckoned, visits: readonly VisitReckoned[], words: RegExp): string | undefined => {
  for (const text of outcomesOf(visit, visits)) {
    const word = says(text, words);
    if (word !== undefined) return word;
  }
  return undefined;
};

/** Whether the result of a visit, or later news of it, denies such a word (`no green anywhere`). */
export const isDenied = (visit: VisitReckoned, visits: readonly VisitReckoned[], words: RegExp): boolean =>
  outcomesOf(visit, visits).some((text) => words.test(text) && says(text, words) === undefined);
