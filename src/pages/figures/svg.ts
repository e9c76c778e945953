import { shownText } from '../escape.ts';
import { htmlText } from '../html-text.ts';

/** SVG as text: elements built from data, every text of a note escaped, figures rounded so that bytes are the same. */

/** A value of an attribute; undefined leaves the attribute out. */
type Value = string | number | undefined;

const rounded = (value: number): string => `${Math.round(value * 10) / 10}`;

/** An element with its attributes and what it holds. What it holds is markup already: texts go through `label`. */
export const element = (name: string, attributes: Readonly<Record<string, Value>>, ...inside: string[]): string => {
  let written = '';
  for (const key in attributes) {
    const value = attributes[key];
    if (value !== undefined) written += ` ${key}="${typeof value === 'number' ? rounded(value) : htmlText(value)}"`;
  }
  return inside.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${inside.join('')}</${name}>`;
};

/** Text at a point. `anchor` says which end of it stands there. */
export const label = (
  x: number,
  y: number,
  text: string,
  kind = 'said',
  anchor: 'start' | 'middle' | 'end' = 'start',
): string =>
  element(
    'text',
    { x, y, class: kind, ...(anchor !== 'start' && { 'text-anchor': anchor }) },
    htmlText(shownText(text)),
  );

/** A line from one point to another. */
export const line = (x1: number, y1: number, x2: number, y2: number, kind: string): string =>
  element('line', { x1, y1, x2, y2, class: kind });

export type Point = readonly [x: number, y: number];

const at = ([x, y]: Point): string => `${rounded(x)} ${rounded(y)}`;

/** The data of a path through points, straight from each to the next. */
export const through = (points: readonly Point[], closed = false): string =>
  `${points.map((point, index) => `${index === 0 ? 'M' : 'L'}${at(point)}`).join('')}${closed ? 'Z' : ''}`;

export const path = (d: string, kind: string, extra: Readonly<Record<string, Value>> = {}): string =>
  element('path', { d, class: kind, ...extra });

/** What a picture shows: a short name, and the same in words for whoever does not see it. */
export type Told = { readonly title: string; readonly says: string };

/** A whole picture. Its name and words are read in its place; `id` is its own on the page. */
export const picture = (
  id: string,
  { title, says }: Told,
  [width, height]: readonly [number, number],
  kind: string,
  ...inside: string[]
): string =>
  element(
    'svg',
    {
      viewBox: `0 0 ${rounded(width)} ${rounded(height)}`,
      class: kind,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
    },
    element('title', { id: `${id}-title` }, htmlText(shownText(title))),
    element('desc', { id: `${id}-desc` }, htmlText(shownText(says))),
    ...inside,
  );

/** How wide a text stands at a size, roughly: enough to keep labels apart. */
export const widthOf = (text: string, size: number): number => [...text].length * size * 0.56;
