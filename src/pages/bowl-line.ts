import { furtherOf } from '../reckon/forecast/need.ts';
import type { BowlReckoned, VisitReckoned } from '../reckon/model.ts';
import { figure, grams } from '../reckon/say.ts';
import { partName } from './bowls-table.ts';
import { bowlName, joined } from './noted.ts';
import { hedged } from './say-numbers.ts';

/** The bowls of a visit as they were mixed, and one of them in one line. */

/** The bowls of a visit in the order they were mixed in, each followed by its further mixes. */
export const bowlsInOrder = (visit: VisitReckoned): readonly BowlReckoned[] => {
  const further = new Map(
    visit.bowls.flatMap((bowl) =>
      bowl.mixedWithMore === undefined ? [] : [[bowl, furtherOf(visit, visit.bowls, bowl)] as const],
    ),
  );
  const after = new Set([...further.values()].flat());
  const ordered = visit.bowls.flatMap((bowl) => (after.has(bowl) ? [] : [bowl, ...(further.get(bowl) ?? [])]));
  return [...new Set([...ordered, ...visit.bowls])];
};

/** `106 g of 120 g used: 40 g clay + 80 g dev-6, 6 %` */
export const bowlLine = (bowl: BowlReckoned): string => {
  const { about, shownTotal, used, left, portions } = bowl;
  const whole = shownTotal === undefined ? 'weight not known' : hedged(about, grams(shownTotal));
  const spent = used !== undefined && left !== undefined ? `, ${figure(used, 0)} g used` : '';
  const parts = portions.map((portion) =>
    joined([portion.shown && hedged(portion.about, grams(portion.shown)), partName(portion)], ' '),
  );
  return `${whole}${spent}: ${parts.join(' + ')}`;
};

/** `Bowl A`, as a list item names it; with the date of its visit where another bowl has the name too. */
export const bowlTerm = (bowl: BowlReckoned, date?: string): string =>
  `**Bowl ${bowlName(bowl)}**${date === undefined ? '' : ` of ${date}:`}`;
