import type { BowlProblem, BowlReckoned, ClockProblem, VisitReckoned } from '../reckon/model.ts';
import { nearNames } from '../text/near.ts';
import { type Found, NONE } from './rule.ts';
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

const isUnsettled = ({ problems }: BowlReckoned): boolean => problems.length > 0;

const ofKinds = (bowls: readonly BowlReckoned[], kinds: readonly BowlProblem['kind'][]): readonly Found[] =>
  bowls
    .flatMap(({ problems }) => problems)
    .filter(({ kind }) => kinds.includes(kind))
    .map((problem) => ({
      ...toFound(problem),
      ...(problem.near && SLIPS.has(problem.kind) && nearMend(problem.place, problem.near)),
    }));

/** What the reckoning of a visit's bowls could not settle, of some kinds. */
export const bowlProblems = ({ bowls }: VisitReckoned, ...kinds: readonly BowlProblem['kind'][]): readonly Found[] =>
  // Some thirty rules ask, and nearly every visit has none.
  bowls.some(isUnsettled) ? ofKinds(bowls, kinds) : NONE;

/** What the reckoning of a visit's clock could not settle, of some kinds. */
export const clockProblems = (
  { clock: { problems } }: VisitReckoned,
  ...kinds: readonly ClockProblem['kind'][]
): readonly Found[] =>
  problems.length === 0 ? NONE : problems.filter(({ kind }) => kinds.includes(kind)).map(toFound);
