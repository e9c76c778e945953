import type { Finding } from '../text/finding.ts';
import { caution } from '../trade/cautions.ts';
import { RULES } from './all.ts';
import { exampleLines } from './example.ts';
import { FAMILIES, type Family, type Rule, type RuleSource } from './rule.ts';

const SAYS: Readonly<Record<Family, string>> = {
  reading: 'while a line is read',
  typing: 'slips of the hand',
  names: 'names and places',
  mix: 'what is in a bowl',
  strength: 'peroxide strength',
  time: 'times and the clock',
  lift: 'how far hair is lightened',
  grey: 'how grey is covered',
  tone: 'what a tone does where it goes',
  result: 'what came of it',
  overlap: 'what goes over hair that was lightened',
  condition: 'what the hair can bear',
  interval: 'days between services',
  dose: 'what goes into a bowl besides',
  testing: 'tests and reactions',
  cautions: 'what is held back from a client',
  age: 'how old a client is',
  placement: 'where a bowl goes',
  order: 'the order of the work',
  shelf: 'lots, dates and prices',
  promise: 'what was said of the next visit',
  money: 'charges and shares',
};

const SEVERITY_SAYS = {
  stop: 'someone could be hurt, or a number is impossible',
  fix: 'the note contradicts itself or lacks what it needs',
  mind: 'worth a thought',
} as const;

const sourceText = (source: RuleSource): string => {
  switch (source.kind) {
    case 'published':
      return `${source.cites}.`;
    case 'common practice':
      return 'common practice, no source.';
    case 'from memory':
      return 'from memory, not looked up.';
    case 'shelf':
      return `your own shelf: ${source.cites}.`;
    case 'policy':
      return `your salon’s own policy: ${source.cites}.`;
    case 'notation':
      return 'the notation itself.';
  }
};

const fenced = (lines: readonly string[]): string => ['```', ...lines, '```'].join('\n');

/** What a finding says, a line a part. */
const said = ({ message, expected, todo }: Finding): string =>
  [message, expected, todo].filter((part) => part !== undefined).join('  \n');

/** How the rule is explained away once, and what then still shows. */
const allowing = (rule: Rule): string => {
  const line = fenced([`because ${rule.name} "the reason"`]);
  const under =
    rule.over === 'shelf' || rule.over === 'reading'
      ? 'It is mended rather than explained. Where it stands under a visit or a client, this line there explains it:'
      : 'This line under the visit explains it there; under the client it explains it for every visit:';
  const shows =
    rule.severity === 'stop'
      ? 'A `stop` is never hidden: it stays in the list and on the card, with the reason.'
      : 'The reason shows on the card.';
  return `${under}\n\n${line}\n\n${shows}`;
};

/** How a salon makes the rule graver or milder, or turns it off. */
const tuning = ({ name, severity }: Rule): string => {
  if (severity === 'stop') return 'A `stop` is neither lowered nor turned off for a whole salon.';
  const line = `policy rule ${name} ${severity === 'mind' ? 'fix' : 'mind'} "the reason"`;
  return `A line under the salon, such as \`${line}\`, makes it a \`mind\` or a \`fix\`, or turns it \`off\`.`;
};

const BY_NAME: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.name, rule]));

/** The rule of a name; undefined when there is none. */
export const ruleNamed = (name: string): Rule | undefined => BY_NAME.get(name);

/**
 * One rule as Markdown: what fires it, why, its source, an example with the marked characters, the same put right, how
 * to give a reason for it. `example` is the finding of its bad example, where the caller has compiled it.
 */
export const explainRule = (rule: Rule, example?: Finding): string =>
  [
    `# ${rule.name}`,
    `\`${rule.severity}\`: ${SEVERITY_SAYS[rule.severity]}. Family: ${rule.family} (${SAYS[rule.family]}).`,
    rule.what,
    rule.why,
    `Source: ${sourceText(rule.source)}`,
    ...(rule.caution === undefined ? [] : [`Caution: ${caution(rule.caution)}`]),
    '## A note that fires it',
    fenced(exampleLines(rule.bad)),
    ...(example === undefined ? [] : [said(example)]),
    '## The same, put right',
    fenced(exampleLines(rule.good)),
    '## Explaining it once',
    allowing(rule),
    '## In your salon',
    tuning(rule),
  ].join('\n\n');

/** Every rule by family, in the order the families are named: one line a rule, name, severity, what fires it. */
export const ruleList = (): string =>
  FAMILIES.flatMap((family) => {
    const own = RULES.filter((rule) => rule.family === family);
    const lines = own.map((rule) => `- \`${rule.name}\` (${rule.severity}) ${rule.what}`);
    return [`## ${family}: ${SAYS[family]}`, lines.join('\n')];
  }).join('\n\n');
