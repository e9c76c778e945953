import { placeOf } from '../../reckon/cite.ts';
import { seenIn } from '../../reckon/facts-of.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { editDistance } from '../../text/near.ts';
import type { Place } from '../../text/span.ts';
import { STAGES } from '../../trade/stages.ts';
import { TONE_WORDS } from '../../trade/tone.ts';
import { ALONG, GROUPS, ZONES } from '../../trade/zones.ts';
import { alsoAt, nearMend } from '../problems.ts';
import { defineRule, foundEach, NONE } from '../rule.ts';

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
  const limit = word.length < LONG ? 1 : 2;
  let nearest: { readonly meant: string; readonly far: number } | undefined;
  for (const meant of MEANT) {
    if (meant[0] !== word[0] || meant.length < 4 || Math.abs(meant.length - word.length) > limit) continue;
    const far = editDistance(word, meant);
    if (far <= limit && (nearest === undefined || far < nearest.far)) nearest = { meant, far };
  }
  return nearest?.meant;
};

/** Whether a word is what it seems, as nearly all are. */
const isPlain = (word: string): boolean =>
  word.length < 4 || KNOWN.has(word) || PLAIN.has(word) || KNOWN.has(`${word}s`);

/** The words of a visit that may be slips, each with its places. */
const doubtsIn = (visit: VisitReckoned['visit']): ReadonlyMap<string, Place[]> | undefined => {
  let doubts: Map<string, Place[]> | undefined;
  for (const fact of visit.entry.facts)
    for (const { words } of seenIn(fact))
      for (const { word, at } of words) {
        if (isPlain(word)) continue;
        doubts ??= new Map();
        const place = placeOf(visit, fact, at);
        const before = doubts.get(word);
        if (before === undefined) doubts.set(word, [place]);
        else before.push(place);
      }
  return doubts;
};

export default defineRule({
  name: 'near-word',
  family: 'names',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'What is seen or wanted has a word that is a letter or two from a stage, a tone or a place of the head.',
  why: 'Under a slip of its name a stage or a tone is not reckoned with.',
  source: { kind: 'notation' },
  check({ visit }) {
    const doubts = doubtsIn(visit);
    if (doubts === undefined) return NONE;
    return foundEach([...doubts], ([word, [place, ...again]]) => {
      const meant = nearTo(word);
      if (place === undefined || meant === undefined) return undefined;
      return {
        place,
        message: `\`${word}\` is no stage, tone or place, and is near \`${meant}\`.`,
        todo: `Write \`${meant}\`.`,
        ...nearMend(place, [meant], again),
        ...alsoAt(again),
      };
    });
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
