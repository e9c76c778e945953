import { skinTestTerms } from '../journal/salon.ts';
import type { Policy } from '../records/schema/shelf.ts';
import type { Word } from '../records/schema/values.ts';
import type { Severity } from '../text/finding.ts';
import { nearNames } from '../text/near.ts';
import { isKind, KINDS } from '../trade/kinds.ts';
import { LAW } from '../trade/law.ts';

/** What of a salon's `policy` line sets nothing, so that whoever wrote it would believe that it does. */
export type PolicyDoubt = {
  readonly at: number;
  readonly message: string;
  readonly todo: string;
  readonly severity?: Severity;
};

/** How each policy is written. */
const SHAPES: Readonly<Record<string, string>> = {
  law: 'Write it as in `policy law eu`.',
  'skin-test': 'Write it as in `policy skin-test 48h every 26w`, or `policy skin-test void after reaction`.',
  under: 'Write it as in `policy under 16 temporary only`.',
  ml: 'Write `policy ml as g`.',
  rule: 'Write it as in `policy rule charge-missing off "the till has it"`.',
};

const quoted = (names: readonly string[]): string => names.map((name) => `\`${name}\``).join(' or ');

/** The first word that is none of those a policy knows; nothing where all are. */
const strange = ({ words }: Policy, known: (word: string) => boolean, shape: string): PolicyDoubt | undefined => {
  const word = words.find((one) => !known(one.word));
  return word && { at: word.at, message: `\`${word.word}\` sets nothing in this policy.`, todo: shape };
};

const lawDoubt = ({ topic, words, numbers, durations }: Policy, shape: string): PolicyDoubt | undefined => {
  const laws = Object.keys(LAW);
  const [law, second] = words;
  if (law === undefined) return { at: topic.at, message: 'The line names no law.', todo: shape };
  if (!laws.includes(law.word))
    return {
      at: law.at,
      message: `\`${law.word}\` is no law whose limits are known here; those of the EU are quoted.`,
      todo: `Write ${quoted(laws)}.`,
      // The limits of another law may be the same ones.
      severity: 'mind',
    };
  const more = second ?? (numbers.length + durations.length > 0 ? topic : undefined);
  return more && { at: more.at, message: 'What stands beside the law sets nothing.', todo: shape };
};

const VOID = ['void', 'after', 'reaction'] as const;

/** Words of a skin test's terms; `before` and `hold` say in plain words what the lengths are. */
const TERM_WORDS: ReadonlySet<string> = new Set([
  ...['every', 'from', 'read', 'reading', 'made', 'test', 'the', 'and', 'then', 'before'],
]);

const skinTestDoubt = (policy: Policy, shape: string): PolicyDoubt | undefined => {
  const { topic, words, numbers, durations } = policy;
  const has = (word: string): boolean => words.some((one) => one.word === word);
  if (has('void')) {
    const missing = VOID.filter((word) => !has(word));
    if (missing.length > 0)
      return { at: topic.at, message: 'The line does not say after what a test is void.', todo: shape };
    if (durations.length > 0 || numbers.length > 0)
      return { at: topic.at, message: 'A length beside `void after reaction` is not counted on.', todo: shape };
    return strange(policy, (word) => (VOID as readonly string[]).includes(word), shape);
  }
  if (numbers.length > 0 || durations.length === 0)
    return { at: topic.at, message: 'The line gives no length of time, so it sets nothing.', todo: shape };
  const { lead, every, from } = skinTestTerms(policy);
  const unused = durations.find((one) => one !== lead && one !== every);
  if (unused !== undefined)
    return {
      at: unused.at,
      message: 'One of the lengths sets neither the time before the colour nor how long a test holds.',
      todo: 'Write `every` before how long a test holds, as in `policy skin-test 48h every 26w`.',
    };
  const word = words.find((one) => one.word === 'from');
  if (word !== undefined && (from === undefined || every === undefined))
    return {
      at: word.at,
      message: 'The line does not say from when a test holds.',
      todo: 'Write `every 26w from read`, or leave `from` out: then it counts from the day it was made.',
    };
  return strange(policy, (one) => TERM_WORDS.has(one), shape);
};

const underDoubt = (policy: Policy, shape: string): PolicyDoubt | undefined => {
  const { topic, words, numbers, durations } = policy;
  if (numbers.length !== 1 || durations.length > 0)
    return { at: topic.at, message: 'The line does not give one age.', todo: shape };
  const kinds = words.filter(({ word }) => isKind(word));
  if (kinds.length === 0)
    return { at: topic.at, message: 'The line names no kind that may be used below that age.', todo: shape };
  const isFiller = (word: string): boolean => isKind(word) || ['only', 'and', 'or'].includes(word);
  const slip: Word | undefined = words.find(({ word }) => !isFiller(word));
  if (slip === undefined) return undefined;
  const near = nearNames(slip.word, KINDS);
  return {
    at: slip.at,
    message: `\`${slip.word}\` is no kind of product.`,
    todo: near.length > 0 ? `Write ${quoted(near)}.` : shape,
  };
};

const mlDoubt = ({ topic, words, numbers, durations }: Policy, shape: string): PolicyDoubt | undefined =>
  words.map(({ word }) => word).join(' ') === 'as g' && numbers.length + durations.length === 0
    ? undefined
    : { at: topic.at, message: 'The line does not say what a millilitre weighs.', todo: shape };

/** What a `policy` line sets nothing by; undefined where each of its words reaches a rule. `rule` lines have their own. */
export const policyDoubt = (policy: Policy): PolicyDoubt | undefined => {
  const { topic } = policy;
  const shape = SHAPES[topic.name];
  switch (topic.name) {
    case 'law':
      return lawDoubt(policy, shape ?? '');
    case 'skin-test':
      return skinTestDoubt(policy, shape ?? '');
    case 'under':
      return underDoubt(policy, shape ?? '');
    case 'ml':
      return mlDoubt(policy, shape ?? '');
    case 'rule':
      return undefined;
    default: {
      const near = nearNames(topic.name, Object.keys(SHAPES));
      return {
        at: topic.at,
        message: `\`${topic.name}\` is no policy that is known here, so the line sets nothing.`,
        todo:
          near[0] === undefined
            ? `Policies are ${Object.keys(SHAPES)
                .map((name) => `\`${name}\``)
                .join(', ')}; put anything else in a \`note\`.`
            : (SHAPES[near[0]] ?? ''),
      };
    }
  }
};
