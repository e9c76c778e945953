import { amountText, durationText, shadeText, whenText, wordsText } from './figures.ts';
import { zonesText } from './names.ts';
import { type SaidFact, spaced } from './said.ts';
import { clockText } from './times.ts';

export const printAsked = ({ about, answer }: SaidFact<'asked'>): string => spaced(wordsText(about), answer);

export const printRegrowth = ({ length, zones }: SaidFact<'regrowth'>): string =>
  spaced(amountText(length), zonesText(zones));

export const printLeave = ({ zones }: SaidFact<'leave'>): string => zonesText(zones);

export const printDeclined = ({ what }: SaidFact<'declined'>): string => wordsText(what);

export const printFit = ({ amount, product, shade }: SaidFact<'fit'>): string =>
  spaced(amount && amountText(amount), product?.name, shade && shadeText(shade));

export const printRedo = ({ date }: SaidFact<'redo'>): string => date.date;

export const printAbout = ({ date, zones }: SaidFact<'about'>): string => spaced(date.date, zonesText(zones));

export const printCall = ({ date, time }: SaidFact<'call'>): string => spaced(date?.date, time && clockText(time));

/** `6-8w roots, A -20%`, `from 2026-12-02`: what is to change is kept in the words that were typed. */
export const printNext = ({ from, wait, date, month, time, changes }: SaidFact<'next'>): string =>
  spaced(
    from && 'from',
    month && whenText(month),
    wait && durationText(wait),
    date?.date,
    time && clockText(time),
    changes.map(({ text }) => text).join(', '),
  );
