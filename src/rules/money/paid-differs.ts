import { placeOf, wordsPlace } from '../cite.ts';
import { factsOf } from '../facts-of.ts';
import { moneyText } from '../money-text.ts';
import { defineRule, NONE } from '../rule.ts';

export default defineRule({
  name: 'paid-differs',
  family: 'money',
  severity: 'mind',
  over: 'visit',
  what: 'What was paid is neither what was charged nor what is due after deposits.',
  why: 'A figure is mistyped, or something is owed and no line says so.',
  source: { kind: 'notation' },
  check({ visit, money }, journal) {
    const { charged, due, paid, currency, items, claim } = money;
    if (items.length === 0 || paid === due || paid === charged) return NONE;
    const last = factsOf(visit, 'paid').findLast(({ amount }) => amount !== undefined);
    if (last === undefined) return NONE;
    // A total that differs is another rule's, and one mistake is one finding.
    if (claim !== undefined && claim.amount !== charged && claim.amount !== due) return NONE;
    const over = paid > due;
    return [
      {
        place: wordsPlace(journal, placeOf(visit, last), /paid[^"#]*[^"#\s]/iu),
        message: `${moneyText(paid, currency)} is paid, and ${moneyText(due, currency)} is due.`,
        ...(due !== charged && { expected: `Charged ${moneyText(charged, currency)}; deposits make the rest.` }),
        todo: over
          ? 'Correct an amount; what was given beyond the price stands in a `note`.'
          : 'Correct an amount, or write in a `note` what is still owed.',
        label: `${moneyText(Math.abs(paid - due), currency)} ${over ? 'over' : 'short'}`,
      },
    ];
  },
  bad: `
    salon harbour "Harbour Row"
      money GBP
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      charge gloss 38
      charge cut 42
      paid 90 card
      ^^^^^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      money GBP
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      charge gloss 38
      charge cut 42
      paid 80 card`,
});
