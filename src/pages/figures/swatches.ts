import { liftOf } from '../../reckon/lift/series.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { Seen } from '../../records/schema/values.ts';
import { UNDERCOAT } from '../../trade/depth.ts';
import { stageSwatch } from '../../trade/swatch.ts';
import { shownText } from '../escape.ts';
import { htmlText } from '../html-text.ts';
import { depthText } from '../say-numbers.ts';
import { colourOf } from './look-colour.ts';
import { element, path, picture } from './svg.ts';

/** Hair as drawn: natural, as found, lightened, and what came of it. Always an illustration, never a measurement. */

/** A swatch: what it stands for, what the note says, and the colour it is drawn with. */
export type Swatch = { readonly of: string; readonly says: string; readonly colour: string };

const swatchOf = (of: string, seen: Seen): Swatch | undefined => {
  const { depth, stage, zones, words } = seen;
  const where = zones.map(({ zone }) => zone).join(', ');
  const said = [where, depth && depthText(depth), stage?.stage, ...words.map(({ word }) => word)];
  const says = said.filter((part) => part !== undefined && part !== '').join(' ');
  const colour = colourOf(seen);
  return colour === undefined ? undefined : { of, says, colour };
};

/** No more than so many of a kind: a card is glanced at. */
const MOST = 3;

const swatchesOf = (of: string, all: readonly Seen[]): Swatch[] =>
  all.flatMap((seen) => swatchOf(of, seen) ?? []).slice(0, MOST);

const naturalOf = ({ client }: VisitReckoned): Seen[] =>
  client.entries.flatMap(({ entry }) => entry.facts.flatMap((fact) => (fact.word === 'natural' ? fact.seen : [])));

const seenIn = ({ visit }: VisitReckoned, word: 'start' | 'result'): Seen[] =>
  visit.entry.facts.flatMap((fact) => (fact.word === word ? fact.seen : []));

/** The last stage looked at, bowl and place by bowl and place, each stage once. */
const lastLooks = (visit: VisitReckoned): Swatch[] => {
  const last = liftOf(visit).flatMap(({ looks, bowl, zone }) => {
    const seen = looks.at(-1)?.seen;
    const of = seen && swatchOf('undercoat', { ...seen, zones: [] });
    return of === undefined ? [] : [{ ...of, says: `${of.says}, ${zone === '' ? bowl : zone}` }];
  });
  return last.filter(({ colour }, index) => last.findIndex((one) => one.colour === colour) === index).slice(0, MOST);
};

const mostDepth = (all: readonly Seen[]): number | undefined => {
  const depths = all.flatMap(({ depth }) => (depth === undefined ? [] : [depth.to ?? depth.value]));
  return depths.length === 0 ? undefined : Math.max(...depths);
};

/** The undercoat that the chart gives for the depth reached, where hair went up and nobody noted a stage. */
const chartUndercoat = (start: readonly Seen[], result: readonly Seen[]): Swatch[] => {
  const [from, to] = [mostDepth(start), mostDepth(result)];
  if (from === undefined || to === undefined || to <= from) return [];
  const depth = Math.min(10, Math.floor(to));
  const { stage, seen } = UNDERCOAT[depth] ?? {};
  const colour = stage === undefined ? undefined : stageSwatch(stage);
  return colour === undefined || seen === undefined
    ? []
    : [{ of: 'undercoat', says: `${seen}, by the chart at depth ${depth}`, colour }];
};

/** The undercoat to reckon with, by the chart; none where a stage was noted or nothing was lifted. */
export const chartUndercoatOf = (visit: VisitReckoned): Swatch[] =>
  lastLooks(visit).length > 0 ? [] : chartUndercoat(seenIn(visit, 'start'), seenIn(visit, 'result'));

/** The swatches of a visit, in the order hair goes through them. */
export const swatchesOfVisit = (visit: VisitReckoned): Swatch[] => {
  const [start, result] = [seenIn(visit, 'start'), seenIn(visit, 'result')];
  const looks = lastLooks(visit);
  return [
    ...swatchesOf('natural', naturalOf(visit)).slice(0, 1),
    ...swatchesOf('found', start),
    ...looks,
    ...chartUndercoatOf(visit),
    ...swatchesOf('result', result),
  ];
};

const WIDTH = 120;
const HEIGHT = 46;

/** A lock of hair, lying: our own drawing. */
const LOCK = 'M4 12C24 2 58 4 84 10C100 14 110 22 117 34C100 30 88 34 70 38C44 44 18 40 4 34C7 26 7 20 4 12Z';
const STRANDS = [
  'M5 17C30 9 60 10 84 16C98 20 108 26 114 32',
  'M6 23C32 18 62 19 86 23C97 25 106 29 113 33',
  'M5 29C30 27 58 29 90 30',
];

const lock = (id: string, { of, says, colour }: Swatch): string =>
  picture(
    id,
    { title: `Illustration: ${of}`, says },
    [WIDTH, HEIGHT],
    'lock',
    element('path', { d: LOCK, fill: colour, class: 'hair' }),
    ...STRANDS.map((strand) => path(strand, 'strand')),
  );

export const ILLUSTRATION =
  'Illustration: drawn from the depths, stages and tones noted. No measurement and no promise of a colour.';

/** The swatches of a visit side by side; undefined when no depth and no stage was noted. */
export const swatchFigure = (id: string, visit: VisitReckoned): string | undefined => {
  const swatches = swatchesOfVisit(visit);
  if (swatches.length === 0) return undefined;
  const items = swatches.map(
    (one, index) =>
      `<li>${lock(`${id}-${index + 1}`, one)}<b>${htmlText(one.of)}</b> ${htmlText(shownText(one.says))}</li>`,
  );
  return `<figure class="figure"><ul class="locks">${items.join('')}</ul><figcaption>${ILLUSTRATION}</figcaption></figure>`;
};
