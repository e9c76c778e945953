import type { Check, Heat, Off, On, Reaction, Wash } from '../records/schema/visit.ts';
import { commas, type Noted, spaced, typedWords } from './noted.ts';
import { bowlsText } from './place-words.ts';
import { amountText, counted, durationText, periodText, timeText } from './say-numbers.ts';
import { allSeen, zonesText } from './seen.ts';

/** What the clock lines of a visit say, in words. */

type Step = Omit<Wash, 'word'> | Omit<Heat, 'word'>;

const where = (fact: Pick<Wash, 'bowls' | 'zones'>): string => spaced([bowlsText(fact.bowls), zonesText(fact.zones)]);

/** `15:20–15:24, A, hairline, 15 g clarify, 5 minutes` */
export const stepText = (noted: Noted, fact: Step): string =>
  commas([
    fact.period && periodText(fact.period, noted.salon.hours),
    where(fact),
    spaced([
      'amount' in fact && fact.amount !== undefined && amountText(fact.amount),
      typedWords(noted, fact, fact.words),
    ]),
    fact.minutes && durationText(fact.minutes),
  ]);

export const onText = (noted: Noted, { period, minutes, last, ...fact }: On): string =>
  commas([
    period && periodText(period, noted.salon.hours),
    where(fact),
    minutes &&
      (last
        ? `pulled through for the last ${durationText(minutes)}`
        : `${period === undefined ? '' : 'meant '}for ${durationText(minutes)}`),
  ]);

export const checkText = (noted: Noted, fact: Check): string =>
  commas([
    fact.period && periodText(fact.period, noted.salon.hours),
    spaced([bowlsText(fact.bowls), allSeen(noted, fact, fact.seen)]),
  ]);

export const offText = (noted: Noted, { time, until, claim, sections, ...fact }: Off): string =>
  commas([
    time &&
      (until === undefined
        ? timeText(time, noted.salon.hours)
        : periodText({ from: time, to: until, at: time.at }, noted.salon.hours)),
    where(fact),
    sections !== undefined && counted(sections, 'section'),
    claim && (time === undefined ? `after ${durationText(claim)}` : `noted as ${durationText(claim)}`),
  ]);

/** A reaction, or an application stopped early. */
export const eventText = (noted: Noted, fact: Omit<Reaction, 'word'>): string =>
  commas([fact.time && timeText(fact.time, noted.salon.hours), where(fact), typedWords(noted, fact, fact.words)]);
