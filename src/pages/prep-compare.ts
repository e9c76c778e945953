import type { Plan } from '../reckon/ahead/plan.ts';
import { breaksHold, holdsOn } from '../reckon/client/state.ts';
import { isColour } from '../reckon/head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { fold } from '../text/fold.ts';
import { bowlLine, bowlsInOrder, bowlTerm } from './bowl-line.ts';
import { factsIn, notedOf } from './card-visit.ts';
import { escapeText } from './escape.ts';
import { type HeadView, listOf } from './head-view.ts';
import { bowlName, commas, quote } from './noted.ts';
import { visitPhrase } from './visit-lines.ts';

/** The bowls of the last time on a day that has its own, or that rules them out: to compare, and not to mix. */

/** What a wish says no to: `no lightener`, `without colour`. */
const NO = /(?<![\p{L}\p{N}])(?:no|not|without)\s+([\p{L}\p{N}-]+)/giu;

const refusedIn = (text: string): string[] => [...text.matchAll(NO)].map(([, word = '']) => fold(word));

/** Whether a bowl holds what a word says no to: its kind, its product, or any colour. */
const isRefused = (bowl: BowlReckoned, word: string): boolean =>
  /^colou?r$/.test(word) ? isColour(bowl) : breaksHold({ what: word }, bowl);

/** Why a bowl is not to be mixed on the day: what its visit says so far, or a hold in force. */
const refusals = (view: HeadView, today: VisitReckoned | undefined, bowl: BowlReckoned): string[] => {
  const { journal, client, on, visits } = view;
  const wishes = (today === undefined ? [] : factsIn(today, ['aim', 'want', 'note'])).flatMap((fact) => {
    const text = fact.word === 'aim' || fact.word === 'note' ? fact.text : '';
    return refusedIn(text).some((word) => isRefused(bowl, word)) ? [`by the ${fact.word} ${quote(text)}`] : [];
  });
  const declined = (today === undefined ? [] : factsIn(today, ['declined'])).flatMap((fact) => {
    if (fact.word !== 'declined' || today === undefined) return [];
    const all = fact.what.length === 0 && today.bowls.length === 0;
    return all || fact.what.some(({ word }) => isRefused(bowl, word))
      ? [`declined: ${visitPhrase(notedOf({ journal, visit: today }), fact)}`]
      : [];
  });
  const before = visits.filter(({ date }) => date < on).map(({ visit }) => visit);
  const holds = holdsOn(on, client, before)
    .filter((hold) => breaksHold(hold, bowl))
    .map(
      ({ what, until, untilLetter }) =>
        `by the hold on ${escapeText(what)}, ${until !== undefined ? `until ${until}` : untilLetter ? 'until a letter' : 'for good'}`,
    );
  return [...wishes, ...declined, ...holds];
};

/** Which of the bowls of earlier visits the day rules out, and by what, as items; none where it rules none out. */
export const ruledOutItems = (view: HeadView, today: VisitReckoned | undefined, plans: readonly Plan[]): string[] => {
  const why = new Map<string, string[]>();
  for (const { bowls } of plans)
    for (const { bowl } of bowls)
      for (const reason of refusals(view, today, bowl)) {
        const names = why.get(reason) ?? [];
        if (!names.includes(bowlName(bowl))) names.push(bowlName(bowl));
        why.set(reason, names);
      }
  return [...why].map(([reason, names]) => `- **Ruled out** ${commas(names)}, ${reason}`);
};

/** The bowls of an earlier visit in a line each, with no grams to mix. */
export const compareItems = ({ visit }: Plan): string[] =>
  bowlsInOrder(visit).map((bowl) => `- ${bowlTerm(bowl, visit.date)} ${bowlLine(bowl)}`);

/** The bowls of earlier visits, to compare, after what rules them out. */
export const compareBlocks = (plans: readonly Plan[], ruledOut: readonly string[]): string[] => [
  '## Last time’s bowls, to compare',
  ...listOf([...ruledOut, ...plans.flatMap(compareItems)]),
];
