import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn } from '../../reckon/bowl/contents.ts';
import { depthsAt, depthText, placeName } from '../../reckon/head/seen-at.ts';
import { isColour } from '../../reckon/head/services.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/** What changes no colour by itself. */
const PLAIN: ReadonlySet<string | undefined> = new Set(['developer', 'additive', 'treatment', 'conditioner', 'goods']);

/** Whether lightener is all that was put on. */
const onlyLightened = (visit: VisitReckoned): boolean => {
  const bowls = bowlsPutOn(visit).filter(isColour);
  const kinds = bowls.flatMap((bowl) => itemsIn(bowl).map(({ kind }) => kind));
  return kinds.includes('lightener') && kinds.every((kind) => kind === 'lightener' || PLAIN.has(kind));
};

function* found(visit: VisitReckoned): Generator<Found> {
  const starts = depthsAt(visit, 'start');
  for (const result of depthsAt(visit, 'result')) {
    const start = starts.find(({ zone }) => zone === result.zone);
    if (start === undefined || result.depth.high > start.depth.low - 1) continue;
    yield {
      place: result.place,
      message: `${placeName(result.zone)}: from ${depthText(start.depth)} to ${depthText(result.depth)}, and lightener is all that was put on.`,
      expected: 'Lightener takes colour out; it makes nothing darker (common practice).',
      todo: 'Write the depth as it was, or the bowl that is missing.',
      label: 'darker than the start',
      also: [{ place: start.place, says: 'starts here' }],
    };
  }
}

export default defineRule({
  name: 'darker-after-lightening',
  family: 'lift',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener'] },
  what: 'A place is a depth or more darker at the end than at the start, and lightener is all that was put on.',
  why: 'One of the depths is mistyped or a bowl is missing, and the next visit starts from it.',
  source: { kind: 'common practice' },
  check: (visit) => (onlyLightened(visit) ? found(visit) : NONE),
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start top 6
      bowl A 40 clay + 80 dev-6
      place A top
      on A top for 35min
      result top 4
                 ^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      start top 6
      bowl A 40 clay + 80 dev-6
      place A top
      on A top for 35min
      result top 8`,
});
