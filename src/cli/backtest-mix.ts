import { backtestMix } from '../reckon/forecast/backtest.ts';
import { needsOf } from '../reckon/forecast/need.ts';
import { reckonAll } from '../reckon/visit.ts';
import type { BacktestOptions } from './backtest.ts';
import { mixTable } from './backtest-mix-table.ts';
import { openJournal } from './open-journal.ts';
import { print, printJson } from './print.ts';

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** `bowlbook backtest mix`: grams wasted and bowls run short by the forecast, beside the same as last time. */
export const backtestMixOf = (paths: readonly string[], { others, json }: BacktestOptions): number => {
  const { journal, unreadable } = openJournal(paths);
  const needs = [...reckonAll(journal).values()]
    .flat()
    .flatMap(needsOf)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const found = backtestMix(needs, others ? 'others' : 'before');
  if (json) {
    const cases = found.cases.map(({ needed, forecast, lastTime, ...bowl }) => ({
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
    }));
    printJson({ ...found, cases });
  } else print(mixTable(found));
  return unreadable.length > 0 ? 2 : 0;
};
