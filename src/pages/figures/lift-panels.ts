import type { LiftLook, LiftSeries } from '../../reckon/lift/series.ts';
import { STAGES, stageDepth } from '../../trade/stages.ts';
import { stageSwatch } from '../../trade/swatch.ts';
import { seenInShort } from './look-words.ts';
import { element, label, line, type Point, path, picture, through } from './svg.ts';

/** The course of lift: a panel for every bowl and place, all on one scale, so that they are read against each other. */

const WIDTH = 232;
const HEIGHT = 172;
const LEFT = 92;
const RIGHT = 222;
const TOP = 30;
const BOTTOM = 146;
const SMALL = 'small';

type Scale = {
  readonly x: (minute: number) => number;
  readonly y: (depth: number) => number;
  readonly minutes: number;
};

/** The depths that the panels show: from the darkest one looked at, or wanted, to pale yellow. */
const scaleOf = (series: readonly LiftSeries[]): Scale & { readonly low: number } => {
  const lowest = Math.min(...series.flatMap(({ curve }) => curve.map(({ least }) => least)));
  const low = Math.max(1, Math.min(7, Math.floor(lowest) - 1));
  const last = Math.max(
    10,
    ...series.flatMap(({ looks, off, firstOn }) => [...looks.map(({ minute }) => minute), (off ?? firstOn) - firstOn]),
  );
  const minutes = Math.ceil(last / 10) * 10;
  return {
    low,
    minutes,
    x: (minute) => LEFT + (minute / minutes) * (RIGHT - LEFT),
    y: (depth) => BOTTOM - ((depth - low) / (10 - low)) * (BOTTOM - TOP),
  };
};

/** Stages by the depth they show at, where no other stands on the same one. */
const RUNGS = STAGES.flatMap((stage) => {
  const depth = stageDepth(stage);
  return depth === undefined || stage === 'white' || stage === 'red-brown' ? [] : [{ stage, depth }];
});

/** The stages as a ladder at the left: a swatch and a word for each. */
const ladder = ({ y }: Scale, low: number): string => {
  const shown = RUNGS.filter(({ depth }) => depth >= low);
  return shown
    .flatMap(({ stage, depth }, index) => {
      const next = shown[index + 1]?.depth ?? 10;
      const before = shown[index - 1]?.depth ?? low;
      const [top, bottom] = [y((depth + next) / 2), y((depth + before) / 2)];
      const fill = stageSwatch(stage);
      return [
        element('rect', {
          x: LEFT - 9,
          y: top,
          width: 7,
          height: Math.max(1, bottom - top),
          ...(fill !== undefined && { fill }),
        }),
        line(LEFT - 2, y(depth), RIGHT, y(depth), 'rule'),
        label(LEFT - 13, y(depth) + 4, stage.replace('pale-', 'pale '), SMALL, 'end'),
      ];
    })
    .join('');
};

const bandOf = ({ curve }: LiftSeries, { x, y }: Scale): string => {
  if (curve.length < 2) return '';
  const upper = curve.map(({ minute, most }): Point => [x(minute), y(Math.min(10, most))]);
  const lower = curve.toReversed().map(({ minute, least }): Point => [x(minute), y(least)]);
  return path(through([...upper, ...lower], true), 'band');
};

/** A look: a bar where what was seen can mean several depths, and a point at what was seen. */
const lookOf = ({ minute, low, high }: LiftLook, { x, y }: Scale): string => {
  const at = x(minute);
  if (low === high) return element('circle', { cx: at, cy: y(low), r: 4, class: 'look' });
  const [top, bottom] = [y(Math.min(10, high)), y(low)];
  return [
    line(at, top, at, bottom, 'span'),
    line(at - 4, top, at + 4, top, 'span'),
    line(at - 4, bottom, at + 4, bottom, 'span'),
  ].join('');
};

const minuteMarks = ({ x, minutes }: Scale): string => {
  const step = minutes > 60 ? 30 : minutes > 30 ? 20 : 10;
  return Array.from({ length: Math.floor(minutes / step) + 1 }, (_, index) => index * step)
    .map(
      (minute) =>
        line(x(minute), BOTTOM, x(minute), BOTTOM + 4, 'axis') +
        label(x(minute), BOTTOM + 18, `${minute}`, SMALL, 'middle'),
    )
    .join('');
};

const offOf = ({ off, firstOn }: LiftSeries, { x }: Scale): string => {
  if (off === undefined) return '';
  const at = x(off - firstOn);
  return line(at, TOP, at, BOTTOM, 'off-line');
};

/** What a panel shows, in words: `A hairline: orange at 10 min, gold at 20 min; off at 40 min`. */
export const seriesText = ({ bowl, zone, looks, off, firstOn }: LiftSeries): string => {
  const name = zone === '' ? bowl : `${bowl} ${zone}`;
  const seen = looks.map(({ seen: one, minute }) => `${seenInShort(one)} at ${minute} min`).join(', ');
  return `${name}: ${seen}${off === undefined ? '' : `; off at ${off - firstOn} min`}`;
};

const panel = (id: string, one: LiftSeries, scale: Scale & { readonly low: number }): string => {
  const drawn = one.curve.map(({ minute, depth }): Point => [scale.x(minute), scale.y(Math.min(10, depth))]);
  const zone = one.zone === '' ? 'all of it' : one.zone;
  const short = zone.length > 20 ? `${zone.slice(0, 19)}…` : zone;
  return picture(
    id,
    { title: `Lift of ${one.zone === '' ? `bowl ${one.bowl}` : `${one.bowl} ${one.zone}`}`, says: seriesText(one) },
    [WIDTH, HEIGHT],
    'lift',
    label(LEFT - 9, 18, one.bowl, 'bowl'),
    label(LEFT + 8 + one.bowl.length * 6, 18, short),
    ladder(scale, scale.low),
    bandOf(one, scale),
    offOf(one, scale),
    drawn.length > 1 ? path(through(drawn), 'curve') : '',
    ...one.looks.map((look) => lookOf(look, scale)),
    line(LEFT - 2, BOTTOM, RIGHT, BOTTOM, 'axis'),
    minuteMarks(scale),
  );
};

/** The panels of a visit's lift; undefined when nothing that lifts was looked at. */
export const liftFigure = (id: string, series: readonly LiftSeries[]): string | undefined => {
  if (series.length === 0) return undefined;
  const scale = scaleOf(series);
  const panels = series.map((one, index) => panel(`${id}-${index + 1}`, one, scale));
  const key =
    'Minutes from first on. Point: what was seen; bar: what it can mean; line and shade: the course between; broken line: off. Colours of the stages are an illustration.';
  return `<figure class="figure"><div class="panels">${panels.join('')}</div><figcaption>${key}</figcaption></figure>`;
};
