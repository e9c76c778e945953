import type { VisitFact } from '../../records/schema/entry.ts';
import type { Word } from '../../records/schema/values.ts';
import { editDistance } from '../../text/near.ts';
import type { Place } from '../../text/span.ts';
import { STAGES } from '../../trade/stages.ts';
import { TONE_WORDS } from '../../trade/tone.ts';
import { ALONG, GROUPS, ZONES } from '../../trade/zones.ts';
import { placeOf } from '../cite.ts';
import { alsoAt, nearMend } from '../problems.ts';
import { defineRule } from '../rule.ts';

/** Words that a slip may be of. */
const MEANT: readonly string[] = [...new Set<string>([...STAGES, ...TONE_WORDS, ...ZONES, ...ALONG, ...GROUPS])];
const KNOWN: ReadonlySet<string> = new Set(MEANT);

/** Everyday words of notes that are near to one of those and no slip of it. */
const PLAIN: ReadonlySet<string> = new Set([
  ...[
    'good',
    'black',
    'block',
    'cold',
    'bold',
    'goal',
    'warmer',
    'cooler',
    'lighter',
    'darker',
    'light',
    'right',
    'bright',
    'slight',
  ],
  ...['side', 'fronts', 'cream', 'creamy', 'read', 'reads', 'even', 'ready', 'greyer', 'greys', 'orangey', 'yellowy'],
  ...['golden', 'reddish', 'browner', 'length', 'ending', 'rooty', 'rest', 'best', 'west', 'well', 'tops', 'stop'],
]);

/** Letters from which two slips are taken for one word. */
const LONG = 6;

const nearTo = (word: string): string | undefined => {
  if (word.length < 4 || KNOWN.has(word) || PLAIN.has(word) || KNOWN.has(`${word}s`)) return undefined;
  const limit = word.length < LONG ? 1 : 2;
  const far = (meant: string): number => editDistance(word, meant);
  return MEANT.filter((meant) => meant[0] === word[0] && meant.length >= 4 && far(meant) <= limit)
    .sort((a, b) => far(a) - far(b))
    .at(0);
};

const wordsOf = (fact: VisitFact): readonly Word[] => {
  switch (fact.word) {
    case 'check':
    case 'start':
    case 'want':
    case 'result':
      return fact.seen.flatMap(({ words }) => words);
    default:
      return [];
  }
};

export default defineRule({
  name: 'near-word',
  family: 'names',
  severity: 'mind',
  over: 'visit',
  what: 'What is seen or wanted has a word that is a letter or two from a stage, a tone or a place of the head.',
  why: 'Under a slip of its name a stage or a tone is not reckoned with.',
  source: { kind: 'notation' },
  *check({ visit }) {
    const said = new Map<string, Place[]>();
    for (const fact of visit.entry.facts)
      for (const { word, at } of wordsOf(fact)) {
        const place = placeOf(visit, fact, at);
        const before = said.get(word);
        if (before !== undefined) before.push(place);
        else said.set(word, [place]);
      }
    for (const [word, [place, ...again]] of said) {
      const meant = nearTo(word);
      if (place === undefined || meant === undefined) continue;
      yield {
        place,
        message: `\`${word}\` is no stage, tone or place, and is near \`${meant}\`.`,
        todo: `Write \`${meant}\`.`,
        ...nearMend(place, [meant], again),
        ...alsoAt(again),
      };
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start lengths 9 yelow
                      ^^^^^
      bowl A 30 neon teal
      place A lengths`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start lengths 9 yellow
      bowl A 30 neon teal
      place A lengths`,
});
