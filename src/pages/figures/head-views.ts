import type { HeadArea } from '../../trade/head-areas.ts';
import type { Point } from './svg.ts';

/** Our own drawing of a head from above, from both sides and from behind, and where its areas lie on it. */

/**
 * An area as it is drawn: sections run from the left edge to the right one, the first from `first`, the last from `last`.
 * `bulge` bends them along the way they are stacked.
 */
export type Patch = {
  readonly area: HeadArea;
  readonly first: readonly [left: Point, right: Point];
  readonly last: readonly [left: Point, right: Point];
  readonly bulge: number;
  /** The client's own side, where the patch is one side only. */
  readonly side?: 'left' | 'right';
};

export type HeadView = {
  readonly key: 'top' | 'left' | 'right' | 'back';
  readonly title: string;
  /** Data of the paths that make up the drawing. */
  readonly outline: readonly string[];
  readonly patches: readonly Patch[];
};

const patch = (
  area: HeadArea,
  first: readonly [Point, Point],
  last: readonly [Point, Point],
  bulge: number,
  side?: Patch['side'],
): Patch => ({ area, first, last, bulge, ...(side && { side }) });

const TOP: HeadView = {
  key: 'top',
  title: 'From above',
  outline: [
    'M80 22C116 22 138 52 138 92C138 132 114 162 80 162C46 162 22 132 22 92C22 52 44 22 80 22Z',
    'M72 23C75 12 85 12 88 23',
    'M22 84C13 84 13 106 23 106',
    'M138 84C147 84 147 106 137 106',
  ],
  patches: [
    patch(
      'hairline',
      [
        [38, 55],
        [122, 55],
      ],
      [
        [37, 67],
        [123, 67],
      ],
      -46,
    ),
    patch(
      'front',
      [
        [52, 56],
        [108, 56],
      ],
      [
        [46, 72],
        [114, 72],
      ],
      -14,
    ),
    patch(
      'fringe',
      [
        [60, 48],
        [100, 48],
      ],
      [
        [57, 62],
        [103, 62],
      ],
      -12,
    ),
    patch(
      'top',
      [
        [42, 76],
        [118, 78],
      ],
      [
        [40, 112],
        [120, 112],
      ],
      -4,
    ),
    patch(
      'parting',
      [
        [69, 48],
        [91, 48],
      ],
      [
        [69, 108],
        [91, 108],
      ],
      0,
    ),
    patch(
      'crown',
      [
        [46, 120],
        [114, 120],
      ],
      [
        [62, 152],
        [98, 152],
      ],
      8,
    ),
  ],
};

const LEFT: HeadView = {
  key: 'left',
  title: 'Left side',
  outline: [
    'M40 54C35 62 36 70 34 76C32 84 26 90 25 96C26 100 31 100 34 101C31 104 31 107 33 109C31 112 32 115 35 117C33 124 35 132 42 135C54 138 68 134 77 127C79 142 78 154 76 166',
    'M134 166C130 150 130 136 134 122C142 108 147 94 147 76C147 42 124 17 96 17C70 17 47 30 40 54',
    'M40 54C50 56 58 62 61 72C63 82 66 92 69 102M96 112C102 124 116 132 132 134',
    'M80 84C90 80 97 88 94 98C92 106 88 112 83 110C80 108 80 104 81 100C77 96 76 87 80 84Z',
  ],
  patches: [
    patch(
      'hairline',
      [
        [45, 49],
        [70, 96],
      ],
      [
        [54, 44],
        [78, 84],
      ],
      14,
      'left',
    ),
    patch(
      'temples',
      [
        [58, 50],
        [78, 46],
      ],
      [
        [68, 80],
        [79, 76],
      ],
      3,
      'left',
    ),
    patch(
      'sides',
      [
        [82, 42],
        [126, 44],
      ],
      [
        [84, 78],
        [122, 82],
      ],
      3,
      'left',
    ),
  ],
};

const turned = ([x, y]: Point): Point => [160 - x, y];

/** The data of a path as seen in a mirror that stands upright in the middle of the view. */
const turnedPath = (d: string): string =>
  d.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_, x: string, y: string) => `${160 - Number(x)} ${y}`);

const RIGHT: HeadView = {
  key: 'right',
  title: 'Right side',
  outline: LEFT.outline.map(turnedPath),
  patches: LEFT.patches.map(({ area, first, last, bulge }) =>
    patch(area, [turned(first[1]), turned(first[0])], [turned(last[1]), turned(last[0])], bulge, 'right'),
  ),
};

const BACK: HeadView = {
  key: 'back',
  title: 'From behind',
  outline: [
    'M54 166C53 146 50 134 42 122C30 110 23 94 23 76C23 42 46 16 80 16C114 16 137 42 137 76C137 94 130 110 118 122C110 134 107 146 106 166',
    'M24 82C15 78 12 92 18 102C21 108 27 108 29 104',
    'M136 82C145 78 148 92 142 102C139 108 133 108 131 104',
    'M51 140C64 150 96 150 109 140',
  ],
  patches: [
    patch(
      'crown',
      [
        [56, 28],
        [104, 28],
      ],
      [
        [36, 54],
        [124, 54],
      ],
      8,
    ),
    patch(
      'back',
      [
        [33, 62],
        [127, 62],
      ],
      [
        [31, 84],
        [129, 84],
      ],
      8,
    ),
    patch(
      'occipital',
      [
        [33, 92],
        [127, 92],
      ],
      [
        [42, 110],
        [118, 110],
      ],
      8,
    ),
    patch(
      'nape',
      [
        [48, 118],
        [112, 118],
      ],
      [
        [56, 136],
        [104, 136],
      ],
      8,
    ),
  ],
};

/** The four views in the order they are drawn. The client's left is on the left from above and from behind. */
export const HEAD_VIEWS: readonly HeadView[] = [TOP, LEFT, RIGHT, BACK];

/** Size of a view, with a margin at the right for what is written beside it. */
export const VIEW_SIZE: readonly [number, number] = [216, 182];
