import { compareText } from '../../text/fold.ts';
import type { BowlProblem } from '../model.ts';
import { fewOf, listed } from '../say.ts';
import type { BowlPlan } from './plan.ts';
import { dayOf } from './plan.ts';

const comparePlans = (a: BowlPlan, b: BowlPlan): number =>
  compareText(a.place.in.file, b.place.in.file) ||
  compareText(dayOf(a.visit), dayOf(b.visit)) ||
  compareText(a.visit.entry.client?.name ?? '', b.visit.entry.client?.name ?? '') ||
  a.place.line - b.place.line;

const circleProblem = (last: BowlPlan, others: readonly BowlPlan[]): BowlProblem => {
  const names = fewOf(others.map(({ name }) => `bowl ${name}`));
  return {
    kind: 'again-circle',
    place: last.place,
    message:
      others.length === 0
        ? `Bowl ${last.name} is made out of itself.`
        : `Bowl ${last.name} is made out of ${listed(names)}, and that out of bowl ${last.name}.`,
    todo: others.length === 0 ? 'Write what is in it, or which bowl it comes out of.' : 'Write what is in one of them.',
    also: others.slice(0, names.length).map(({ place, name }) => ({ place, says: `bowl ${name}` })),
  };
};

/** The bowl of a round on which its finding stands, the last one in the notes, whichever was asked for first. */
export const circleOf = (round: readonly BowlPlan[]): { readonly on: BowlPlan; readonly problem: BowlProblem } => {
  const inOrder = [...round].sort(comparePlans);
  const on = inOrder.pop() as BowlPlan;
  return { on, problem: circleProblem(on, inOrder) };
};
