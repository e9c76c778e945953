import type { VisitReckoned } from '../reckon/model.ts';
import type { Next } from '../records/schema/visit.ts';
import { dayText, waitEnds } from './days.ts';

/** The last `next` line of a visit. */
export const nextOf = ({ visit }: VisitReckoned): Next | undefined =>
  visit.entry.facts.findLast((fact): fact is Next => fact.word === 'next');

/** When the next visit is due by the last `next` line, as dates; undefined where it gives no time. */
export const dueText = (visit: VisitReckoned): string | undefined => {
  const next = nextOf(visit);
  if (next?.wait === undefined) return undefined;
  const ends = waitEnds(visit.date, next.wait);
  if (ends === undefined) return undefined;
  return ends.first === ends.last ? dayText(ends.first) : `${dayText(ends.first)}, to ${dayText(ends.last)}`;
};
