import type { Placement } from '../../reckon/head/placement.ts';
import type { HeadPlace } from '../../reckon/head/places.ts';
import type { Along } from '../../trade/zones.ts';
import { type BowlMarks, markFill, markPatterns, stroked } from './bowl-marks.ts';
import { element, label, line, path, picture } from './svg.ts';

/** One hair from the scalp to its end, and beneath it which bowl went on which stretch. */

type Stretch = { readonly from: number; readonly to: number };

/** Stretches along the hair, of 0 to 1: where they meet differs from head to head, so they are drawn alike. */
const STRETCHES: Readonly<Record<Along, Stretch>> = {
  roots: { from: 0, to: 0.24 },
  mids: { from: 0.24, to: 0.5 },
  lengths: { from: 0.5, to: 0.78 },
  ends: { from: 0.78, to: 1 },
};

/** Bowls on a stretch as one bar; no bowls where it was left out. */
type StrandBar = Stretch & { readonly bowls: readonly string[]; readonly where: string };

/** As much as is written beside a bar. */
const MOST_LETTERS = 13;

const WIDTH = 360;
const LEFT = 30;
const RIGHT = 272;
const HAIR = 30;
const ROW = 22;

const stretchesOf = ({ along, whole }: HeadPlace, noMids: boolean): Stretch[] => {
  if (along.length === 0) return whole ? [{ from: 0, to: 1 }] : [];
  // Where nobody speaks of mids, the lengths begin at the roots.
  return along.map((one) =>
    one === 'lengths' && noMids ? { ...STRETCHES.lengths, from: STRETCHES.mids.from } : STRETCHES[one],
  );
};

/** Stretches that meet are one. */
const merged = (stretches: readonly Stretch[]): Stretch[] => {
  const out: Stretch[] = [];
  for (const one of stretches.toSorted((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last !== undefined && one.from <= last.to)
      out[out.length - 1] = { from: last.from, to: Math.max(last.to, one.to) };
    else out.push(one);
  }
  return out;
};

const whereOf = ({ zone, along }: HeadPlace): string =>
  zone
    .split(' ')
    .filter((word) => !(along as readonly string[]).includes(word) && word !== 'all' && word !== 'full-head')
    .join(' ');

const onStrand = (places: readonly HeadPlace[], bowls: readonly string[], noMids: boolean): StrandBar[] =>
  [...new Set(places.map(whereOf))].flatMap((where) => {
    const stretches = places.filter((one) => whereOf(one) === where).flatMap((one) => stretchesOf(one, noMids));
    return merged(stretches).map((stretch) => ({ ...stretch, bowls, where }));
  });

const barsOf = ({ placed, left }: Placement): StrandBar[] => {
  const noMids = ![...placed, ...left].some(({ places }) => places.some(({ along }) => along.includes('mids')));
  return [
    ...placed.flatMap(({ places, bowls }) => onStrand(places, bowls, noMids)),
    ...left.flatMap(({ places }) => onStrand(places, [], noMids)),
  ];
};

const nameOf = ({ bowls, where }: StrandBar): string =>
  [bowls.length === 0 ? 'left out' : bowls.join('+'), where].filter((part) => part !== '').join(' ');

const barText = (bar: StrandBar): string => {
  const along = Object.entries(STRETCHES).filter(([, one]) => one.from < bar.to && one.to > bar.from);
  return `${nameOf(bar)}: ${along.length === 4 ? 'all along' : along.map(([name]) => name).join(' and ')}`;
};

const x = (share: number): number => LEFT + share * (RIGHT - LEFT);

const hair = (): string =>
  [
    path(`M${LEFT - 14} 6C${LEFT - 2} 20 ${LEFT - 2} 40 ${LEFT - 14} 54`, 'outline'),
    path(
      `M${LEFT - 5} ${HAIR - 4}C${x(0.3)} ${HAIR - 14} ${x(0.6)} ${HAIR + 4} ${x(1) + 6} ${HAIR}C${x(0.6)} ${HAIR + 8} ${x(0.3)} ${HAIR - 6} ${LEFT - 5} ${HAIR + 4}Z`,
      'one-hair',
    ),
  ].join('');

const scale = (bottom: number): string =>
  Object.entries(STRETCHES)
    .flatMap(([name, { from, to }]) => [
      label(x((from + to) / 2), 14, name, 'small', 'middle'),
      from === 0 ? '' : line(x(from), 18, x(from), bottom, 'rule'),
    ])
    .join('');

const drawBar = (id: string, marks: BowlMarks, bar: StrandBar, y: number): string => {
  const { from, to, bowls } = bar;
  const name = nameOf(bar);
  const short = name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1)}…` : name;
  const fill = bowls.length === 0 ? `url(#${id}-out)` : markFill(id, marks, bowls[0]);
  const box = { x: x(from), y, width: x(to) - x(from), height: 14, rx: 2, fill };
  const before = from > 0.3 && to > 0.7;
  return [
    element('rect', { ...box, class: bowls.length === 0 ? 'left-out' : 'stretch' }),
    before ? label(x(from) - 6, y + 12, short, 'tag', 'end') : label(x(to) + 6, y + 12, short, 'tag'),
  ].join('');
};

/** The strand of a visit; undefined when no line says a place along the hair, or all of it. */
export const strand = (id: string, marks: BowlMarks, placement: Placement): string | undefined => {
  const bars = barsOf(placement);
  if (bars.length === 0) return undefined;
  const bottom = HAIR + 18 + bars.length * ROW;
  const named = bars.flatMap(({ bowls }) => bowls);
  return picture(
    id,
    { title: 'Along the hair', says: bars.map(barText).join('; ') },
    [WIDTH, bottom],
    'along',
    markPatterns(id, marks, named),
    bars.some(({ bowls }) => bowls.length === 0) ? stroked(id) : '',
    scale(bottom - 4),
    hair(),
    ...bars.map((bar, index) => drawBar(id, marks, bar, HAIR + 16 + index * ROW)),
  );
};
