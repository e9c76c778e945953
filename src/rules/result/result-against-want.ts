import { depthsAt, depthText, meets, placeName, type SeenDepth } from '../../reckon/head/seen-at.ts';
import type { DepthSpan } from '../../reckon/lift/seen-depth.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { figure } from '../../reckon/say.ts';
import { exactOf } from '../../text/exact.ts';
import { isZone } from '../../trade/zones.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** Depths between what was wanted and what came of it before it is worth a word: a choice. */
const ROOM = 1.5;

/** Depths between two spans; below nought where they overlap. */
const apartOf = (one: DepthSpan, other: DepthSpan): number => Math.max(one.low - other.high, other.low - one.high);

/** The words and figures of a text: `8-9`, `7.5`, `roots`. */
const wordsIn = (text: string): readonly string[] =>
  [...text.toLowerCase().matchAll(/[\p{L}\p{N}]+(?:[.-][\p{L}\p{N}]+)*/gu)].map(([word]) => word);

/** A depth as it is typed: `8`, `8-9`. */
const typedDepth = (depth: DepthSpan): string => depthText(depth).replace(' to ', '-');

/** Whether a `next` line says how the rest is to be reached: the depth that was wanted, or more of its place than its name. */
const isPlanned = ({ visit, salon }: VisitReckoned, { zone, depth }: SeenDepth): boolean =>
  visit.entry.facts.some(
    (fact) =>
      fact.word === 'next' &&
      [...fact.changes.map(({ text }) => text), fact.says?.text ?? ''].some((text) => {
        const said = wordsIn(text);
        const places = said.filter(isZone);
        if ([`${depth.low}`, `${depth.high}`, typedDepth(depth)].some((one) => said.includes(one))) return true;
        return places.length < said.length && places.some((place) => zone === '' || meets(place, [zone], salon.zones));
      }),
  );

function* found(visit: VisitReckoned, results: readonly SeenDepth[]): Generator<Found> {
  for (const want of depthsAt(visit, 'want')) {
    const there = results.filter(({ zone }) => meets(zone, [want.zone], visit.salon.zones));
    const same = there.filter(({ zone }) => zone === want.zone);
    const [nearest] = (same.length > 0 ? same : there)
      .map((result) => ({ result, apart: apartOf(want.depth, result.depth) }))
      .toSorted((a, b) => a.apart - b.apart);
    if (nearest === undefined || nearest.apart < ROOM || isPlanned(visit, want)) continue;
    const { result, apart } = nearest;
    yield {
      place: result.place,
      message: `${placeName(want.zone)}: wanted ${depthText(want.depth)}, result ${depthText(result.depth)}, ${figure(exactOf(apart))} depths apart.`,
      expected: 'A result is noted beside what was wanted, so that next time starts from it.',
      todo: `Write the depth as it was, or how the rest is to be reached, as in \`next 6w ${[want.zone, 'to', typedDepth(want.depth)].join(' ').trim()}\`; or why not: \`because result-against-want "…"\`.`,
      label: `${figure(exactOf(apart))} depths from what was wanted`,
      also: [{ place: want.place, says: 'wanted here' }],
    };
  }
}

export default defineRule({
  name: 'result-against-want',
  family: 'result',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['result'] },
  what: 'The depth that came of it is one and a half or more away from the depth that was wanted there, and no `next` line speaks of it.',
  why: 'Next time starts from the result; a depth that was missed is worth a line on why.',
  source: { kind: 'notation' },
  check: (visit) => {
    const results = depthsAt(visit, 'result');
    return results.length === 0 ? NONE : found(visit, results);
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      want lengths 9 violet
      result lengths 7 gold
                     ^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      want lengths 9 violet
      result lengths 9 violet`,
});
