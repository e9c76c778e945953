import type { Stood } from '../../journal/source.ts';
import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import type { Place } from '../../text/span.ts';
import { defineRule } from '../rule.ts';

/** The word after the header’s first. */
const NAME = /(?<=^\s*\p{L}+\s+)[^\s"]+/u;

const HEAD = { line: 0 };

export default defineRule({
  name: 'name-twice',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'journal',
  what: 'Two entries of one kind give the same name to two things.',
  why: 'Every later line that uses the name would speak of one of the two, and nobody could say of which.',
  source: { kind: 'notation' },
  *check(journal) {
    const named = (stood: Stood): Place => wordsPlace(journal, placeOf(stood, HEAD), NAME);
    for (const { kind, name, first, again } of journal.twice) {
      yield {
        place: named(again),
        message: sentence`\`${name}\` is already the name of the ${kind} at ${lineName(placeOf(first, HEAD))}; of the two, that one is reckoned with.`,
        todo: `Give one of them another name, as in \`${name}-2\`.`,
        label: 'named twice',
        also: [{ place: named(first), says: 'named here first' }],
      };
    }
  },
  bad: `
    product wash "Clarifying wash" conditioner
    product wash "Violet wash" conditioner
            ^^^^`,
  good: `
    product wash "Clarifying wash" conditioner
    product violet-wash "Violet wash" conditioner`,
});
