import type { ShelfItem } from '../../journal/shelf.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { type AllergyOnFile, allergies } from '../../reckon/state.ts';
import { lasting } from '../../text/recently.ts';
import { allergyTo } from '../../trade/contraindications.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { bowlsPutOn } from '../applied.ts';
import { hasPeroxide, itemsIn, placeInBowl } from '../contents.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const ESCAPED = /[.*+?^${}()|[\]\\]/g;

const wordOf = (name: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\d-])${name.replace(ESCAPED, '\\$&')}(?![\\p{L}\\d-])`, 'iu');

const wordsOf = lasting(({ name, full }: ShelfItem): readonly RegExp[] => [wordOf(name), wordOf(full)]);

/** What of a bowl an allergy is to: the product it names, else what it names of the trade. */
const metIn = (bowl: BowlReckoned, text: string): ShelfItem | undefined => {
  const items = itemsIn(bowl);
  const named = items.find((item) => wordsOf(item).some((word) => word.test(text)));
  if (named !== undefined) return named;
  switch (allergyTo(text)) {
    case 'dye':
      return items.find(
        ({ kind }) =>
          kind !== undefined && kindFacts(kind).skinTest && (kindFacts(kind).oxidative === true || hasPeroxide(bowl)),
      );
    case 'lightener':
      return items.find(({ kind }) => kind === 'lightener');
    case 'peroxide':
      return hasPeroxide(bowl) ? items.find(({ kind }) => kind === 'developer') : undefined;
    default:
      return undefined;
  }
};

const foundIn = (visit: VisitReckoned, { text, place }: AllergyOnFile): Found | undefined => {
  for (const bowl of bowlsPutOn(visit)) {
    const item = metIn(bowl, text);
    if (item === undefined) continue;
    return {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      message: `Bowl ${bowl.name} holds ${item.name}${item.kind === undefined ? '' : `, ${item.kind}`}, and the allergy "${text}" is on file.`,
      expected: 'What an allergy names stays off this client until her doctor says otherwise (common practice).',
      todo: 'Write what was really used, or who cleared it and when: `because allergy-named "…"`.',
      label: 'allergy on file',
      also: [{ place, says: 'the allergy' }],
    };
  }
  return undefined;
};

export default defineRule({
  name: 'allergy-named',
  family: 'cautions',
  severity: 'stop',
  bears: 'that-day',
  over: 'visit',
  what: 'Something is used that an `allergy` line names: a product, hair dye or one of its dyes, lightener, peroxide.',
  why: 'An allergy does not wear off, and the next reaction can be worse than the one that was noted.',
  source: { kind: 'notation' },
  caution: 'reaction',
  check: (visit) => foundEach(allergies(visit.client), (allergy) => foundIn(visit, allergy)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      allergy "persulphates, nickel"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
      allergy "nickel"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});
