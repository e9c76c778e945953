import type { Test } from '../records/schema/client.ts';
import { escapeText } from './escape.ts';
import { commas, endOf, type Noted, spaced } from './noted.ts';
import { durationText, timeText } from './say-numbers.ts';
import { allSeen, partsText, shadeText } from './seen.ts';

/** `skin test 2026-09-01 11:00, cream, gloss, read 2026-09-03 11:30: clear`, or the decision against one. */
export const testText = (noted: Noted, fact: Test): string => {
  const { hours } = noted.salon;
  const name = `${escapeText(fact.test.name)} test`;
  const made = spaced([fact.date?.date, fact.time && timeText(fact.time, hours)]);
  const read = spaced([fact.readDate?.date, fact.readTime && timeText(fact.readTime, hours)]);
  const result = allSeen(noted, fact, fact.result);
  const said = commas([
    spaced([name, fact.notNeeded ? 'not needed' : undefined, made]),
    ...fact.products.map((product) => escapeText(product.name)),
    ...(fact.shades ?? []).map(shadeText),
    fact.mix && partsText(noted, fact.mix),
    fact.minutes && durationText(fact.minutes),
    fact.read ? spaced(['read', read]) : undefined,
  ]);
  return `${said}${result === '' ? '' : `: ${result}`}${endOf(noted.journal, fact)}`;
};
