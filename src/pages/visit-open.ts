import type { VisitReckoned } from '../reckon/model.ts';

/** Words that end a visit: what came of it, what it cost, when the next is. */
const LAST_WORDS: ReadonlySet<string> = new Set(['result', 'charge', 'paid', 'next']);

/**
 * Whether a visit is under way on a day: it is that day's, and nothing that ends a visit is noted after what went on.
 * Until then the visit before it is the last one.
 */
export const isUnderWay = ({ date, visit }: VisitReckoned, on: string): boolean => {
  if (date !== on) return false;
  const words = visit.entry.facts.map(({ word }) => word);
  const ended = words.findLastIndex((word) => LAST_WORDS.has(word));
  return ended < 0 || ended < words.lastIndexOf('on');
};
