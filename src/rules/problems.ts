import type { BowlProblem, BowlReckoned, ClockProblem, VisitReckoned } from '../reckon/model.ts';
import { nearNames } from '../text/near.ts';
import type { Found, ProblemKind } from './rule.ts';
import { RULE_NAMES } from './rule-names.ts';

/** Rules of earlier years that are called otherwise now. */
const RENAMED: ReadonlyMap<string, string> = new Map([
  ['allow-unknown', 'reason-unknown'],
  ['allow-unused', 'reason-unused'],
]);

/** What a word in the place of a rule's name may have been meant as: its name of now, or the near ones. */
export const nearRules = (word: string): readonly string[] => {
  const now = RENAMED.get(word);
  return now === undefined ? nearNames(word, RULE_NAMES) : [now];
};

/** A name that was not known, and the nearest one in its place and wherever it is typed `again`: offered, never put in unasked. */
export const nearMend = (
  place: Found['place'],
  near: readonly string[],
  again: readonly Found['place'][] = [],
): Pick<Found, 'mend' | 'label'> => {
  const [first] = near;
  if (first === undefined) return {};
  const edits = [place, ...again].map((one) => ({ place: one, put: first }));
  return { label: `near: ${first}`, mend: { title: `write ${first}`, edits, sure: 'likely' } };
};

/** The further places of a slip that is typed more than once. */
export const alsoAt = (again: readonly Found['place'][]): Pick<Found, 'also'> =>
  again.length === 0 ? {} : { also: again.map((place) => ({ place, says: 'here too' })) };

const toFound = ({ place, message, todo, also }: BowlProblem | ClockProblem): Found => ({
  place,
  message,
  ...(todo !== undefined && { todo }),
  ...(also !== undefined && { also }),
});

/** A near name mends a slip of the hand; in the place of a strength or a bowl it would change what was mixed. */
const SLIPS: ReadonlySet<BowlProblem['kind']> = new Set(['unknown-name', 'unknown-shade']);

/** Something that the reckoning of a visit could not settle, and its kind. */
export type Problem = { readonly kind: ProblemKind; readonly found: Found };

const NO_PROBLEMS: readonly Problem[] = [];

const isUnsettled = ({ problems }: BowlReckoned): boolean => problems.length > 0;

const inBowls = (bowls: readonly BowlReckoned[]): readonly Problem[] =>
  bowls
    .flatMap(({ problems }) => problems)
    .map((problem) => ({
      kind: problem.kind,
      found: {
        ...toFound(problem),
        ...(problem.near && SLIPS.has(problem.kind) && nearMend(problem.place, problem.near)),
      },
    }));

/** What the reckoning of a visit's bowls, then of its clock, could not settle; as nearly always nothing. */
export const problemsOf = ({ bowls, clock }: VisitReckoned): readonly Problem[] => {
  const isClear = clock.problems.length === 0;
  if (isClear && !bowls.some(isUnsettled)) return NO_PROBLEMS;
  const onClock = isClear ? NO_PROBLEMS : clock.problems.map((one) => ({ kind: one.kind, found: toFound(one) }));
  return [...inBowls(bowls), ...onClock];
};
