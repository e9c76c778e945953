import type { BowlProblem } from '../model.ts';
import { listed } from '../say.ts';
import type { BowlPlan } from './plan.ts';

/** Bowls that are made out of themselves. Each holds nothing; the finding stands on one of them. */
export type Circled = Map<BowlPlan, BowlProblem | undefined>;

const comparePlans = (a: BowlPlan, b: BowlPlan): number =>
  a.place.file === b.place.file ? a.place.line - b.place.line : a.place.file < b.place.file ? -1 : 1;

const circleProblem = (last: BowlPlan, others: readonly BowlPlan[]): BowlProblem => ({
  kind: 'again-circle',
  place: last.place,
  message:
    others.length === 0
      ? `Bowl ${last.name} is made out of itself.`
      : `Bowl ${last.name} is made out of ${listed(others.map(({ name }) => `bowl ${name}`))}, and that out of bowl ${last.name}.`,
  todo: others.length === 0 ? 'Write what is in it, or which bowl it comes out of.' : 'Write what is in one of them.',
  also: others.map(({ place, name }) => ({ place, says: `bowl ${name}` })),
});

/**
 * Marks every bowl of a round as circled. The finding goes to the one that stands last in the notes, whichever of them
 * was asked for first.
 */
export const markCircle = (round: readonly BowlPlan[], circled: Circled): void => {
  const inOrder = [...round].sort(comparePlans);
  const last = inOrder.pop();
  for (const plan of inOrder) if (!circled.has(plan)) circled.set(plan, undefined);
  if (last !== undefined && !circled.has(last)) circled.set(last, circleProblem(last, inOrder));
};
