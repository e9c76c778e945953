import { compare, div, type Exact, exact, exactOf, isZero, mul, sub } from '../../text/exact.ts';
import type { BowlProblem } from '../model.ts';
import { figure, grams, listed, ratioText } from '../say.ts';
import type { BowlSaid, Part, RatioSaid } from './part.ts';
import type { Breach } from './weights.ts';

const apartOf = (a: Exact, b: Exact): Exact => (compare(a, b) < 0 ? sub(b, a) : sub(a, b));

const TENTH = exact(1, 10);

/** Whether two figures are apart by less than the scales can show or, where one is hedged, by no more than a tenth. */
export const isNear = (a: Exact, b: Exact, step: Exact, about: boolean): boolean => {
  const apart = apartOf(a, b);
  if (compare(apart, step) < 0) return true;
  return about && compare(apart, mul(compare(a, b) > 0 ? a : b, TENTH)) <= 0;
};

/** Whether a breach is too small for the scales, or within what a hedge allows. */
export const isSlight = (breach: Breach, parts: readonly Part[], step: Exact): boolean => {
  if (breach.kind === 'below-nought') return false;
  if (breach.kind === 'total') {
    const { sum, total } = breach;
    return sum !== undefined && isNear(sum, total.value, step, total.about || parts.some(({ about }) => about));
  }
  const { ratio, base, weight, on, bases, inParts } = breach;
  if (inParts || base === undefined || weight === undefined) return false;
  return isNear(weight, mul(ratio.value, base), step, ratio.about || [...on, ...bases].some(({ about }) => about));
};

/** A ratio as a message names it: `1:1.5`. */
export const ratioSays = ({ typed }: RatioSaid): string =>
  `${figure(exactOf(typed.colour))}:${figure(exactOf(typed.developer))}`;

const labelsOf = (parts: readonly Part[]): string => listed(parts.map(({ label }) => label));

/** The two facts of a bowl that cannot both hold, and by how much. */
export const breachProblem = (said: BowlSaid, breach: Breach): BowlProblem => {
  const name = `Bowl ${said.name}`;
  const kind = 'disagree';
  const rest = { place: said.place, says: 'the other figures' };
  if (breach.kind === 'total') {
    const { total, sum } = breach;
    const room =
      sum === undefined
        ? 'its other figures leave no room for that'
        : `its parts come to ${grams(sum)}: ${grams(apartOf(total.value, sum))} apart`;
    return {
      kind,
      place: total.place,
      message: `${name} is ${grams(total.value)} by its total, and ${room}.`,
      todo: 'Take the total out, or put the part right that is wrong.',
      also: [rest],
    };
  }
  if (breach.kind === 'below-nought') {
    const { part, weight } = breach;
    return {
      kind,
      place: part.place,
      message: `The other figures of bowl ${said.name} leave ${isZero(weight) ? 'nothing' : grams(weight)} for ${part.label}.`,
      todo: 'Put the figure right that is wrong.',
      also: [rest],
    };
  }
  const { base, weight, ratio, on, inParts } = breach;
  const says = ratioSays(ratio);
  const [label, bases] = [labelsOf(on), labelsOf(breach.bases)];
  const problem = { kind, place: ratio.place, also: on.map(({ place }) => ({ place, says: 'this amount' })) } as const;
  if (base === undefined || weight === undefined)
    return {
      ...problem,
      message: `${name} cannot keep ${says} beside its other figures.`,
      todo: 'Take the ratio out, or put the figure right that is wrong.',
    };
  if (inParts) {
    const is = isZero(base) ? 'all developer' : ratioText(div(weight, base));
    return {
      ...problem,
      message: `${name} has ${figure(base)}p ${bases} to ${figure(weight)}p ${label}, ${is}, and the ratio says ${says}.`,
      todo: 'Take the parts of the developer out, or its ratio.',
    };
  }
  const asked = mul(ratio.value, base);
  return {
    ...problem,
    message: `${name} has ${grams(weight)} ${label}, and ${says} of ${grams(base)} ${bases} is ${grams(asked)}: ${grams(apartOf(weight, asked))} apart.`,
    todo:
      on.length === 1
        ? `Write \`${figure(asked)} ${label}\`, or take ${says} out.`
        : `Take ${says} out, or put an amount right.`,
  };
};
