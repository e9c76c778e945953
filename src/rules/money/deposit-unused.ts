import type { Journal } from '../../journal/journal.ts';
import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { Deposit } from '../../records/schema/visit.ts';
import { priceText } from '../money-text.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

type Taken = { readonly from: VisitReckoned; readonly fact: Deposit; readonly amount: number };

const takenIn = (from: VisitReckoned): Taken[] =>
  factsOf(from.visit, 'deposit').flatMap((fact) =>
    fact.amount !== undefined && !fact.used && !fact.returned ? [{ from, fact, amount: fact.amount }] : [],
  );

const unusedIn = (visit: VisitReckoned, taken: readonly Taken[], journal: Journal): Found | undefined => {
  const { depositUsed, depositReturned, currency, charged, paid } = visit.money;
  const own = taken.find(({ fact }) => fact.for?.date === visit.date);
  if (own === undefined || depositUsed + depositReturned > 0) return undefined;
  if (factsOf(visit.visit, 'charge').length === 0) return undefined;
  const amount = priceText(own.amount, currency);
  return {
    // Paid in full, she has paid that part twice.
    severity: charged > 0 && paid >= charged ? 'fix' : 'mind',
    place: placeOf(visit.visit, { line: 0 }, visit.visit.entry.date?.at),
    message: `A deposit of ${amount} was taken on ${own.from.date} for this visit, and no line uses it.`,
    todo: `Write \`deposit used ${amount}\`, or \`deposit returned ${amount}\`.`,
    also: [
      {
        place: wordsPlace(journal, placeOf(own.from.visit, own.fact), /deposit[^"#]*[^"#\s]/iu),
        says: 'taken here',
      },
    ],
  };
};

export default defineRule({
  name: 'deposit-unused',
  family: 'money',
  severity: 'fix',
  bears: 'never',
  over: 'client',
  what: 'A deposit was taken for the day of a visit, and the visit is charged without it; `mind` where it is not paid in full besides.',
  why: 'The client would pay that part twice.',
  source: { kind: 'notation' },
  check(_, visits, journal) {
    const taken: Taken[] = [];
    return foundEach(visits, (visit) => {
      const found = taken.length === 0 ? undefined : unusedIn(visit, taken, journal);
      taken.push(...takenIn(visit));
      return found;
    });
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      deposit 50 for 2026-09-04
    visit 2026-09-04 wren-abbott
          ^^^^^^^^^^
      charge foils 95
      paid 95 card`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      deposit 50 for 2026-09-04
    visit 2026-09-04 wren-abbott
      charge foils 95
      deposit used 50
      paid 45 card`,
});
