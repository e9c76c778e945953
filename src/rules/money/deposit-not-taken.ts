import type { Stood } from '../../journal/source.ts';
import { dayOf } from '../../reckon/bowl/plan.ts';
import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { minorUnits } from '../../reckon/money/money.ts';
import { listed } from '../../reckon/say.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Deposit } from '../../records/schema/visit.ts';
import type { Place } from '../../text/span.ts';
import { moneyText } from '../money-text.ts';
import { defineRule } from '../rule.ts';

const isGone = ({ used, returned }: Deposit): boolean => used !== undefined || returned !== undefined;

const DEPOSIT = /deposit[^"#]*[^"#\s]/iu;

/** A deposit that a line takes, in minor units. */
type Taken = { readonly date: string; readonly amount: number; readonly place: Place };

const takenAt = (visit: Stood<Visit>, currency: string | undefined): Taken[] =>
  factsOf(visit, 'deposit').flatMap((fact) =>
    isGone(fact) || fact.amount === undefined
      ? []
      : [{ date: dayOf(visit), amount: minorUnits(fact.amount, currency), place: placeOf(visit, fact) }],
  );

/**
 * `80.00 GBP had been taken, on 2026-06-16, and 50.00 GBP of it was used or returned before`: what had been taken and
 * where, and what was gone of it.
 */
const hadBeen = (held: number, taken: readonly Taken[], currency: string | undefined): string => {
  if (taken.length === 0) return 'no line of the client’s visits up to then takes any';
  const whole = taken.reduce((sum, { amount }) => sum + amount, 0);
  const took = `${moneyText(whole, currency)} had been taken, on ${listed([...new Set(taken.map(({ date }) => date))])}`;
  return held === whole
    ? took
    : `${took}, and ${held === 0 ? 'all' : moneyText(whole - held, currency)} of it was used or returned before`;
};

export default defineRule({
  name: 'deposit-not-taken',
  family: 'money',
  severity: 'fix',
  bears: 'never',
  over: 'client',
  what: 'More deposit is used or returned than the client’s visits have taken; `mind` where the notes have taken none.',
  why: 'Either a deposit was never noted, or one is used a second time.',
  source: { kind: 'notation' },
  *check(_, visits, journal) {
    let held = 0;
    const taken: Taken[] = [];
    for (const [index, { visit, money }] of visits.entries()) {
      const gone = money.depositUsed + money.depositReturned;
      taken.push(...takenAt(visit, money.currency));
      const last = factsOf(visit, 'deposit').findLast(isGone);
      // What the first visit in the notes uses may have been taken before they began.
      if (index > 0 && last !== undefined && gone > held + money.depositTaken) {
        yield {
          // With none in the notes it may have been taken before they begin.
          severity: taken.length > 0 ? 'fix' : 'mind',
          place: wordsPlace(journal, placeOf(visit, last), DEPOSIT),
          message: `${moneyText(gone, money.currency)} of deposit is used up here; ${hadBeen(held + money.depositTaken, taken, money.currency)}.`,
          expected: 'A deposit is used once, after a `deposit` line took it.',
          todo: 'Correct the amount, or write the `deposit` line under the visit at which it was taken; where deposits are kept elsewhere, once on the salon: `policy rule deposit-not-taken off "…"`.',
          also: taken.map(({ place }) => ({ place: wordsPlace(journal, place, DEPOSIT), says: 'taken here' })),
        };
      }
      held = Math.max(0, held + money.depositTaken - gone);
    }
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      deposit 40 for 2026-09-04
    visit 2026-09-04 wren-abbott
      charge foils 95
      deposit used 50
      ^^^^^^^^^^^^^^^
      paid 45 card`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      deposit 50 for 2026-09-04
    visit 2026-09-04 wren-abbott
      charge foils 95
      deposit used 50
      paid 45 card`,
});
