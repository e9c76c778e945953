import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { citeLine, placeOf } from '../../reckon/cite.ts';
import type { BowlReckoned, Portion, VisitReckoned } from '../../reckon/model.ts';
import { figure, grams } from '../../reckon/say.ts';
import { add, compare, div, type Exact, exact, exactOf, mul, neg, toNumber } from '../../text/exact.ts';
import { sentence } from '../../text/sentence.ts';
import { MEANT } from '../reason-words.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** What the dose line allows for the base of a bowl, widened by half a step of the scales. */
const rangeFor = (
  base: Exact,
  { low, high, per }: { readonly low: number; readonly high: number; readonly per: number },
): { readonly least: Exact; readonly most: Exact } => {
  const [a, b] = [low, high].map((each) => div(mul(base, exactOf(each)), exactOf(per)));
  return { least: a as Exact, most: b as Exact };
};

const isAdditive = ({ item }: Portion): boolean => item?.kind === 'additive';

const hasAdditive = ({ held }: BowlReckoned): boolean => held.some(isAdditive);

const foundIn = (visit: VisitReckoned, bowl: BowlReckoned, portion: Portion): Found | undefined => {
  const { item, weight, place } = portion;
  const { base } = bowl;
  if (item?.kind !== 'additive' || item.dose === undefined || weight === undefined || base === undefined)
    return undefined;
  if (item.dose.per <= 0 || item.inRatio) return undefined;
  const { least, most } = rangeFor(base, item.dose);
  const isWeighed = (bowl.weighed?.parts.length ?? 0) > 0;
  // What was poured is a gram beside what was meant; what was meant is only rounded.
  const slack = isWeighed ? visit.salon.scale : div(visit.salon.scale, exact(2));
  const [tooLittle, tooMuch] = [compare(weight, add(least, neg(slack))) < 0, compare(weight, add(most, slack)) > 0];
  if (!tooLittle && !tooMuch) return undefined;
  const { low, high, per } = item.dose;
  const takes = compare(least, most) === 0 ? grams(least) : `${grams(least)} to ${grams(most)}`;
  // A `dose` line that would take what was weighed.
  const weighed = toNumber(div(mul(weight, exactOf(per)), base));
  const loose = `${figure(exactOf(Math.min(low, Math.floor(weighed * 2) / 2)))}-${figure(exactOf(Math.max(high, Math.ceil(weighed * 2) / 2)))}`;
  const dose = low === high ? `${low}` : `${low} to ${high}`;
  return {
    place,
    message: `Bowl ${bowl.name} has ${grams(weight)} ${item.name} to ${grams(base)} of base.`,
    expected: sentence`${item.full} takes ${dose} per ${per}, here ${takes} (${citeLine(item, item.dose)}).`,
    todo: `Write ${takes}, or why it was more or less: \`because additive-dose "…"\`; where the leaflet rounds, the range it gives, once: \`dose ${loose} per ${per}\`.`,
    figures: {
      hasGrams: toNumber(weight),
      leastGrams: toNumber(least),
      mostGrams: toNumber(most),
      baseGrams: toNumber(base),
    },
    label: tooMuch ? `over ${grams(most)}` : `under ${grams(least)}`,
    also: [{ place: placeOf(item.stood, item.dose), says: 'its dose line' }],
  };
};

function* found(visit: VisitReckoned): Generator<Found> {
  for (const bowl of bowlsPutOn(visit)) {
    // A bowl made again is as the first one was, if it was not weighed anew.
    if (bowl.again !== undefined && bowl.weighed === undefined) continue;
    for (const portion of bowl.held) {
      const one = foundIn(visit, bowl, portion);
      if (one !== undefined) yield one;
    }
  }
}

export default defineRule({
  name: 'additive-dose',
  family: 'dose',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'An additive is outside what its `dose` line gives for the base of the bowl.',
  why: 'Too little of it does nothing, and too much thins the mix and slows it.',
  source: { kind: 'shelf', cites: 'the dose line of the additive (`dose 1-2 per 10`)' },
  accepts: MEANT,
  check: (visit) => (visit.bowls.some(hasAdditive) ? found(visit) : NONE),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    product bond "Mender" additive
      dose 1-2 per 10
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6 + 15 bond
                                  ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    product bond "Mender" additive
      dose 1-2 per 10
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6 + 8 bond`,
});
