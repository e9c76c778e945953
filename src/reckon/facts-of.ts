import type { Stood } from '../journal/source.ts';
import type { Visit, VisitFact } from '../records/schema/entry.ts';
import type { Seen } from '../records/schema/values.ts';
import { recently } from '../text/recently.ts';
import type { FactsOf } from './model.ts';

/** Shared by all that is empty, so nothing is put into it. */
const NOTHING: VisitFact[] = [];

/** No lines yet, under the first words by which rules ask for lines. */
const NO_LINES = {
  charge: NOTHING,
  check: NOTHING,
  deposit: NOTHING,
  heat: NOTHING,
  leave: NOTHING,
  more: NOTHING,
  next: NOTHING,
  paid: NOTHING,
  place: NOTHING,
  reaction: NOTHING,
  redo: NOTHING,
  split: NOTHING,
};

type Asked = keyof typeof NO_LINES;

const ASKED: ReadonlySet<string> = new Set(Object.keys(NO_LINES));

const isAsked = (fact: VisitFact): fact is FactsOf<Asked> => ASKED.has(fact.word);

const byWord = recently(({ entry }: Stood<Visit>): Record<Asked, readonly VisitFact[]> => {
  const lines = { ...NO_LINES };
  for (const fact of entry.facts) {
    if (!isAsked(fact)) continue;
    const before = lines[fact.word];
    if (before.length === 0) lines[fact.word] = [fact];
    else before.push(fact);
  }
  return lines;
});

/** The lines of a visit that begin with a word, in order; nearly every rule that asks finds none. */
export const factsOf = <W extends Asked>(visit: Stood<Visit>, word: W): readonly FactsOf<W>[] =>
  // Under each word stand its own facts.
  byWord(visit)[word] as readonly FactsOf<W>[];

const NO_SEEN: readonly Seen[] = [];

/** What a line says was seen or is wanted. */
export const seenIn = (fact: VisitFact): readonly Seen[] => {
  switch (fact.word) {
    case 'check':
    case 'start':
    case 'want':
    case 'result':
      return fact.seen;
    default:
      return NO_SEEN;
  }
};
