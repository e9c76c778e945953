import type { Journal } from '../../journal/journal.ts';
import { namesIn } from '../../journal/named.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { nearNames } from '../../text/near.ts';
import { nearMend } from '../problems.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

function* found({ visit }: VisitReckoned, stylists: Journal['stylists']): Generator<Found> {
  const named = namesIn(visit.entry, 'stylist');
  const hands = new Set(named.flatMap(({ name, path }) => (path[0] === 'by' ? [name] : [])));
  for (const { name, line, at } of named) {
    // A name that also stands as a hand is found there.
    if (stylists.has(name) || hands.has(name)) continue;
    const near = nearNames(name, stylists.keys());
    const place = placeOf(visit, { line }, at);
    const entry = `an entry \`stylist ${name}\``;
    yield {
      place,
      message: `No stylist of the journal is named \`${name}\`.`,
      todo: near.length === 0 ? `Write ${entry}.` : `Write \`${near.join('` or `')}\`, or ${entry}.`,
      ...nearMend(place, near),
    };
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
  check: (visit, { journal: { stylists } }) =>
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
