import { hindsightMix } from '../reckon/forecast/hindsight.ts';
import { needsOf } from '../reckon/forecast/need.ts';
import { reckonAll } from '../reckon/visit.ts';
import type { HindsightOptions } from './hindsight.ts';
import { mixTable } from './hindsight-mix-table.ts';
import { openJournal } from './open-journal.ts';
import { print, printJson } from './print.ts';

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** `bowlbook hindsight mix`: grams wasted and bowls run short by the forecast, beside the same as last time. */
export const hindsightMixOf = (paths: readonly string[], { others, json }: HindsightOptions): number => {
  const { journal, unreadable } = openJournal(paths);
  const needs = [...reckonAll(journal).values()]
    .flat()
    .flatMap(needsOf)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const found = hindsightMix(needs, others ? 'others' : 'before');
  if (json) {
    const cases = found.cases.map(({ needed, forecast, lastTime, price, ...bowl }) => ({
      ...bowl,
      needed: tenths(needed),
      forecast: {
        mix: tenths(forecast.mix),
        need: tenths(forecast.need),
        low: tenths(forecast.low),
        high: tenths(forecast.high),
        bowls: forecast.bowls,
      },
      lastTime: tenths(lastTime),
      ...(price !== undefined && { minorUnitsAGram: Math.round(price * 1000) / 1000 }),
    }));
    printJson({ ...found, cases });
  } else print(mixTable(found));
  return unreadable.length > 0 ? 2 : 0;
};
