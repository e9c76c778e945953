import type { Journal } from '../../../src/journal/journal.ts';
import type { ShelfItem } from '../../../src/journal/shelf.ts';
import { type LiftPoint, liftCurve } from '../../../src/reckon/lift/curve.ts';
import { type LiftSeries, liftOf } from '../../../src/reckon/lift/series.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { clockText } from '../../../src/text/dates.ts';
import { stageDepth } from '../../../src/trade/stages.ts';
import { journalOf } from '../journal-of.ts';

export const SHELF = `product clay "Peregrine clay" lightener
  mix 1:2
  time 20-50 min from first-on, check every 10 min
product chalk "Gannet chalk" lightener
product dev-6 "Cream developer" developer 6%
product dev-9 "Cream developer" developer 9%
`;

/** A look as its minute and the stage seen. */
export type Look = readonly [minute: number, stage: string];

/** The lines of a visit that puts on bowl A at ten o'clock and takes it off at the last look. */
export const visitLines = (
  client: string,
  date: string,
  looks: readonly Look[],
  { zone = 'top', developer = 'dev-6', product = 'clay', more = '' } = {},
): string => {
  const at = (minute: number): string => clockText(600 + minute);
  return [
    `visit ${date} 10:00 ${client}`,
    `bowl A 30 ${product} + 60 ${developer}`,
    `on 10:00 A ${zone}`,
    ...looks.map(([minute, stage]) => `check ${at(minute)} A ${zone} ${stage}`),
    `off ${at(looks.at(-1)?.[0] ?? 30)} A`,
    ...(more === '' ? [] : [more]),
    '',
  ].join('\n');
};

export const journalWith = (...visits: readonly string[]): Journal => journalOf(`${SHELF}${visits.join('')}`);

export const liftIn = (journal: Journal): LiftSeries[] =>
  [...reckonAll(journal).values()].flat().flatMap((visit) => liftOf(visit));

/** The lift of notes, the shelf above among them. */
export const liftWith = (...visits: readonly string[]): LiftSeries[] => liftIn(journalWith(...visits));

/** The lift of one visit as text: `A top: 10 5, 20 7`. */
export const liftText = (lines: string): string[] =>
  liftIn(journalOf(`${SHELF}visit 2026-09-04 10:00 wren-abbott\n${lines}`)).map(
    ({ bowl, zone, curve }) =>
      `${bowl} ${zone === '' ? '-' : zone}: ${curve.map(({ minute, depth }) => `${minute} ${depth.toFixed(1)}`).join(', ')}`,
  );

/** The item of a shelf given as lines. */
export const itemOf = (lines: string, name = 'clay'): ShelfItem => {
  const item = journalOf(lines).shelf.get(name);
  if (item === undefined) throw new Error(`no ${name} on the shelf`);
  return item;
};

/** Looks as points of a curve: a stage, or two joined by ` to `. */
export const pointsOf = (looks: readonly Look[]): LiftPoint[] =>
  looks.map(([minute, seen]) => {
    const depths = seen.split(' to ').map((stage) => stageDepth(stage) ?? Number(stage));
    return { minute, low: Math.min(...depths), high: Math.max(...depths) };
  });

export const curveOf = (...looks: readonly Look[]): ReturnType<typeof liftCurve> => liftCurve(pointsOf(looks));
