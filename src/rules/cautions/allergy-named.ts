import type { ShelfItem } from '../../journal/shelf.ts';
import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { cautionIn } from '../../reckon/bowl/caution-in.ts';
import { hasPeroxide, itemsIn, placeInBowl, portionsIn } from '../../reckon/bowl/contents.ts';
import { type AllergyOnFile, allergies, leaveSince } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { lasting } from '../../text/recently.ts';
import { CROSS_SOURCE, crossAllergens, namesHairDye, withoutOtherDyes } from '../../trade/allergens.ts';
import { type AllergyTo, allergyTo, saysBlackHenna } from '../../trade/contraindications.ts';
import { isClear } from '../../trade/dye.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { reactionTold } from '../../trade/reaction-words.ts';
import { defineRule, type Found } from '../rule.ts';
import { dayNamed } from '../said-on-file.ts';
import { testedAt } from '../skin-tests.ts';

const ESCAPED = /[.*+?^${}()|[\]\\]/g;

const wordOf = (name: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\d-])${name.replace(ESCAPED, '\\$&')}(?![\\p{L}\\d-])`, 'iu');

const wordsOf = lasting(({ name, full }: ShelfItem): readonly RegExp[] => [wordOf(name), wordOf(full)]);

const isDye =
  (bowl: BowlReckoned) =>
  ({ kind, name }: ShelfItem): boolean =>
    kind !== undefined &&
    kindFacts(kind).skinTest &&
    (kindFacts(kind).oxidative === true || hasPeroxide(bowl)) &&
    portionsIn(bowl).some(({ item, shade }) => item?.name === name && !isClear(shade?.toLowerCase()));

type Met = { readonly item: ShelfItem; readonly of: AllergyTo | 'product' | readonly string[] };

/** What of a bowl an allergy is to: the product it names, else what it names of the trade, else what acts like it. */
const metIn = (bowl: BowlReckoned, text: string): Met | undefined => {
  const items = itemsIn(bowl);
  const named = items.find((item) => wordsOf(item).some((word) => word.test(text)));
  if (named !== undefined) return { item: named, of: 'product' };
  const to = allergyTo(withoutOtherDyes(text));
  const cross = namesHairDye(text) || saysBlackHenna(text) ? [] : crossAllergens(text);
  const met = (of: Met['of'], is: (item: ShelfItem) => boolean): Met | undefined => {
    const item = items.find(is);
    return item && { item, of };
  };
  if (cross.length > 0 && (to === undefined || to === 'dye')) return met(cross, isDye(bowl));
  switch (to) {
    case 'dye':
      // The word for black henna is a finding of its own.
      return saysBlackHenna(text) ? undefined : met('dye', isDye(bowl));
    case 'lightener':
      return met('lightener', ({ kind }) => kind === 'lightener');
    case 'peroxide':
      return hasPeroxide(bowl) ? met('peroxide', ({ kind }) => kind === 'developer') : undefined;
    default:
      return undefined;
  }
};

const CAUTIONS = { dye: 'reaction', lightener: 'persulphate', peroxide: 'peroxide' } as const;

/** Whether a clear test of the product, made since the allergy was noted, holds at a visit. */
const isTestedSince = (visit: VisitReckoned, item: ShelfItem, since: string): boolean =>
  testedAt(visit).some(
    ({ standing: { product, status, test } }) =>
      product === item.name && status === 'valid' && (test?.made?.date ?? '') >= since,
  );

/** What a clear test can speak for: one allergen, and nothing grave told of it. */
const isLight = (text: string, names: readonly string[]): boolean =>
  names.length === 1 && reactionTold(text) !== 'grave';

const crossFound = (
  bowl: BowlReckoned,
  { item }: Met,
  names: readonly string[],
  isTested: boolean,
): Partial<Found> => ({
  ...(isTested && { severity: 'mind' as const }),
  message: `Bowl ${bowl.name} holds ${item.name}, ${item.kind}; the allergy names ${listed(names)}, which can cross-react with its dyes${isTested ? ', and its skin test was clear' : ''}.`,
  expected: `Whoever reacts to one of the para group can react to hair dyes (${CROSS_SOURCE}).`,
  todo: isTested
    ? 'Nothing, if her doctor knows; else a `letter` line under the client.'
    : 'Write the letter of her doctor under the client, or who cleared it and when: `because allergy-named "…"`.',
  label: `kin of ${listed(names)}`,
});

const foundIn = (visit: VisitReckoned, { text, place }: AllergyOnFile): Found | undefined => {
  for (const bowl of bowlsPutOn(visit)) {
    const met = metIn(bowl, text);
    if (met === undefined) continue;
    const { item, of } = met;
    const since = dayNamed(text) ?? '';
    const ofDye = of === 'dye' || typeof of === 'object';
    if (ofDye && leaveSince(visit.client, since, visit.date) !== undefined) continue;
    return {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      message: `Bowl ${bowl.name} holds ${item.name}${item.kind === undefined ? '' : `, ${item.kind}`}, and the allergy "${text}" is on file.`,
      expected: 'What an allergy names stays off this client until her doctor says otherwise (common practice).',
      todo: 'Write what was really used, or who cleared it and when: `because allergy-named "…"`.',
      label: 'allergy on file',
      also: [{ place, says: 'the allergy' }],
      ...(typeof of === 'object' && crossFound(bowl, met, of, isLight(text, of) && isTestedSince(visit, item, since))),
      caution: of === 'product' ? cautionIn(bowl, 'reaction') : typeof of === 'object' ? 'reaction' : CAUTIONS[of],
    };
  }
  return undefined;
};

function* foundEach(allergiesOnFile: readonly AllergyOnFile[], visits: readonly VisitReckoned[]): Generator<Found> {
  const minded = new Set<AllergyOnFile>();
  for (const visit of visits)
    for (const allergy of allergiesOnFile) {
      const found = foundIn(visit, allergy);
      // What is only worth a thought is thought of once.
      if (found === undefined || (found.severity === 'mind' && minded.has(allergy))) continue;
      if (found.severity === 'mind') minded.add(allergy);
      yield found;
    }
}

export default defineRule({
  name: 'allergy-named',
  family: 'cautions',
  severity: 'stop',
  bears: 'that-day',
  over: 'client',
  what: 'Something is used that an `allergy` line names (a product, hair dye or one of its dyes, lightener, peroxide), or hair dye where it names what can cross-react; the latter `mind`, once, where a skin test since was clear, it names one such thing and nothing grave.',
  why: 'An allergy does not wear off, and the next reaction can be worse than the one that was noted.',
  source: { kind: 'notation' },
  caution: 'reaction',
  check: (client, visits) => foundEach(allergies(client), visits),
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
