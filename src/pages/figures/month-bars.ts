import { htmlText } from '../html-text.ts';
import { element, label, line, picture, type Told } from './svg.ts';

/** Months beside each other: a bar each, its lower part solid and its upper part clear. */

/** One month. Values are in one unit, from nought up, for the eye alone: the exact figures stand in `says`. */
export type MonthBar = {
  /** `YYYY-MM` */
  readonly month: string;
  readonly lower: number;
  readonly upper: number;
  /** The month in words and figures: `2026-05: 240 g used, 32 g left`. */
  readonly says: string;
};

/** What the figure is called, its unit, and what its two parts are. */
export type MonthBarsTitle = {
  readonly title: string;
  readonly unit: string;
  readonly lower: string;
  readonly upper: string;
};

type Shape = { readonly width: number; readonly left: number; readonly right: number; readonly kind: string };

const WIDE: Shape = { width: 720, left: 70, right: 712, kind: 'wide' };
const NARROW: Shape = { width: 320, left: 56, right: 316, kind: 'narrow' };

const TOP = 24;
const BOTTOM = 204;
const HEIGHT = 236;

/** Few months make no slabs. */
const WIDEST = 48;

/** Room that a month’s name needs beside the next. */
const ROOM = 66;

/** A round step of the scale, so that it has four or five at most. */
const stepFor = (most: number): number => {
  const rough = most / 4;
  const ten = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((times) => times * ten >= rough) ?? 10) * ten;
};

const scaleText = (value: number): string => (Number.isInteger(value) ? `${value}` : value.toFixed(1));

const drawn = (
  id: string,
  told: Told,
  unit: string,
  bars: readonly MonthBar[],
  { width, left, right, kind }: Shape,
): string => {
  const most = Math.max(...bars.map(({ lower, upper }) => lower + upper));
  const step = stepFor(most);
  const top = Math.ceil(most / step - 1e-9) * step;
  const y = (value: number): number => BOTTOM - (value / top) * (BOTTOM - TOP);
  const pitch = (right - left) / bars.length;
  const every = Math.ceil(ROOM / pitch);
  const rules = Array.from({ length: Math.round(top / step) + 1 }, (_, index) => index * step);
  const bar = ({ lower, upper }: MonthBar, index: number): string => {
    const wide = Math.min(pitch * 0.7, WIDEST);
    const x = left + pitch * (index + 0.5) - wide / 2;
    const part = (from: number, to: number, fill: string): string =>
      to <= from ? '' : element('rect', { x, y: y(to), width: wide, height: y(from) - y(to), class: `bar ${fill}` });
    return part(0, lower, 'key-fill') + part(lower, lower + upper, 'clear');
  };
  return picture(
    `${id}-${kind}`,
    told,
    [width, HEIGHT],
    kind,
    label(left - 6, TOP - 10, unit, 'small', 'end'),
    ...rules.flatMap((value) => [
      line(left, y(value), right, y(value), value === 0 ? 'axis' : 'rule'),
      label(left - 6, y(value) + 4, scaleText(value), 'small', 'end'),
    ]),
    ...bars.map(bar),
    ...bars.flatMap(({ month }, index) =>
      index % every === 0 ? [label(left + pitch * (index + 0.5), BOTTOM + 20, month, 'small', 'middle')] : [],
    ),
  );
};

const keyItem = (fill: string, text: string): string => {
  const box = element('rect', { x: 1, y: 1, width: 28, height: 12, class: `bar ${fill}` });
  const mark = element('svg', { viewBox: '0 0 30 14', class: 'key-mark', 'aria-hidden': 'true' }, box);
  return `<li>${mark} ${htmlText(text)}</li>`;
};

/** The months as bars, with their figures in words; undefined for less than two months or nothing to show. */
export const monthBars = (id: string, title: MonthBarsTitle, bars: readonly MonthBar[]): string | undefined => {
  if (bars.length < 2 || !bars.some(({ lower, upper }) => lower + upper > 0)) return undefined;
  const told = { title: title.title, says: bars.map(({ says }) => says).join('; ') };
  return [
    `<figure class="figure months">`,
    drawn(id, told, title.unit, bars, WIDE),
    drawn(id, told, title.unit, bars, NARROW),
    `<ul class="key">${keyItem('clear', title.upper)}${keyItem('key-fill', title.lower)}</ul>`,
    `<figcaption>${htmlText(title.title)}</figcaption>`,
    '</figure>\n',
  ].join('');
};
