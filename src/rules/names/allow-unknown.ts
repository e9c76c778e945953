import type { Stood } from '../../journal/source.ts';
import type { Client, Visit } from '../../records/schema/entry.ts';
import { nearNames } from '../../text/near.ts';
import { placeOf } from '../cite.ts';
import { nearMend } from '../problems.ts';
import { defineRule, type Found } from '../rule.ts';
import { RULE_NAMES } from '../rule-names.ts';

const KNOWN: ReadonlySet<string> = new Set(RULE_NAMES);

const addUnknown = (stood: Stood<Client> | Stood<Visit>, all: Found[]): void => {
  for (const fact of stood.entry.facts) {
    if (fact.word !== 'allow' || KNOWN.has(fact.rule.name)) continue;
    const near = nearNames(fact.rule.name, RULE_NAMES);
    const place = placeOf(stood, fact, fact.rule.at);
    all.push({
      place,
      message: `\`${fact.rule.name}\` is no rule, so the line allows nothing.`,
      todo:
        near.length === 0
          ? 'Write the rule’s name as a finding shows it; `explain` lists them.'
          : `Write \`${near.join('` or `')}\`.`,
      ...nearMend(place, near),
    });
  }
};

export default defineRule({
  name: 'allow-unknown',
  family: 'names',
  severity: 'fix',
  over: 'client',
  what: 'An `allow` line names a rule that does not exist.',
  why: 'The reason is kept, and the finding it was written for still stands.',
  source: { kind: 'notation' },
  check(client) {
    const all: Found[] = [];
    for (const stood of client.entries) addUnknown(stood, all);
    for (const stood of client.visits) addUnknown(stood, all);
    return all;
  },
  bad: `
    client wren-abbott "Wren Abbott"
      allow ratio-of-mix "always mixed runny"
            ^^^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      allow ratio-off-mix "always mixed runny"`,
});
