import type { Placed, Placement } from '../../reckon/head/placement.ts';
import { type BowlMarks, markFill, markPatterns, stroked } from './bowl-marks.ts';
import { HEAD_VIEWS, type HeadView, type Patch, VIEW_SIZE } from './head-views.ts';
import { edgeOf, patchPath, type Section, sectionBars } from './section-bars.ts';
import { type Spread, spread } from './spread.ts';
import { element, label, type Point, path, picture, through } from './svg.ts';

/** The head with what went where: each section a bar in its bowl's pattern, what was left out in strokes. */

/** What is written beside a patch, and where the line to it begins. */
type Tag = { readonly from: Point; readonly says: string };

type OnPatch = { readonly patch: Patch; readonly one: Spread };

const COLUMN = 152;
const TAG_HEIGHT = 15;
/** Letters that fit the margin on a phone, where the letters are large; a longer tag is set smaller. */
const SHORT_TAG = 7;

const isOn = (patch: Patch, { area, side, placed }: Spread): boolean => {
  if (patch.area !== area) return false;
  if (side !== undefined) return patch.side === side;
  // The hairline is seen from the sides too, but its sections are drawn once, from above.
  return patch.side === undefined || (placed.counted === undefined && area === 'hairline');
};

/** Parts of the width: both sides of a mirrored line, one side, or right across. */
const partsOf = ({ half, side, placed }: Spread): Section['across'] => {
  if (half === 'left') return [[0, 0.46]];
  if (half === 'right') return [[0.54, 1]];
  return placed.mirror && side === undefined
    ? [
        [0, 0.46],
        [0.54, 1],
      ]
    : [[0, 1]];
};

const countText = ({ placed, count, side }: Spread): string => {
  if (count === undefined) return '';
  return placed.mirror && side === undefined ? ` ×${count}+${count}` : ` ×${count}`;
};

const tagOf = ({ patch, one }: OnPatch): Tag => {
  const right = Math.max(...partsOf(one).map(([, to]) => to));
  return { from: edgeOf(patch, right), says: `${one.placed.bowls.join('+')}${countText(one)}` };
};

const drawnOn = (id: string, marks: BowlMarks, { patch, one }: OnPatch): string => {
  const { placed, count, bowls } = one;
  const parts = partsOf(one);
  if (count === undefined) {
    const fill = markFill(id, marks, placed.bowls[0]);
    return parts.map(([from, to]) => path(patchPath(patch, from, to), 'all-over', { fill })).join('');
  }
  const sections = bowls.map((bowl): Section => ({ fill: markFill(id, marks, bowl), across: parts }));
  const under = patch.area === 'parting' ? path(patchPath(patch), 'clear') : '';
  return under + sectionBars(patch, sections, placed.technique, placed.gap?.most);
};

/** Tags down the right margin, in the order of their patches, none over another. */
const tagsOf = (tags: readonly Tag[]): string => {
  let free = TAG_HEIGHT;
  return tags
    .toSorted((a, b) => a.from[1] - b.from[1])
    .map(({ from, says }) => {
      const y = Math.max(free, Math.min(from[1] + 4, VIEW_SIZE[1] - 24));
      free = y + TAG_HEIGHT;
      const kind = says.length > SHORT_TAG ? 'tag long' : 'tag';
      return path(through([from, [COLUMN - 4, y - 4], [COLUMN - 1, y - 4]]), 'leader') + label(COLUMN, y, says, kind);
    })
    .join('');
};

const leftOn = (view: HeadView, { left }: Placement): Patch[] =>
  left
    .flatMap(({ places }) => places)
    .flatMap(({ areas, half, whole }) =>
      whole
        ? []
        : view.patches.filter(
            ({ area, side }) => areas.includes(area) && (side === undefined || half === undefined || side === half),
          ),
    );

const wordsOf = (on: readonly OnPatch[], leftOut: readonly Patch[]): string => {
  const placed = on.map(({ one }) => {
    const { placed: line, area, side, half } = one;
    const how = line.technique === undefined ? '' : ` ${line.technique}`;
    return `${line.bowls.join(' and ')}${how}${countText(one)} on ${[half, area, side].filter((word) => word !== undefined).join(' ')}`;
  });
  const left = leftOut.map(({ area }) => `${area} left out`);
  return [...new Set([...placed, ...left])].join('; ') || 'nothing placed here';
};

const viewOf = (id: string, marks: BowlMarks, view: HeadView, placement: Placement, all: readonly Spread[]): string => {
  const on = view.patches.flatMap((patch) => all.filter((one) => isOn(patch, one)).map((one) => ({ patch, one })));
  const leftOut = leftOn(view, placement);
  const tags = [...on.map(tagOf), ...leftOut.map((patch): Tag => ({ from: edgeOf(patch), says: 'left out' }))];
  return picture(
    id,
    { title: `Head, ${view.title.toLowerCase()}`, says: wordsOf(on, leftOut) },
    VIEW_SIZE,
    on.length + leftOut.length === 0 ? 'head bare' : 'head',
    markPatterns(
      id,
      marks,
      on.flatMap(({ one }) => one.placed.bowls),
    ),
    leftOut.length > 0 ? stroked(id) : '',
    ...view.outline.map((d) => path(d, 'outline')),
    ...view.patches.map((patch) => path(patchPath(patch), 'area')),
    ...leftOut.map((patch) => path(patchPath(patch), 'left-out', { fill: `url(#${id}-out)` })),
    ...on.map((one) => drawnOn(id, marks, one)),
    tagsOf(tags),
    label(80, VIEW_SIZE[1] - 3, view.title, 'said', 'middle'),
  );
};

/** Whether a line is drawn on the views of the head: it names an area, not only a place along the hair. */
export const isOnViews = ({ places }: Pick<Placed, 'places'>): boolean =>
  places.some(({ areas, whole }) => areas.length > 0 && !whole);

/** The four views; undefined when no line names an area of the head. */
export const headViews = (id: string, marks: BowlMarks, placement: Placement): string | undefined => {
  if (![...placement.placed, ...placement.left].some(isOnViews)) return undefined;
  const all = placement.placed.flatMap(spread);
  const views = HEAD_VIEWS.map((view) => viewOf(`${id}-${view.key}`, marks, view, placement, all));
  return element('div', { class: 'heads' }, ...views);
};
