import type { VisitFact } from '../records/schema/entry.ts';
import { factsIn, notedOf, type VisitView } from './card-visit.ts';
import { visitItem } from './visit-lines.ts';

/** Lines of the course of a visit that may end in words worth keeping: `check 10:50 A "temples slow, left them last"`. */
const WORDS = ['on', 'check', 'off', 'heat', 'wash', 'rinse', 'dry', 'cut', 'left'] as const;

const isRemark = (fact: VisitFact): boolean => 'says' in fact && fact.says !== undefined;

/** What was said while the colour was on and came off, in the order of the note, an item each. */
export const remarkItems = (view: VisitView): string[] =>
  factsIn(view.visit, WORDS)
    .filter(isRemark)
    .toSorted((a, b) => a.line - b.line)
    .map((fact) => visitItem(notedOf(view), fact));
