import type { ShelfItem } from '../../journal/shelf.ts';
import { basesIn, developerStrength, inPercent } from '../../reckon/bowl/contents.ts';
import { keptApart } from '../../reckon/bowl/kept-apart.ts';
import { offersStrength } from '../../reckon/bowl/strength-offered.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { BowlReckoned } from '../../reckon/model.ts';
import { figure, listed } from '../../reckon/say.ts';
import type { StrengthLine } from '../../records/schema/shelf.ts';
import { sentence } from '../../text/sentence.ts';
import { defineRule, type Found, foundEach, NONE } from '../rule.ts';

type Shelf = ReadonlyMap<string, ShelfItem>;

const offeredText = ({ strengths, upTo }: StrengthLine): string => {
  const list = strengths.map((strength) => `${figure(inPercent(strength))} %`);
  return listed(upTo === undefined ? list : [...list, `up to ${figure(inPercent(upTo))} %`], 'or');
};

const foundOf = (bowl: BowlReckoned, item: ShelfItem): Found | undefined => {
  const line = item.strengths;
  const strength = line && developerStrength(bowl);
  const developers = bowl.held.filter(({ role }) => role === 'developer');
  const [first] = developers;
  if (line === undefined || strength === undefined || first === undefined) return undefined;
  if (offersStrength(line, strength, developers.length > 1)) return undefined;
  return {
    place: first.place,
    message: `Bowl ${bowl.name} has ${item.name} with ${figure(strength)} %.`,
    expected: sentence`${item.full} takes ${offeredText(line)} (${citeLine(item, line)}).`,
    todo: 'Write the developer that was used, or the reason: `because strength-not-offered "…"`.',
    label: `${figure(strength)} %`,
    also: [{ place: placeOf(item.stood, line, (line.strengths[0] ?? line.upTo)?.at), says: 'its strengths' }],
  };
};

const foundIn = (bowl: BowlReckoned, shelf: Shelf): readonly Found[] => {
  // A bowl made again was found out where it was first mixed, if it was not weighed anew.
  if (bowl.again !== undefined && bowl.weighed === undefined) return NONE;
  // A strength that no developer has is found as such, with what the product takes.
  if (bowl.problems.some(({ kind }) => kind === 'no-developer')) return NONE;
  // Of two lines in one bowl neither has its own developer: that is found as such.
  if (keptApart(bowl, shelf)?.by === 'line') return NONE;
  return foundEach(basesIn(bowl), (item) => foundOf(bowl, item));
};

export default defineRule({
  name: 'strength-not-offered',
  family: 'strength',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  what: 'A developer’s strength is not one that the strength line of the shelf gives.',
  why: 'The maker’s times and claims of lift hold for the strengths it names, and for no other.',
  source: { kind: 'shelf', cites: 'the strength line of what is mixed' },
  check: ({ bowls }, { journal: { shelf } }) => bowls.flatMap((bowl) => foundIn(bowl, shelf)),
  bad: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
      strength to 6%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 60 dev-9
                       ^^^^^^^^`,
  good: `
    product dev-9 "Cream developer" developer 9%
    product clay "Peregrine clay" lightener
      strength to 9%
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay + 60 dev-9`,
});
