import type { SalonSettings } from '../journal/salon.ts';
import type { Policy } from '../records/schema/shelf.ts';
import type { Word } from '../records/schema/values.ts';
import type { UnplacedFinding } from '../text/finding.ts';

/** What a salon's `policy rule` line can make of a rule. */
export const BECOMES = ['mind', 'fix', 'off'] as const;

export type Becomes = (typeof BECOMES)[number];

/** A `policy rule NAME mind|fix|off "why"` line, as far as it could be read. */
export type RulePolicy = {
  readonly policy: Policy;
  readonly rule: Word | undefined;
  readonly becomes: Word | undefined;
};

/** The lines of a salon that tune a rule. */
export const rulePolicies = ({ policies }: SalonSettings): RulePolicy[] =>
  policies
    .filter(({ topic }) => topic.name === 'rule')
    .map((policy) => ({ policy, rule: policy.words[0], becomes: policy.words[1] }));

const isBecomes = (word: string | undefined): word is Becomes =>
  (BECOMES as readonly (string | undefined)[]).includes(word);

type Tuned = { readonly becomes: Becomes; readonly why: string };

// Asked for every finding of the salon.
const known = new WeakMap<SalonSettings, ReadonlyMap<string, Tuned>>();

const tunedBy = (salon: SalonSettings): ReadonlyMap<string, Tuned> => {
  const found = known.get(salon);
  if (found !== undefined) return found;
  const tuned = new Map<string, Tuned>();
  // As with `because`, a line without a reason changes nothing.
  for (const { policy, rule, becomes } of rulePolicies(salon))
    if (rule !== undefined && isBecomes(becomes?.word) && policy.says !== undefined)
      tuned.set(rule.word, { becomes: becomes.word, why: policy.says.text });
  known.set(salon, tuned);
  return tuned;
};

/**
 * A finding as the salon's own policy has it: graver, milder, or explained by the policy's reason where the rule is off,
 * so that it is still listed among what is answered. A `stop` stays as it is, whatever the policy says.
 */
export const tuned = (finding: UnplacedFinding, salon: SalonSettings): UnplacedFinding => {
  const own = finding.severity === 'stop' ? undefined : tunedBy(salon).get(finding.rule);
  if (own === undefined) return finding;
  if (own.becomes !== 'off') return { ...finding, severity: own.becomes };
  return finding.reason === undefined ? { ...finding, reason: own.why } : finding;
};
