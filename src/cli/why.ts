import { RULE_NAMES } from '../rules/rule-names.ts';
import { explainRule, ruleList, ruleNamed } from '../rules/rule-text.ts';
import { fold } from '../text/fold.ts';
import { nearNames } from '../text/near.ts';
import { print } from './print.ts';
import { offered, refusal } from './refusal.ts';

/** Rules whose name holds the word, when no name is near. */
const holding = (word: string): string[] => RULE_NAMES.filter((name) => name.includes(word)).slice(0, 5);

/** `bowlbook why`: one rule with its why, source and examples, or all of them by family. */
export const why = async (name: string | undefined): Promise<number> => {
  if (name === undefined) {
    print(`# Rules\n\n${ruleList()}`);
    return 0;
  }
  const word = fold(name.trim());
  const rule = ruleNamed(word);
  if (rule === undefined) {
    const near = nearNames(word, RULE_NAMES);
    const offers = near.length > 0 ? near : holding(word);
    throw refusal(
      `No rule is called \`${name}\`.`,
      offers.length > 0 ? `Near names: ${offered(offers)}.` : '`bowlbook why` lists them all.',
    );
  }
  const { exampleFinding } = await import('../rules/example-finding.ts');
  print(explainRule(rule, exampleFinding(rule)));
  return 0;
};
