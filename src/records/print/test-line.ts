import { partsText } from './component.ts';
import { durationText, shadeText, wordsText } from './figures.ts';
import { type SaidFact, spaced } from './said.ts';
import { shownText } from './seen.ts';
import { clockText } from './times.ts';

/** What skin showed: words first, and no stage or depth. */
const skinText = (result: SaidFact<'test'>['result']): string =>
  result.map(({ words, zones }) => spaced(wordsText(words), ...zones.map(({ zone }) => zone))).join(' ');

/** `skin 2026-09-01 11:00 cream, gloss read 2026-09-03 11:30 clear`, `strand 2 clay + 4 dev-6 25min gold` */
export const printTest = (fact: SaidFact<'test'>): string => {
  const { test, date, time, products, shades, mix, minutes, read, readDate, readTime, result, notNeeded } = fact;
  return spaced(
    test.name,
    date?.date,
    time && clockText(time),
    products.map(({ name }) => name).join(', '),
    shades?.map(shadeText).join(' '),
    mix && partsText(mix),
    minutes && durationText(minutes),
    notNeeded && 'not-needed',
    read && 'read',
    readDate?.date,
    readTime && clockText(readTime),
    test.name === 'skin' ? skinText(result) : shownText(result),
  );
};
