import { placeOf } from '../../reckon/cite.ts';
import { BECOMES, type RulePolicy, rulePolicies } from '../policy.ts';
import { policyDoubt } from '../policy-lines.ts';
import { nearMend, nearRules } from '../problems.ts';
import { defineRule, type Found } from '../rule.ts';
import { RULE_NAMES } from '../rule-names.ts';

const KNOWN: ReadonlySet<string> = new Set(RULE_NAMES);
const WORDS: ReadonlySet<string> = new Set(BECOMES);
const SHAPE =
  'Write `policy rule charge-missing off "the till has it"`: the rule, then `mind`, `fix` or `off`, then why.';

type Unclear = Omit<Found, 'place'> & { readonly at?: number };

const unclear = ({ policy, rule, becomes }: RulePolicy): Unclear | undefined => {
  if (rule === undefined)
    return { at: policy.topic.at, message: 'The line names no rule, so it changes nothing.', todo: SHAPE };
  if (!KNOWN.has(rule.word)) {
    const near = nearRules(rule.word);
    return {
      at: rule.at,
      message: `\`${rule.word}\` is no rule, so the line changes nothing.`,
      todo:
        near.length === 0
          ? 'Write the rule’s name as a finding shows it; `bowlbook why` lists them.'
          : `Write \`${near.join('` or `')}\`.`,
    };
  }
  if (becomes === undefined || !WORDS.has(becomes.word))
    return {
      at: becomes?.at ?? rule.at,
      message: `The line does not say what \`${rule.word}\` becomes, so it changes nothing.`,
      todo: SHAPE,
    };
  const [, , more] = policy.words;
  const figures = policy.numbers.length + policy.durations.length;
  if (more !== undefined || figures > 0)
    return {
      at: more?.at ?? rule.at,
      message: 'The line says more than the rule, what it becomes and why.',
      todo: SHAPE,
    };
  if (policy.says === undefined)
    return { at: rule.at, message: `The line gives no reason, so \`${rule.word}\` stays as it is.`, todo: SHAPE };
  return undefined;
};

export default defineRule({
  name: 'policy-unclear',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'shelf',
  what: 'A `policy` line, or a part of it, sets nothing: no known policy, no length, no rule, or no reason.',
  why: 'The line changes nothing, and whoever wrote it believes that it does.',
  source: { kind: 'notation' },
  *check({ salons }) {
    for (const salon of salons.values()) {
      for (const policy of salon.policies) {
        const doubt = policyDoubt(policy);
        if (salon.stood === undefined || doubt === undefined) continue;
        const { at, ...said } = doubt;
        yield { place: placeOf(salon.stood, policy, at), ...said };
      }
      for (const line of rulePolicies(salon)) {
        const found = unclear(line);
        if (salon.stood === undefined || found === undefined) continue;
        const { at, ...said } = found;
        const place = placeOf(salon.stood, line.policy, at);
        const near = line.rule === undefined || KNOWN.has(line.rule.word) ? [] : nearRules(line.rule.word);
        yield { place, ...said, ...nearMend(place, near) };
      }
    }
  },
  bad: `
    salon harbour "Harbour Row"
      policy rule charge-mising off "the till has it"
                  ^^^^^^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      policy rule charge-missing off "the till has it"`,
});
