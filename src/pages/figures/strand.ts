import type { HeadPlace } from '../../reckon/head-places.ts';
import type { Placement } from '../../reckon/placement.ts';
import type { Along } from '../../trade/zones.ts';
import { type BowlMarks, markFill, markPatterns } from './bowl-marks.ts';
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

/** A bowl on a stretch, as one bar. */
type StrandBar = Stretch & { readonly bowls: readonly string[]; readonly where: string };

const WIDTH = 360;
const LEFT = 30;
const RIGHT = 300;
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

const barsOf = ({ placed }: Placement): StrandBar[] => {
  const noMids = !placed.some(({ places }) => places.some(({ along }) => along.includes('mids')));
  return placed.flatMap(({ places, bowls }) => {
    const names = [...new Set(places.map(whereOf))];
    return names.flatMap((where) =>
      merged(places.filter((one) => whereOf(one) === where).flatMap((one) => stretchesOf(one, noMids))).map(
        (stretch) => ({
          ...stretch,
          bowls,
          where,
        }),
      ),
    );
  });
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

/** The strand of a visit; undefined when no line says a place along the hair, or all of it. */
export const strand = (id: string, marks: BowlMarks, placement: Placement): string | undefined => {
  const bars = barsOf(placement);
  if (bars.length === 0) return undefined;
  const bottom = HAIR + 18 + bars.length * ROW;
  const says = bars
    .map(({ bowls, where, from, to }) => {
      const along = Object.entries(STRETCHES).filter(([, one]) => one.from < to && one.to > from);
      const reach = along.length === 4 ? 'all along' : along.map(([name]) => name).join(' and ');
      return `${bowls.join(' and ')}${where === '' ? '' : ` ${where}`}: ${reach}`;
    })
    .join('; ');
  return picture(
    id,
    { title: 'Along the hair', says },
    [WIDTH, bottom],
    'along',
    markPatterns(
      id,
      marks,
      bars.flatMap(({ bowls }) => bowls),
    ),
    scale(bottom - 4),
    hair(),
    ...bars.flatMap(({ bowls, where, from, to }, index) => {
      const y = HAIR + 16 + index * ROW;
      const name = `${bowls.join('+')}${where === '' ? '' : ` ${where}`}`;
      const width = x(to) - x(from);
      const text = to > 0.7 ? label(x(from) - 6, y + 12, name, 'tag', 'end') : label(x(to) + 6, y + 12, name, 'tag');
      const inside = from < 0.3 && to > 0.7;
      return [
        element('rect', {
          x: x(from),
          y,
          width,
          height: 14,
          rx: 2,
          fill: markFill(id, marks, bowls[0]),
          class: 'stretch',
        }),
        inside ? label(x(to) + 6, y + 12, name, 'tag') : text,
      ];
    }),
  );
};
