import type { VisitReckoned } from '../../reckon/model.ts';
import { element, line } from './svg.ts';

/**
 * Bowls by pattern: each bowl of a visit has one, in the order they were mixed, the same in every figure of the visit.
 * Told apart without colour; the bowl's letter stands beside wherever one is used.
 */

const SIZE = 8;

const mark = (kind: string): string => `${kind} mark`;

const ground = (): string => element('rect', { width: SIZE, height: SIZE, class: 'ground' });

/** What each pattern holds, on a tile of 8 units. */
const TILES: readonly (() => string[])[] = [
  () => [element('rect', { width: SIZE, height: SIZE, class: 'whole-mark' })],
  () => [ground(), line(-2, 6, 6, -2, mark('broad')), line(2, 10, 10, 2, mark('broad'))],
  () => [
    ground(),
    element('circle', { cx: 2, cy: 2, r: 1.5, class: 'whole-mark' }),
    element('circle', { cx: 6, cy: 6, r: 1.5, class: 'whole-mark' }),
  ],
  () => [ground(), line(0, 2, SIZE, 2, mark('thin')), line(0, 6, SIZE, 6, mark('thin'))],
  () => [ground(), line(0, 0, SIZE, SIZE, mark('thin')), line(0, SIZE, SIZE, 0, mark('thin'))],
  () => [ground(), line(2, 0, 2, SIZE, mark('broad')), line(6, 0, 6, SIZE, mark('thin'))],
];

/** The pattern of each bowl of a visit, by its name in capitals. */
export type BowlMarks = ReadonlyMap<string, number>;

/** The bowls of a visit in the order of its lines. More bowls than patterns share them; their letters tell them apart. */
export const bowlMarks = ({ bowls, clock }: Pick<VisitReckoned, 'bowls' | 'clock'>): BowlMarks => {
  const names = [
    ...bowls.map(({ name }) => name),
    ...clock.runs.flatMap(({ bowl }) => (bowl === undefined ? [] : [bowl])),
  ];
  return new Map([...new Set(names)].map((name, index) => [name, index % TILES.length]));
};

/** The class that gives a bowl's pattern its colour; a bowl that is not mixed has the last one. */
export const markClass = (marks: BowlMarks, bowl: string | undefined): string =>
  `bowl-${(marks.get(bowl ?? '') ?? TILES.length - 1) + 1}`;

/** The fill of a bowl in a picture whose `markPatterns` have the same id. */
export const markFill = (id: string, marks: BowlMarks, bowl: string | undefined): string =>
  `url(#${id}-${markClass(marks, bowl)})`;

/** Definitions of the patterns that a picture uses. */
export const markPatterns = (id: string, marks: BowlMarks, bowls: readonly (string | undefined)[]): string => {
  const kinds = new Map(bowls.map((bowl) => [markClass(marks, bowl), marks.get(bowl ?? '') ?? TILES.length - 1]));
  const patterns = [...kinds].map(([kind, tile]) =>
    element(
      'pattern',
      { id: `${id}-${kind}`, class: kind, width: SIZE, height: SIZE, patternUnits: 'userSpaceOnUse' },
      ...(TILES[tile]?.() ?? []),
    ),
  );
  return patterns.length === 0 ? '' : element('defs', {}, ...patterns);
};

/** The pattern of what is out of order or left out: steep strokes, wider apart than any bowl's. */
export const stroked = (id: string): string =>
  element(
    'defs',
    {},
    element(
      'pattern',
      { id: `${id}-out`, width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(20)' },
      element('rect', { width: 6, height: 6, class: 'ground' }),
      line(3, 0, 3, 6, 'out-stroke'),
    ),
  );
