import { hairQualityOf, isHairQualityOf } from '../bind/client-lines.ts';
import { durationText, whenText, wordsText, wordText } from './figures.ts';
import { zonesText } from './names.ts';
import { freeText } from './quoted.ts';
import { type SaidFact, spaced } from './said.ts';
import { greyText, seenList } from './seen.ts';

export const printBorn = ({ when }: SaidFact<'born'>): string => whenText(when);

export const printNatural = ({ seen }: SaidFact<'natural'>): string => seenList(seen);

export const printGrey = ({ parts }: SaidFact<'grey'>): string => greyText(parts);

/** A word that tells its quality by itself stands alone, unless it would be taken for one of the quality before it. */
export const printHair = ({ qualities }: SaidFact<'hair'>): string =>
  qualities
    .map(({ quality, words, zones }, index) => {
      const before = qualities[index - 1]?.quality.word;
      const [only, ...more] = words;
      const tells =
        only !== undefined &&
        more.length === 0 &&
        only.about === quality.about &&
        hairQualityOf(only.word) === quality.word &&
        (before === undefined || !isHairQualityOf(before, only.word));
      return spaced(!tells && wordText(quality), wordsText(words), zonesText(zones));
    })
    .join(', ');

export const printPattern = ({ zones }: SaidFact<'pattern'>): string => zonesText(zones);

export const printHistory = ({ when, kinds, zones }: SaidFact<'history'>): string =>
  spaced(when && whenText(when), wordsText(kinds), zonesText(zones));

export const printAllergy = ({ to }: SaidFact<'allergy'>): string => wordsText(to);

/** The text, and `until` with a date as the last two words. A text that only looks as if it ended so is in marks. */
export const printCaution = ({ text, until, by }: SaidFact<'caution'>): string => {
  if (until !== undefined) return spaced(freeText(text, undefined), `until ${whenText(until)}`);
  if (by !== undefined || !/(?:^|\s)until \d{4}(?:-\d\d)?(?:-\d\d)?$/i.test(text)) return freeText(text, by);
  return /["“”]/.test(text) ? `«${text}»` : `"${text}"`;
};

export const printAvoid = ({ what }: SaidFact<'avoid'>): string => wordsText(what);

export const printConsent = ({ what, date }: SaidFact<'consent'>): string => spaced(wordsText(what), date?.date);

export const printLetter = ({ date }: SaidFact<'letter'>): string => date?.date ?? '';

/** `lightener from 2026-09-15 to 2027-01`, `oxidative 4w`, `dye to letter` */
export const printHold = ({ what, from, until, length, untilLetter }: SaidFact<'hold'>): string =>
  spaced(
    what.name,
    from && `from ${whenText(from)}`,
    until && `to ${whenText(until)}`,
    length && durationText(length),
    untilLetter && 'to letter',
  );

export const printBecause = ({ rule }: SaidFact<'because'>): string => rule.name;
