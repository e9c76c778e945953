import { HEAD_AREA_FACTS } from '../../trade/head-areas.ts';
import type { Patch } from './head-views.ts';
import { type Point, path, through } from './svg.ts';

/** Sections as bars across a patch: a slice unbroken, a weave broken, paint as a stroke of the brush. */

/** A section to draw: its fill, and the parts of its width that are taken, each from 0 to 1. */
export type Section = { readonly fill: string; readonly across: readonly (readonly [from: number, to: number])[] };

/** Dashes of the techniques that leave hair between: the strand, and the hair left out. */
const BROKEN: Readonly<Record<string, readonly [strand: number, left: number]>> = {
  weave: [7, 4],
  'fine-weave': [4, 3],
  babylight: [2, 3],
};

/** A bar is no thinner, so that its pattern is seen. */
const THINNEST = 2.8;
const THICKEST = 9;

/** Millimetres of hair that a section is taken as, where its gap is drawn: middle of the usual depth. */
const SECTION_MM = 4;

const between = ([ax, ay]: Point, [bx, by]: Point, share: number): Point => [
  ax + (bx - ax) * share,
  ay + (by - ay) * share,
];

const distance = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(bx - ax, by - ay);

const middle = ([left, right]: readonly [Point, Point]): Point => between(left, right, 0.5);

/** How far apart the first and the last section of a patch can be, in units of the view. */
const depthOf = (patch: Patch): number => distance(middle(patch.first), middle(patch.last));

/** A point of the patch: `down` from the first section to the last, `along` from its left end to its right. */
const pointAt = (patch: Patch, down: number, along: number): Point => {
  const left = between(patch.first[0], patch.last[0], down);
  const right = between(patch.first[1], patch.last[1], down);
  const [from, to] = [middle(patch.first), middle(patch.last)];
  const length = distance(from, to) || 1;
  const bend = 2 * along * (1 - along) * patch.bulge;
  const [x, y] = between(left, right, along);
  return [x + ((to[0] - from[0]) / length) * bend, y + ((to[1] - from[1]) / length) * bend];
};

const STEPS = 6;

const across = (patch: Patch, down: number, from: number, to: number): Point[] =>
  Array.from({ length: STEPS + 1 }, (_, step) => pointAt(patch, down, from + ((to - from) * step) / STEPS));

/** The edge of a patch, or of the part of its width that is taken. */
export const patchPath = (patch: Patch, from = 0, to = 1): string =>
  through([...across(patch, 0, from, to), ...across(patch, 1, to, from)], true);

/** The point at the right edge of a patch where what is written beside it begins. */
export const edgeOf = (patch: Patch, to = 1): Point => pointAt(patch, 0.5, to);

/** Where sections lie, of 0 to 1, and how thick: as far apart as their gap says, closer where there is no room. */
const laid = (
  patch: Patch,
  count: number,
  gap: number | undefined,
): { readonly downs: readonly number[]; readonly thick: number } => {
  const depth = depthOf(patch);
  const drawn = Math.max(1, Math.min(count, Math.floor(depth / THINNEST / 1.4)));
  const room = depth / drawn;
  const unit = depth / HEAD_AREA_FACTS[patch.area].depth;
  const pitch = gap === undefined ? room : Math.min(room, Math.max((SECTION_MM + gap) * unit, THINNEST * 1.4));
  const share = gap === undefined ? 0.55 : Math.min(0.9, Math.max(0.35, SECTION_MM / (SECTION_MM + gap)));
  const begin = (depth - pitch * drawn) / 2;
  return {
    downs: Array.from({ length: drawn }, (_, index) => (begin + pitch * (index + 0.5)) / Math.max(1, depth)),
    thick: Math.min(THICKEST, Math.max(THINNEST, pitch * share)),
  };
};

/** A stroke of the brush: thick in the middle, running out at both ends. */
const brushed = (
  patch: Patch,
  down: number,
  [from, to]: readonly [number, number],
  thick: number,
  fill: string,
): string => {
  const half = thick / 2 / Math.max(1, depthOf(patch));
  const edge = (sign: number): Point[] =>
    Array.from({ length: STEPS + 1 }, (_, step) => {
      const share = step / STEPS;
      return pointAt(patch, down + sign * half * Math.sin(share * Math.PI), from + (to - from) * share);
    });
  return path(through([...edge(-1), ...edge(1).toReversed()], true), 'brushed', { fill });
};

const barred = (
  patch: Patch,
  down: number,
  [from, to]: readonly [number, number],
  thick: number,
  { technique, fill, odd }: { readonly technique: string | undefined; readonly fill: string; readonly odd: boolean },
): string => {
  const d = through(across(patch, down, from, to));
  const [strand = 0, left = 0] = BROKEN[technique ?? ''] ?? [];
  // Every other row begins in the middle of a strand, as rows of a wall do: no stripe shows down the head.
  const dashes = strand > 0 && {
    'stroke-dasharray': `${strand} ${left}`,
    'stroke-dashoffset': odd ? (strand + left) / 2 : undefined,
  };
  return [
    path(d, 'section-edge', { 'stroke-width': thick + 1, ...dashes }),
    path(d, 'section', { 'stroke-width': thick, stroke: fill, ...dashes }),
  ].join('');
};

/** The sections of a line on one patch, the first first; only as many as there is room for. */
export const sectionBars = (
  patch: Patch,
  sections: readonly Section[],
  technique: string | undefined,
  gap: number | undefined,
): string => {
  // A line may count no sections (`x0`); room is laid out for one at least.
  if (sections.length === 0) return '';
  const { downs, thick } = laid(patch, sections.length, gap);
  return downs
    .flatMap((down, index) => {
      const { fill, across: parts } = sections[index] as Section;
      return parts.map((part) =>
        technique === 'paint'
          ? brushed(patch, down, part, Math.max(thick, 6), fill)
          : barred(patch, down, part, thick, { technique, fill, odd: index % 2 === 1 }),
      );
    })
    .join('');
};
