import type { Journal } from '../../journal/journal.ts';
import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { nearNames } from '../../text/near.ts';
import { nearMend } from '../problems.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

function* found(visit: VisitReckoned['visit'], stylists: Journal['stylists']): Generator<Found> {
  const hands = new Set([visit.entry.by, ...visit.entry.facts.map(({ by }) => by)].map((by) => by?.name));
  for (const fact of factsOf(visit, 'split')) {
    for (const { by } of fact.shares) {
      // A name that also stands as a hand is found there.
      if (stylists.has(by.name) || hands.has(by.name)) continue;
      const near = nearNames(by.name, stylists.keys());
      const place = placeOf(visit, fact, by.at);
      const entry = `an entry \`stylist ${by.name}\``;
      yield {
        place,
        message: `No stylist of the journal is named \`${by.name}\`.`,
        todo: near.length === 0 ? `Write ${entry}.` : `Write \`${near.join('` or `')}\`, or ${entry}.`,
        ...nearMend(place, near),
      };
    }
  }
}

export default defineRule({
  name: 'split-unknown-stylist',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['split'] },
  what: 'A `split` line gives a share to someone whom no stylist entry describes.',
  why: 'That share of the money is added up for nobody.',
  source: { kind: 'notation' },
  check: ({ visit }, { journal: { stylists } }) =>
    // Where no stylist is described there is nothing that the name could be a slip of.
    stylists.size === 0 ? NONE : found(visit, stylists),
  bad: `
    stylist io "Io"
    stylist nia "Nia"
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      split io 50%, nai 50%
                    ^^^`,
  good: `
    stylist io "Io"
    stylist nia "Nia"
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      split io 50%, nia 50%`,
});
