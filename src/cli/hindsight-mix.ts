import { hindsightMix } from '../reckon/forecast/hindsight.ts';
import { needsOf } from '../reckon/forecast/need.ts';
import { ended, failedJson, leftOutLines, openReckoned } from './failed-clients.ts';
import { mixTable } from './hindsight-mix-table.ts';
import type { HindsightOptions } from './hindsight-options.ts';
import { deliverJson } from './output.ts';
import { print } from './print.ts';

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** `bowlbook hindsight mix`: grams wasted and bowls run short by the forecast, beside the same as last time. */
export const hindsightMixOf = (paths: readonly string[], { others, json }: HindsightOptions): number => {
  const { unreadable, all, faults } = openReckoned(paths);
  const needs = [...all.values()]
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
    deliverJson({ ...found, cases, ...failedJson(faults) });
  } else print([...leftOutLines(faults), mixTable(found)].join('\n\n'));
  return ended({ faults, unreadable });
};
