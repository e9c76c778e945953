import type { ShelfItem } from '../../journal/shelf.ts';
import { wentOn } from '../../reckon/bowl/applied.ts';
import { itemsIn } from '../../reckon/bowl/contents.ts';
import { greyShare } from '../../reckon/client/state.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { quoted } from '../../reckon/say.ts';
import { MEANT } from '../reason-words.ts';
import { defineRule, foundEach } from '../rule.ts';

const isBase = ({ kind }: ShelfItem): boolean => kind !== 'developer' && kind !== 'additive';

/**
 * Whether peroxide alone softens white hair before it is coloured: developer and nothing else, a share of grey noted, and
 * colour in another bowl. Common practice, no source.
 */
const isSoftening = (visit: VisitReckoned, bowl: BowlReckoned): boolean =>
  itemsIn(bowl).every(({ kind }) => kind === 'developer') &&
  (greyShare(visit.client, visit.visit)?.percent ?? 0) > 0 &&
  visit.bowls.some(
    (other) => other !== bowl && itemsIn(other).some(({ kind }) => kind === 'permanent' || kind === 'demi'),
  );

export default defineRule({
  name: 'base-missing',
  family: 'dose',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'A bowl has a developer and nothing for it to develop; peroxide alone that softens grey before colour is none.',
  why: 'Developer alone does little that was wanted, so what it was mixed with is likely missing from the note.',
  source: { kind: 'notation' },
  accepts: MEANT,
  check: (visit) =>
    foundEach(visit.bowls, (bowl) => {
      const items = itemsIn(bowl);
      if (items.some(isBase) || !items.some(({ kind }) => kind === 'developer') || !wentOn(bowl)) return undefined;
      // What has no name on the shelf, and what came out of another bowl, may be the base.
      if (!bowl.held.every(({ role, item }) => role === 'water' || item !== undefined)) return undefined;
      if (isSoftening(visit, bowl)) return undefined;
      return {
        place: bowl.place,
        message: `Bowl ${bowl.name} holds ${quoted(items.map(({ name }) => name))} and nothing to develop.`,
        expected: 'A developer is mixed with a colour, a lightener or a remover (common practice).',
        todo: `Write what it was mixed with, as in \`plus ${bowl.name} 40 clay\`.`,
        label: 'no base',
      };
    }),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product bond "Mender" additive
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 80 dev-6 + 4 bond
           ^^^^^^^^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product bond "Mender" additive
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 80 dev-6 + 4 bond
      plus A 40 clay`,
});
