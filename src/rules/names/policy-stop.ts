import { placeOf } from '../../reckon/cite.ts';
import { rulePolicies } from '../policy.ts';
import { defineRule } from '../rule.ts';
import { STOP_RULES } from '../rule-names.ts';

const STOPS: ReadonlySet<string> = new Set(STOP_RULES);

export default defineRule({
  name: 'policy-stop',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'shelf',
  what: 'A `policy rule` line would lower or turn off a rule whose findings stop the work.',
  why: 'Where someone could be hurt the finding stands for every client; it is explained on one entry, by `because`.',
  source: { kind: 'notation' },
  *check({ salons }) {
    for (const salon of salons.values()) {
      for (const { policy, rule } of rulePolicies(salon)) {
        if (salon.stood === undefined || rule === undefined || !STOPS.has(rule.word)) continue;
        yield {
          place: placeOf(salon.stood, policy, rule.at),
          message: `\`${rule.word}\` is a stop, and a policy cannot lower it; the line changes nothing.`,
          todo: `Take the line out; on one entry write \`because ${rule.word} "the reason"\`.`,
        };
      }
    }
  },
  bad: `
    salon harbour "Harbour Row"
      policy rule broken-hold off "we talk it over first"
                  ^^^^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      policy rule charge-missing off "the till has it"`,
});
