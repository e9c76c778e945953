import type { Finding } from '../../src/text/finding.ts';
import type { Mistake } from './mistakes.ts';
import { foundIn, type SeededNote } from './seeded-notes.ts';

/** How often one kind was planted, and seen: at all, and above a `mind`. */
export type Score = {
  readonly name: string;
  readonly says: string;
  readonly planted: number;
  readonly seen: number;
  readonly loud: number;
  /** Notes in which it was not seen, and for what is no mistake, those in which something was. */
  readonly odd: readonly string[];
};

const counted = (findings: readonly Finding[]): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const { rule, severity } of findings) {
    const key = `${severity} ${rule}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
};

/** What is found more often than before, as `fix past-time`. */
const gained = (before: ReadonlyMap<string, number>, after: ReadonlyMap<string, number>): string[] =>
  [...after].filter(([key, count]) => count > (before.get(key) ?? 0)).map(([key]) => key);

/** Plants every kind in every note that it fits, and counts what is seen. Calls `each` after every note. */
export const scoreOf = (
  notes: readonly SeededNote[],
  kinds: readonly Mistake[],
  each: (done: number) => void = () => undefined,
): Score[] => {
  const scores = kinds.map(({ name, says }) => ({ name, says, planted: 0, seen: 0, loud: 0, odd: [] as string[] }));
  for (const [index, note] of notes.entries()) {
    const before = counted(foundIn(note, note.before, note.visit));
    for (const [at, kind] of kinds.entries()) {
      const score = scores[at];
      const planted = kind.plant(note);
      if (score === undefined || planted === undefined) continue;
      const found = gained(before, counted(foundIn(note, planted.before ?? note.before, planted.visit ?? note.visit)));
      score.planted += 1;
      if (found.length > 0) score.seen += 1;
      if (found.some((key) => !key.startsWith('mind'))) score.loud += 1;
      score.odd.push(`${note.from}: ${found.join(', ') || 'nothing'}`);
    }
    each(index + 1);
  }
  return scores;
};
