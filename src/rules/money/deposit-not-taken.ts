import type { Deposit } from '../../records/schema/visit.ts';
import type { SecondPlace } from '../../text/finding.ts';
import { placeOf, wordsPlace } from '../cite.ts';
import { factsOf } from '../facts-of.ts';
import { moneyText } from '../money-text.ts';
import { defineRule } from '../rule.ts';

const isGone = ({ used, returned }: Deposit): boolean => used !== undefined || returned !== undefined;

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
    const taken: SecondPlace[] = [];
    for (const [index, { visit, money }] of visits.entries()) {
      const gone = money.depositUsed + money.depositReturned;
      for (const fact of factsOf(visit, 'deposit'))
        if (!isGone(fact) && fact.amount !== undefined)
          taken.push({ place: placeOf(visit, fact), says: 'a deposit taken' });
      const last = factsOf(visit, 'deposit').findLast(isGone);
      // What the first visit in the notes uses may have been taken before they began.
      if (index > 0 && last !== undefined && gone > held + money.depositTaken) {
        yield {
          // With none in the notes it may have been taken before they begin.
          severity: taken.length > 0 ? 'fix' : 'mind',
          place: wordsPlace(journal, placeOf(visit, last), /deposit[^"#]*[^"#\s]/iu),
          message: `${moneyText(gone, money.currency)} of deposit is used up here; ${moneyText(held + money.depositTaken, money.currency)} is left of what was taken.`,
          expected: 'A deposit is used once, after a `deposit` line took it.',
          todo: 'Correct the amount, or write the `deposit` line under the visit at which it was taken; where deposits are kept elsewhere, once on the salon: `policy rule deposit-not-taken off "…"`.',
          ...(taken.length > 0 && { also: taken.slice(-3) }),
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
