import type { BowlProblem } from '../model.ts';
import type { Part } from './part.ts';
import type { BowlPlan } from './plan.ts';

/** What a bowl that is made again may be made of: several times what any bowl holds. A choice of ours. */
export const MOST_THINGS = 48;

/** How many different things some parts are. */
export const thingsIn = (parts: readonly Part[]): number =>
  parts.length <= MOST_THINGS ? parts.length : new Set(parts.map(({ label, role }) => `${role}\n${label}`)).size;

/** A chain of remakes with something else on top each time is no bowl any more, and its weights are no help to anybody. */
export const tooMany = ({ name, place }: BowlPlan, things: number): BowlProblem => ({
  kind: 'again-missing',
  place,
  message: `Bowl ${name} would be made of ${things} things; one of more than ${MOST_THINGS} is not made again.`,
  todo: 'Write what is in it.',
});
