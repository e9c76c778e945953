import type { VisitReckoned } from '../../reckon/model.ts';
import { type BowlMarks, bowlMarks, markFill, markPatterns, stroked } from './bowl-marks.ts';
import { colourOf } from './look-colour.ts';
import { lookInShort } from './look-words.ts';
import { element, label, line, type Point, path, picture, through, widthOf } from './svg.ts';
import { drawAxis, type TimeAxis, timeAxis } from './time-axis.ts';
import { rowText, type TimelineRow, timelineEvents, timelineRows } from './timeline-rows.ts';

/** The course of a visit: a bar for every bowl and place, from the first touch to the rinse. */

type Shape = {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  /** From the top of a row to its bar, and to the next row. */
  readonly bar: number;
  readonly row: number;
  /** The name stands beside the bar, or above it. */
  readonly beside: boolean;
};

const WIDE: Shape = { width: 720, left: 168, right: 660, bar: 6, row: 46, beside: true };
const NARROW: Shape = { width: 320, left: 20, right: 300, bar: 21, row: 60, beside: false };

const TALL = 18;
const TOP = 20;

type Sheet = { readonly id: string; readonly marks: BowlMarks; readonly axis: TimeAxis; readonly shape: Shape };

/** The bar: a slope while it is put on, full height while it takes, open at the end when nobody noted the rinse. */
const barOf = ({ run }: TimelineRow, { id, marks, axis }: Sheet, y: number): string => {
  const { firstOn, allOn, off } = run;
  const end = Math.max(allOn, off ?? axis.to);
  const shape: Point[] = [
    [axis.x(firstOn), y + TALL],
    [axis.x(firstOn), y + (run.spanned ? TALL - 3 : 0)],
    [axis.x(allOn), y],
    [axis.x(end), y],
    [axis.x(end), y + TALL],
  ];
  const open = off === undefined ? ' open' : '';
  return [
    element('path', { d: through(shape, true), fill: markFill(id, marks, run.bowl), class: `bar${open}` }),
    off === undefined ? '' : line(axis.x(off), y - 4, axis.x(off), y + TALL + 4, 'off-mark'),
  ].join('');
};

const isPast = ({ run, wanted }: TimelineRow): boolean =>
  wanted !== undefined && run.off !== undefined && run.off > wanted.to;

const pastOf = ({ run, wanted }: TimelineRow, { id, axis }: Sheet, y: number): string => {
  if (wanted === undefined || run.off === undefined || run.off <= wanted.to) return '';
  const [x, end] = [axis.x(wanted.to), axis.x(run.off)];
  return element('rect', { x, y: y - 3, width: end - x, height: TALL + 6, fill: `url(#${id}-out)`, class: 'past' });
};

/** The span that the shelf gives, as a measure under the bar. */
const wantedOf = ({ wanted }: TimelineRow, { axis }: Sheet, y: number): string => {
  if (wanted === undefined) return '';
  const under = y + TALL + 4;
  const [from, to] = [wanted.from, Math.min(wanted.to, axis.to)].map(axis.x);
  if (from === undefined || to === undefined || wanted.from > axis.to) return '';
  const end = wanted.to <= axis.to ? line(to, under - 3, to, under + 3, 'wanted') : '';
  return line(from, under - 3, from, under + 3, 'wanted') + line(from, under, to, under, 'wanted') + end;
};

const heatOf = ({ heat }: TimelineRow, { axis }: Sheet, y: number): string =>
  heat
    .map(({ from, to }) => {
      const [x, end] = [axis.x(from), axis.x(to)];
      const waves = Math.max(1, Math.round((end - x) / 8));
      const step = (end - x) / waves;
      const curve = Array.from(
        { length: waves },
        () => `q${(step / 4).toFixed(1)} -5 ${(step / 2).toFixed(1)} 0t${(step / 2).toFixed(1)} 0`,
      );
      return path(`M${x.toFixed(1)} ${y - 2}${curve.join('')}`, 'heat');
    })
    .join('');

const SMALL = 12;

/** Looks as pips on the bar, coloured as what was seen; what was seen in words beneath where there is room. */
const looksOf = ({ run }: TimelineRow, { axis, shape }: Sheet, y: number): string => {
  let free = -Infinity;
  return run.checks
    .map((look) => {
      if (look.at === undefined) return '';
      const x = axis.x(look.at);
      const fill = look.seen.map(colourOf).find((colour) => colour !== undefined);
      const pip = element('circle', {
        cx: x,
        cy: y + TALL / 2,
        r: 6,
        class: 'pip',
        ...(fill !== undefined && { fill }),
      });
      const said = lookInShort(look);
      const wide = widthOf(said, SMALL);
      const start = Math.max(shape.left, Math.min(x - wide / 2, shape.width - wide - 2));
      if (said === '' || start < free) return pip;
      free = start + wide + 6;
      return pip + label(start, y + TALL + 17, said, 'small');
    })
    .join('');
};

const nameOf = ({ name, run }: TimelineRow, { shape }: Sheet, top: number): string => {
  const told = run.sections?.most ?? run.fromFirst ?? run.told;
  const more = run.sections?.untold ? ' or more' : '';
  const minutes = told === undefined ? 'off not noted' : `${told} min${more}`;
  const bowl = run.bowl ?? '';
  const rest = bowl === '' ? name : run.zone;
  if (!shape.beside) {
    return [
      label(0, top + 14, bowl, 'bowl'),
      label(bowl === '' ? 0 : widthOf(bowl, 16) + 8, top + 14, rest),
      label(shape.width, top + 14, minutes, 'said', 'end'),
    ].join('');
  }
  const room = Math.floor((shape.left - 34) / (14 * 0.56));
  const short = rest.length > room ? `${rest.slice(0, room - 1)}…` : rest;
  return [
    label(0, top + shape.bar + 14, bowl, 'bowl'),
    label(bowl === '' ? 0 : 24, top + shape.bar + 14, short),
    label(shape.right + 8, top + shape.bar + 14, told === undefined ? 'no off' : minutes),
  ].join('');
};

const eventsOf = (visit: VisitReckoned, { axis }: Sheet, bottom: number): string =>
  timelineEvents(visit)
    .map(({ at, says }) => {
      const x = Math.min(axis.x(Math.max(at, axis.from)), axis.x(axis.to));
      const anchor = x > (axis.x(axis.from) + axis.x(axis.to)) / 2 ? 'end' : 'start';
      return line(x, 4, x, bottom, 'event') + label(anchor === 'end' ? x - 5 : x + 5, 14, says, 'event-said', anchor);
    })
    .join('');

const drawn = (id: string, visit: VisitReckoned, rows: readonly TimelineRow[], shape: Shape): string => {
  const minutes = rows.flatMap(({ run, wanted }) => [
    run.firstOn,
    run.allOn,
    ...run.checks.flatMap(({ at }) => (at === undefined ? [] : [at])),
    run.off ?? wanted?.to ?? run.allOn + 10,
  ]);
  const axis = timeAxis(Math.min(...minutes), Math.max(...minutes), shape.left, shape.right);
  const marks = bowlMarks(visit);
  const sheet: Sheet = { id, marks, axis, shape };
  const bottom = TOP + rows.length * shape.row;
  const bars = rows.map((row, index) => {
    const top = TOP + index * shape.row;
    const y = top + shape.bar;
    return [nameOf, barOf, pastOf, wantedOf, heatOf, looksOf]
      .map((draw) => draw(row, sheet, draw === nameOf ? top : y))
      .join('');
  });
  return picture(
    id,
    { title: 'Times on the clock', says: rows.map(rowText).join('. ') },
    [shape.width, bottom + 22],
    `timeline ${shape.beside ? 'wide' : 'narrow'}`,
    markPatterns(
      id,
      marks,
      rows.map(({ run }) => run.bowl),
    ),
    rows.some(isPast) ? stroked(id) : '',
    drawAxis(axis, TOP - 4, bottom),
    ...bars,
    eventsOf(visit, sheet, bottom),
  );
};

/** What the marks mean, of those that are drawn. */
const keyOf = (rows: readonly TimelineRow[]): string => {
  const some = (has: (row: TimelineRow) => boolean): boolean => rows.some(has);
  return [
    some(({ run }) => run.spanned) && 'Slope: being put on.',
    some(({ run }) => run.off !== undefined) && 'Thick end: off.',
    some(({ run }) => run.off === undefined) && 'Broken edge: off not noted.',
    some(({ run }) => run.checks.some(({ at }) => at !== undefined)) && 'Pip: looked at.',
    some(({ wanted }) => wanted !== undefined) && 'Line beneath: the shelf’s time.',
    some(isPast) && 'Strokes: past the shelf’s time.',
    some(({ heat }) => heat.length > 0) && 'Wave: heat.',
    'Figures at the right: minutes from first on.',
  ]
    .filter((part) => part !== false)
    .join(' ');
};

/** The timeline of a visit, drawn for a wide and for a narrow page; undefined when nothing stands on its clock. */
export const timeline = (id: string, visit: VisitReckoned, earlier: readonly VisitReckoned[]): string | undefined => {
  const rows = timelineRows(visit, earlier);
  if (rows.length === 0) return undefined;
  const pictures = [WIDE, NARROW].map((shape) => drawn(`${id}-${shape.beside ? 'w' : 'n'}`, visit, rows, shape));
  return `<figure class="figure">${pictures.join('')}<figcaption>${keyOf(rows)}</figcaption></figure>`;
};
