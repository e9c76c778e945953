import type { Placement } from '../../reckon/head/placement.ts';
import type { BowlReckoned, VisitReckoned } from '../../reckon/model.ts';
import { shownText } from '../escape.ts';
import { htmlText } from '../html-text.ts';
import { type BowlMarks, markFill, markPatterns, stroked } from './bowl-marks.ts';
import { element, line, path } from './svg.ts';

/** What patterns and bars stand for, as a list under a figure. */

const SIZE = 'key-mark';

const box = (inside: string): string =>
  element('svg', { viewBox: '0 0 30 14', class: SIZE, 'aria-hidden': 'true' }, inside);

const item = (mark: string, text: string): string => `<li>${box(mark)} ${htmlText(shownText(text))}</li>`;

/** What a bowl holds, in short: what its base is called. */
const contentsOf = ({ portions }: BowlReckoned): string =>
  portions
    .filter(({ role }) => role === 'base' || role === 'bowl')
    .map(({ label }) => label)
    .join(' + ');

const bowlItem = (id: string, marks: BowlMarks, bowl: string, bowls: readonly BowlReckoned[]): string => {
  const found = bowls.find(({ name }) => name === bowl);
  const own = `${id}-${bowl.toLowerCase()}`;
  const mark = element('rect', {
    x: 1,
    y: 1,
    width: 28,
    height: 12,
    fill: markFill(own, marks, bowl),
    class: 'stretch',
  });
  return item(
    markPatterns(own, marks, [bowl]) + mark,
    `${bowl} ${found === undefined ? '' : contentsOf(found)}`.trim(),
  );
};

/** How each technique is drawn, in words and as a mark. */
const TECHNIQUE_MARKS: Readonly<Record<string, readonly [mark: string, text: string]>> = {
  slice: [line(1, 7, 29, 7, 'key-bar'), 'slice: an unbroken bar'],
  weave: [path('M1 7H8M12 7H19M23 7H29', 'key-bar'), 'weave: a broken bar'],
  'fine-weave': [path('M1 7H5M8 7H12M15 7H19M22 7H26', 'key-bar'), 'fine weave: short dashes'],
  babylight: [path('M1 7H3M6 7H8M11 7H13M16 7H18M21 7H23M26 7H28', 'key-bar'), 'babylight: dots'],
  paint: [path('M1 7C8 2 22 2 29 7C22 12 8 12 1 7Z', 'key-fill'), 'paint: a stroke'],
  panel: [path('M1 3H29V11H1Z', 'key-fill'), 'panel: a thick bar'],
  block: [path('M1 3H29V11H1Z', 'key-fill'), 'block: a thick bar'],
};

/** The bowls that a placement names, and the techniques it counts, each with how it is drawn. */
export const placementKey = (id: string, marks: BowlMarks, { bowls }: VisitReckoned, placement: Placement): string => {
  const placed = new Set(placement.placed.flatMap((one) => one.bowls));
  const named = [...new Set([...marks.keys(), ...placed])].filter((bowl) => placed.has(bowl));
  const counted = [
    ...new Set(
      placement.placed.flatMap(({ technique, counted: count }) =>
        technique && count !== undefined ? [technique] : [],
      ),
    ),
  ];
  const items = [
    ...named.map((bowl) => bowlItem(id, marks, bowl, bowls)),
    ...(placement.left.length === 0
      ? []
      : [
          item(
            `${stroked(id)}${element('rect', { x: 1, y: 1, width: 28, height: 12, fill: `url(#${id}-out)`, class: 'left-out' })}`,
            'left out',
          ),
        ]),
    ...counted.flatMap((technique) => {
      const [mark, text] = TECHNIQUE_MARKS[technique] ?? [];
      return mark === undefined || text === undefined ? [] : [item(mark, text)];
    }),
  ];
  return `<ul class="key">${items.join('')}</ul>`;
};

/** Places that no figure can draw: the head's own words, and hair that is not on the scalp. */
export const notDrawn = ({ placed }: Placement): string[] => [
  ...new Set(
    placed.flatMap(({ places }) =>
      places
        .filter(({ areas, along, whole }) => areas.length === 0 && along.length === 0 && !whole)
        .map(({ zone }) => zone),
    ),
  ),
];
