import { plannedIn } from '../reckon/ahead/due-window.ts';
import type { FactsOf, VisitReckoned } from '../reckon/model.ts';
import { factsIn, notedOf } from './card-visit.ts';
import { dueItems } from './due.ts';
import { type HeadView, listOf } from './head-view.ts';
import { ASKED_HEADING } from './headings.ts';
import { nextTexts, visitItem, visitPhrase } from './visit-lines.ts';

/** What the visits before a day promised for it: the plan, its changes, notes, deposits. */

const planItems = (view: HeadView, before: readonly VisitReckoned[]): string[] => {
  const visit = plannedIn(before);
  return [
    ...(visit === undefined
      ? []
      : [`- **Next time** noted on ${visit.date}: ${nextTexts(notedOf({ journal: view.journal, visit }), visit)}`]),
    ...dueItems(before, [], { on: view.on, planned: visit, seen: true }),
  ];
};

/** Deposits taken for a day that is still to come after the last visit, and not used or given back since. */
const depositItems = (view: HeadView, before: readonly VisitReckoned[]): string[] => {
  const last = before.at(-1)?.date ?? '';
  return before.flatMap((visit) =>
    factsIn(visit, ['deposit'])
      .filter((fact): fact is FactsOf<'deposit'> => fact.word === 'deposit')
      .filter((fact) => fact.for !== undefined && fact.for.date > last)
      .map(
        (fact) =>
          `- **Deposit** taken on ${visit.date}: ${visitPhrase(notedOf({ journal: view.journal, visit }), fact)}`,
      ),
  );
};

/**
 * What the last visit leaves to remember: its notes and what was told to do at home; how it came out too, unless the
 * sheet shows that visit beneath.
 */
const keptItems = (
  { journal }: HeadView,
  last: VisitReckoned | undefined,
  shown: ReadonlySet<VisitReckoned>,
): string[] => {
  if (last === undefined) return [];
  const words = shown.has(last) ? (['note', 'care'] as const) : (['note', 'care', 'result', 'call'] as const);
  return factsIn(last, words).map((fact) => visitItem(notedOf({ journal, visit: last }), fact));
};

/**
 * What was promised, as blocks of Markdown with their heading. `before` are the visits before the day, oldest first;
 * `shown` those that the sheet shows beneath.
 */
export const promiseBlocks = (
  view: HeadView,
  before: readonly VisitReckoned[],
  shown: ReadonlySet<VisitReckoned>,
): string[] => {
  const items = [...planItems(view, before), ...depositItems(view, before), ...keptItems(view, before.at(-1), shown)];
  return [`## ${ASKED_HEADING}`, ...(items.length === 0 ? ['The notes promise nothing for this day.'] : listOf(items))];
};
