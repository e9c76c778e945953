import type { Hair, Hold } from '../records/schema/client.ts';
import type { ClientFact } from '../records/schema/entry.ts';
import { codeSpan, escapeText } from './escape.ts';
import { commas, endOf, type Noted, spaced, typedWords } from './noted.ts';
import { durationText } from './say-numbers.ts';
import { allSeen, zonesText } from './seen.ts';
import { testText } from './test-words.ts';

type Phrases = { readonly [W in ClientFact['word']]: (noted: Noted, fact: Extract<ClientFact, { word: W }>) => string };

const hairText = (noted: Noted, fact: Hair): string =>
  fact.qualities
    .map(({ quality, words, zones }) =>
      spaced([escapeText(quality.word), typedWords(noted, fact, words), zonesText(zones)]),
    )
    .join('; ');

/** `lightener, until 2027-01`; with neither date nor length it is for good. */
export const holdText = ({ what, from, until, length, untilLetter }: Hold): string =>
  commas([
    escapeText(what.name),
    from && `from ${from.when}`,
    until && `until ${until.when}`,
    length && `for ${durationText(length)}`,
    untilLetter && 'until a letter',
    until === undefined && length === undefined && !untilLetter ? 'for good' : undefined,
  ]);

/** What each line of a client entry says, as Markdown without its first word. */
const PHRASES: Phrases = {
  born: (_, { when }) => when.when,
  natural: (noted, fact) => allSeen(noted, fact, fact.seen),
  grey: (noted, fact) => allSeen(noted, fact, fact.parts),
  hair: hairText,
  pattern: (_, { zones }) => zonesText(zones),
  history: (noted, fact) =>
    spaced([fact.when?.when, commas([typedWords(noted, fact, fact.kinds), zonesText(fact.zones)])]),
  allergy: (noted, fact) => typedWords(noted, fact, fact.to),
  caution: (_, { text, until }) => commas([escapeText(text), until && `until ${until.when}`]),
  test: (noted, fact) => testText(noted, fact),
  avoid: (noted, fact) => typedWords(noted, fact, fact.what),
  consent: (noted, fact) => commas([typedWords(noted, fact, fact.what), fact.date?.date]),
  letter: (_, { date }) => date?.date ?? '',
  hold: (_, fact) => holdText(fact),
  because: (_, { rule }) => escapeText(rule.name),
  zone: (_, { zone, zones }) => commas([escapeText(zone.name), zonesText(zones)]),
  note: (_, { text }) => escapeText(text),
  unread: (_, { typed }) => codeSpan(typed),
};

export const CLIENT_LABELS: Readonly<Record<ClientFact['word'], string>> = {
  born: 'Born',
  natural: 'Natural depth',
  grey: 'Grey',
  hair: 'Hair',
  pattern: 'Growth pattern',
  history: 'History',
  allergy: 'Allergy',
  caution: 'Caution',
  test: 'Test',
  avoid: 'Avoid',
  consent: 'Consent',
  letter: 'Letter',
  hold: 'Hold',
  because: 'Reason given',
  zone: 'Own place',
  note: 'Note',
  unread: 'Kept as typed',
};

/** A line of a client entry in words. */
export const clientPhrase = (noted: Noted, fact: ClientFact): string => {
  const phrase = PHRASES[fact.word] as (noted: Noted, fact: ClientFact) => string;
  const said = phrase(noted, fact);
  // A test says its own end, before its result.
  return fact.word === 'test' ? said : `${said}${endOf(noted.journal, fact)}`.trim();
};

/** A line of a client entry as a list item, its label first. */
export const clientItem = (noted: Noted, fact: ClientFact): string =>
  `- **${CLIENT_LABELS[fact.word]}** ${clientPhrase(noted, fact)}`;
