import { wordsPlace } from '../../reckon/cite.ts';
import { moneyText } from '../money-text.ts';
import { defineRule, NONE } from '../rule.ts';

export default defineRule({
  name: 'charge-total',
  family: 'money',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'The total typed after `charge` is not the sum of what was charged.',
  why: 'One of the figures is wrong, and the client paid by one of them.',
  source: { kind: 'notation' },
  check({ money }, { journal }) {
    const { claim, charged, due, items, discount, currency } = money;
    // A total after a deposit is what is left to pay.
    if (claim === undefined || claim.amount === charged || claim.amount === due) return NONE;
    const off = discount === 0 ? '' : ` less ${moneyText(discount, currency)} off`;
    const sum = items.length === 1 ? 'charge' : `${items.length} charges`;
    return [
      {
        place: wordsPlace(journal, claim.place, /\btotal\s+[\d.,]+/iu),
        message: `The total typed is ${moneyText(claim.amount, currency)}; the ${sum}${off} ${items.length === 1 ? 'makes' : 'make'} ${moneyText(charged, currency)}.`,
        todo: 'Correct an amount, or take the total out: it is worked out.',
        figures: { typedMoney: claim.amount, chargedMoney: charged },
        label: `makes ${moneyText(charged, currency)}`,
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
      charge total 82
             ^^^^^^^^`,
  good: `
    salon harbour "Harbour Row"
      money GBP
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      charge gloss 38
      charge cut 42
      charge total 80`,
});
