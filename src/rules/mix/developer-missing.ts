import { wentOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, portionsIn } from '../../reckon/bowl/contents.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { quoted } from '../../reckon/say.ts';
import { sentence } from '../../text/sentence.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

/** Beside a colour, water or a mask makes a pre-pigment of it, which wants no developer (common practice, no source). */
const isPlain = ({ portions }: BowlReckoned): boolean =>
  portions.every(({ role, item, from }) => from === undefined && role === 'base' && item?.kind !== 'conditioner');

const foundIn = (bowl: BowlReckoned, { notices }: VisitReckoned['visit']): Found | undefined => {
  // A line that broke off is told of as such.
  if (notices.some((one) => one.line === bowl.place.line)) return undefined;
  if (bowl.again !== undefined || bowl.problems.length > 0 || !wentOn(bowl) || !isPlain(bowl)) return undefined;
  const items = itemsIn(bowl);
  const item = items.find(({ mix }) => mix?.ratio !== undefined);
  if (item?.mix === undefined || portionsIn(bowl).some(({ role }) => role === 'developer')) return undefined;
  const names = quoted(items.map(({ name }) => name));
  return {
    place: bowl.place,
    severity: items.some(({ kind }) => kind === 'lightener') ? 'fix' : 'mind',
    message: `Bowl ${bowl.name} holds ${names} and no developer.`,
    expected: sentence`${item.full} is mixed with one (${citeLine(item, item.mix)}).`,
    todo: `Write it, as in \`plus ${bowl.name} 60 dev-6\`, or why there is none: \`because developer-missing "…"\`.`,
    label: 'no developer',
    also: [{ place: placeOf(item.stood, item.mix, item.mix.ratio?.at), says: 'its mix line' }],
  };
};

export default defineRule({
  name: 'developer-missing',
  family: 'mix',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'A lightener or colour that is mixed with developer was put on without any; `mind` for colour.',
  why: 'A line that broke off looks like a whole bowl, and its weight, strength and cost are all wrong.',
  source: { kind: 'notation' },
  check: ({ bowls, visit }) => foundEach(bowls, (bowl) => foundIn(bowl, visit)),
  bad: `
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay
           ^^^^^^^^^`,
  good: `
    product clay "Peregrine clay" lightener
      mix 1:1.5-1:2
    product dev-6 "Cream developer" developer 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});
