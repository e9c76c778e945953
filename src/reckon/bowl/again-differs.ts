import { add, compare, type Exact, equal, isZero, mul, ONE, sub, ZERO } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import type { BowlProblem } from '../model.ts';
import { figure, grams } from '../say.ts';
import type { Earlier } from './again.ts';
import type { Solved } from './bowl.ts';
import { dayOf } from './plan.ts';

/** Grams by label; undefined while a weight is not known. */
const byLabel = ({ portions }: Solved, share: Exact): Map<string, Exact> | undefined => {
  const found = new Map<string, Exact>();
  for (const { label, weight } of portions) {
    if (weight === undefined) return undefined;
    found.set(label, add(found.get(label) ?? ZERO, mul(weight, share)));
  }
  return found;
};

/** Where a bowl differs from the earlier one that the note says it repeats, by more than a step of the scales. */
export const differsFrom = (
  own: Solved,
  source: Solved,
  earlier: Earlier,
  place: Place,
  step: Exact,
): BowlProblem | undefined => {
  const now = byLabel(own, ONE);
  const then = byLabel(source, earlier.share);
  if (now === undefined || then === undefined) return undefined;
  for (const label of new Set([...now.keys(), ...then.keys()])) {
    const [here, there] = [now.get(label) ?? ZERO, then.get(label) ?? ZERO];
    const gap = compare(here, there) > 0 ? sub(here, there) : sub(there, here);
    if (compare(gap, step) <= 0) continue;
    const share = equal(earlier.share, ONE) ? '' : ` at ${figure(mul(earlier.share, { n: 100, d: 1 }))} %`;
    const date = dayOf(earlier.visit);
    return {
      kind: 'again-differs',
      place,
      message: `Bowl ${own.name} has ${isZero(here) ? 'no' : grams(here)} ${label}, and bowl ${earlier.bowl} of ${date}${share} has ${isZero(there) ? 'none' : grams(there)}.`,
      todo: 'Take the `again` line out, or put the amount right that is wrong.',
      also: [
        { place: own.place, says: 'mixed here' },
        { place: source.place, says: 'mixed then' },
      ],
    };
  }
  return undefined;
};
