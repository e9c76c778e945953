import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { grams } from '../../reckon/say.ts';
import { isColour, zonesOfBowl } from '../../reckon/services.ts';
import { toNumber } from '../../text/exact.ts';
import { bowlsPutOn, wentOn } from '../applied.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

/** Grams of one mix that no head takes, and of colour that does not go round one: common practice, no source, generous. */
const [MOST, LEAST] = [400, 5];

/** Places that take more than a few grams: the whole head, or all of its roots. */
const WHOLE: ReadonlySet<string> = new Set(['roots', 'all', 'full-head']);

const isWhole = (zone: string): boolean => zone.split(' ').every((word) => WHOLE.has(word));

/** Whether a bowl is the only colour for the whole head or all the roots: a few grams beside another bowl are a touch. */
const isAlone = (visit: VisitReckoned, bowl: BowlReckoned): boolean =>
  zonesOfBowl(visit, bowl.name).some(isWhole) && bowlsPutOn(visit).filter(isColour).length === 1;

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned): Found | undefined => {
  const { base, mixed, name, place } = bowl;
  const todo = 'Write the grams as they were weighed; if they stand, why: `because amount-unlikely "…"`.';
  const much = mixed !== undefined && toNumber(mixed) >= MOST;
  const little = base !== undefined && toNumber(base) > 0 && toNumber(base) <= LEAST;
  if ((!much && !little) || !wentOn(bowl) || !isColour(bowl)) return undefined;
  if (much)
    return {
      place,
      message: `Bowl ${name} is ${grams(mixed)}.`,
      expected: `One head takes less than ${MOST} g of a mix (common practice, a generous bound).`,
      todo,
      label: 'perhaps a nought too many',
    };
  if (little && isAlone(visit, bowl))
    return {
      place,
      message: `Bowl ${name} has ${grams(base)} of colour for ${zonesOfBowl(visit, name).find(isWhole)}.`,
      expected: `Roots or a whole head take more than ${LEAST} g of colour (common practice, a generous bound).`,
      todo,
      label: 'perhaps a nought too few',
    };
  return undefined;
};

export default defineRule({
  name: 'amount-unlikely',
  family: 'dose',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'A bowl of colour is 400 g or more, or 5 g of colour or less are all there is for the roots or the whole head.',
  why: 'A slipped nought goes into the stock, the cost and the next bowl made from this one.',
  source: { kind: 'common practice' },
  check: (visit) => foundEach(visit.bowls, (bowl) => foundIn(visit, bowl)),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 400 clay + 80 dev-6
           ^^^^^^^^^^^^^^^^^^^^^
      place A top`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      place A top`,
});
