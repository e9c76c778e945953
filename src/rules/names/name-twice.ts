import { clientTwice } from '../../journal/join.ts';
import type { SaidTwice } from '../../journal/journal.ts';
import { placeOf } from '../../reckon/cite.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import type { Place } from '../../text/span.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

const HEAD = { line: 0 };

const named = (stood: SaidTwice['again']): Place =>
  placeOf(stood, HEAD, 'name' in stood.entry ? stood.entry.name?.at : 0);

const foundOf = ({ kind, name, first, again }: SaidTwice): Found => ({
  place: named(again),
  message: sentence`\`${name}\` is already the name of the ${kind} at ${lineName(placeOf(first, HEAD))}; of the two, that one is reckoned with.`,
  todo: `Give one of them another name, as in \`${name}-2\`.`,
  label: 'named twice',
  also: [{ place: named(first), says: 'named here first' }],
});

export default defineRule({
  name: 'name-twice',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'shelf and clients',
  what: 'Two entries of one kind give the same name to two things.',
  why: 'Every later line that uses the name would speak of one of the two, and nobody could say of which.',
  source: { kind: 'notation' },
  shared: ({ twice }) => twice.map(foundOf),
  check: (client) => (client.entries.length < 2 ? NONE : clientTwice(client).map(foundOf)),
  bad: `
    product wash "Clarifying wash" conditioner
    product wash "Violet wash" conditioner
            ^^^^`,
  good: `
    product wash "Clarifying wash" conditioner
    product violet-wash "Violet wash" conditioner`,
});
