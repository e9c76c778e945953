import { placeOf } from '../../reckon/cite.ts';
import { defineRule } from '../rule.ts';
import { RULE_NAMES } from '../rule-names.ts';

const KNOWN: ReadonlySet<string> = new Set(RULE_NAMES);

export default defineRule({
  name: 'reason-unused',
  family: 'names',
  severity: 'mind',
  bears: 'never',
  over: 'findings',
  what: 'A `because` line under a visit explains a rule that finds nothing there.',
  why: 'Left standing it would explain away the next slip in this visit, which nobody has looked at.',
  source: { kind: 'notation' },
  *check(client, found) {
    for (const visit of client.visits) {
      for (const fact of visit.entry.facts) {
        if (fact.word !== 'because' || fact.says === undefined || !KNOWN.has(fact.rule.name)) continue;
        const explains = found.some(({ rule, place }) => rule === fact.rule.name && place.in === visit);
        if (explains) continue;
        yield {
          place: placeOf(visit, fact, fact.rule.at),
          message: `\`${fact.rule.name}\` finds nothing in this visit, so the line explains nothing.`,
          todo: 'Take the line out; what it says of the work stands as well in a `note`.',
        };
      }
    }
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      because said-twice "cut twice on purpose"
              ^^^^^^^^^^
      charge cut 42`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      note cut twice on purpose
      charge cut 42`,
});
