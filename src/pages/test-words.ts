import type { Test } from '../records/schema/client.ts';
import { escapeText } from './escape.ts';
import { commas, endOf, type Noted, spaced } from './noted.ts';
import { durationText, timeText } from './say-numbers.ts';
import { allSeen, partsText, shadeText } from './seen.ts';

/** A line that reads a test noted on another. */
type Reading = { readonly noted: Noted; readonly fact: Test };

/** `skin test 2026-09-01 11:00, cream, gloss, read 2026-09-03 11:30: clear`, or the decision against one. */
export const testText = (noted: Noted, fact: Test, later?: Reading): string => {
  const reading = later ?? { noted, fact };
  const { hours } = noted.salon;
  const name = `${escapeText(fact.test.name)} test`;
  const made = spaced([fact.date?.date, fact.time && timeText(fact.time, hours)]);
  const { readDate, readTime } = reading.fact;
  const read = spaced([readDate?.date, readTime && timeText(readTime, hours)]);
  const result = allSeen(reading.noted, reading.fact, reading.fact.result);
  const said = commas([
    spaced([name, fact.notNeeded ? 'not needed' : undefined, made]),
    ...fact.products.map((product) => escapeText(product.name)),
    ...(fact.shades ?? []).map(shadeText),
    fact.mix && partsText(noted, fact.mix),
    fact.minutes && durationText(fact.minutes),
    reading.fact.read ? spaced(['read', read]) : undefined,
  ]);
  const end = `${endOf(noted.journal, fact)}${later === undefined ? '' : endOf(noted.journal, later.fact)}`;
  return `${said}${result === '' ? '' : `: ${result}`}${end}`;
};
