import { UNIT_WORDS } from '../../notation/words.ts';
import { amountText, durationText, wordsText } from './figures.ts';
import { bowlsText, zonesText } from './names.ts';
import { type SaidFact, spaced } from './said.ts';
import { seenList } from './seen.ts';
import { clockText, periodText } from './times.ts';

/** A line without a time that begins with `12.25`, which is one there: noughts behind it make it a plain figure. */
const untimed = (line: string): string => line.replace(/^(~?\d{1,2}\.\d\d)(?!\d)/, (figure) => `${figure}00`);

/** `14:35-14:55 A hairline, top for 7min`, `T lengths last 2min` */
export const printOn = ({ period, bowls, zones, minutes, last }: SaidFact<'on'>): string =>
  spaced(
    period && periodText(period),
    bowlsText(bowls),
    zonesText(zones),
    minutes && `${last ? 'last' : 'for'} ${durationText(minutes)}`,
  );

/** `9:40` */
export const printZero = ({ time }: SaidFact<'zero'>): string => clockText(time);

export const printCheck = ({ period, bowls, seen }: SaidFact<'check'>): string =>
  spaced(period && periodText(period), untimed(spaced(bowlsText(bowls), seenList(seen))));

/** `15:15-15:20 A hairline x6 40min` */
export const printOff = ({ time, until, bowls, zones, claim, sections }: SaidFact<'off'>): string =>
  spaced(
    time && periodText({ from: time, to: until }),
    untimed(
      spaced(
        bowlsText(bowls),
        zonesText(zones),
        sections !== undefined && `x${sections}`,
        claim && durationText(claim),
      ),
    ),
  );

type Step = Omit<SaidFact<'wash'>, 'word'>;

/** `15:20-15:24 10min A roots 15 clarify` */
export const printStep = ({ period, minutes, amount, bowls, zones, words }: Step): string => {
  const much = amount && amountText(amount);
  // `wash 15.5 …` could be a time, and `15 in …` a length: such an amount stands last.
  const isLast = much !== undefined && (/[.]/.test(much) || UNIT_WORDS.has(words[0]?.word ?? ''));
  return spaced(
    period && periodText(period),
    untimed(
      spaced(
        minutes && durationText(minutes),
        bowlsText(bowls),
        zonesText(zones),
        !isLast && much,
        wordsText(words),
        isLast && much,
      ),
    ),
  );
};

/** `+18 A temples burning` */
export const printEvent = (event: Omit<SaidFact<'reaction' | 'stopped'>, 'word'>): string => {
  const { time, bowls, zones, words } = event;
  return spaced(time && clockText(time), bowlsText(bowls), zonesText(zones), wordsText(words));
};
