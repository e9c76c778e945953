import { amountText, durationText, numberText, wordText } from './figures.ts';
import { zonesText } from './names.ts';
import { type SaidFact, spaced } from './said.ts';
import { periodText } from './times.ts';

export const printMoney = ({ currency }: SaidFact<'money'>): string => currency.name.toUpperCase();

export const printScale = ({ step }: SaidFact<'scale'>): string => amountText(step);

export const printHours = ({ from, to }: SaidFact<'hours'>): string => periodText({ from, to });

/** Millimetres in a unit of length, and days in a unit of time, in which a rate may have been given. */
const RATES = [
  ['mm/d', 1, 1],
  ['cm/mo', 10, 30.4375],
  ['mm/mo', 1, 30.4375],
  ['mm/w', 1, 7],
  ['cm/w', 10, 7],
] as const;

/** In the units in which the rate has fewest figures: what was typed as `1.1 cm/mo` is no round number a day. */
export const printGrowth = ({ rate }: SaidFact<'growth'>): string => {
  for (const [unit, length, days] of RATES) {
    const typed = Math.round(((rate * days) / length) * 1e4) / 1e4;
    if ((typed * length) / days === rate) return `${numberText(typed)} ${unit}`;
  }
  return `${numberText(rate)} mm/d`;
};

/** Figures first; `every` stands before the last length of time, which is the interval. */
export const printPolicy = ({ topic, words, numbers, durations }: SaidFact<'policy'>): string => {
  const every = words.findIndex(({ word }) => word === 'every');
  const lengths = durations.map((one) => durationText(one));
  const interval = every < 0 ? undefined : lengths.pop();
  return spaced(
    topic.name,
    ...numbers.map(numberText),
    ...lengths,
    ...words.flatMap((word, index) => [wordText(word), index === every ? interval : undefined]),
  );
};

/** `half-head top, crown, sides`; where it is, in words, is the remark of the line. */
export const printZone = ({ zone, zones }: SaidFact<'zone'>): string => spaced(zone.name, zonesText(zones));
