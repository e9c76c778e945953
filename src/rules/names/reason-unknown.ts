import { namesIn } from '../../journal/named.ts';
import type { Stood } from '../../journal/source.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { Client, Visit } from '../../records/schema/entry.ts';
import { nearMend, nearRules } from '../problems.ts';
import { defineRule, type Found } from '../rule.ts';
import { RULE_NAMES } from '../rule-names.ts';

const KNOWN: ReadonlySet<string> = new Set(RULE_NAMES);

const addUnknown = (stood: Stood<Client> | Stood<Visit>, all: Found[]): void => {
  for (const { name, line, at } of namesIn(stood.entry, 'rule')) {
    if (KNOWN.has(name)) continue;
    const near = nearRules(name);
    const place = placeOf(stood, { line }, at);
    all.push({
      place,
      message: `\`${name}\` is no rule, so the line explains nothing.`,
      todo:
        near.length === 0
          ? 'Write the rule’s name as a finding shows it; `bowlbook why` lists them.'
          : `Write \`${near.join('` or `')}\`.`,
      ...nearMend(place, near),
    });
  }
};

export default defineRule({
  name: 'reason-unknown',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'client',
  what: 'A `because` line names a rule that does not exist.',
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
      because ratio-of-mix "always mixed runny"
              ^^^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
      because ratio-off-mix "always mixed runny"`,
});
