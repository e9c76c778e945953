import type { ShelfItem } from '../../journal/shelf.ts';
import { placeInBowl } from '../../reckon/bowl/contents.ts';
import { keptApart } from '../../reckon/bowl/kept-apart.ts';
import { ownDevelopers } from '../../reckon/bowl/own-developers.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { listed } from '../../reckon/say.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

type Shelf = ReadonlyMap<string, ShelfItem>;

const usesText = (item: ShelfItem, shelf: Shelf): string =>
  `${item.full} has ${listed(
    ownDevelopers(item, shelf).all.map(({ name }) => name),
    'or',
  )}`;

const foundIn = (bowl: BowlReckoned, shelf: Shelf): Found | undefined => {
  // A bowl made again was found out where it was first mixed, if it was not weighed anew.
  if (bowl.again !== undefined && bowl.weighed === undefined) return undefined;
  const apart = keptApart(bowl, shelf);
  if (apart === undefined) return undefined;
  const { one, other, by } = apart;
  return {
    place: placeInBowl(bowl, ({ item }) => item === other),
    message:
      by === 'kind'
        ? `Bowl ${bowl.name} holds ${one.name}, ${one.kind}, and ${other.name}, ${other.kind}.`
        : `Bowl ${bowl.name} holds ${one.name}, ${one.full}, and ${other.name}, ${other.full}: two lines.`,
    expected:
      by === 'kind'
        ? 'These kinds are mixed in bowls of their own (common practice; the leaflet of each comes first).'
        : `One line to a bowl (common practice): ${usesText(one, shelf)}, ${usesText(other, shelf)}.`,
    todo: 'Write each in the bowl that it was mixed in, or why they went together: `because kinds-in-bowl "…"`.',
    label: by === 'kind' ? `beside ${one.kind}` : `beside ${one.name}`,
    also: [
      { place: placeOf(one.stood, { line: 0 }), says: 'the one' },
      { place: placeOf(other.stood, { line: 0 }), says: 'the other' },
    ],
  };
};

export default defineRule({
  name: 'kinds-in-bowl',
  family: 'mix',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'One bowl holds kinds that are mixed apart, such as lightener and permanent colour, or colours of two lines with developers of their own.',
  why: 'Lightener destroys the dye beside it, and no leaflet gives ratio, time or lift of such a mixture.',
  source: { kind: 'common practice' },
  caution: 'peroxide',
  check: ({ bowls }, { journal: { shelf } }) => foundEach(bowls, (bowl) => foundIn(bowl, shelf)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 20 clay + 20 cream 8/3 + 60 dev-6
                       ^^^^^^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    range cream "Larkfield cream" permanent
    client wren-abbott "Wren Abbott"
      test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear
    visit 2026-09-04 wren-abbott
      bowl A 20 clay + 40 dev-6
      bowl B 20 cream 8/3 + 20 dev-6`,
});
