import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { moneyText } from '../money-text.ts';
import type { ReasonWords } from '../reason-words.ts';
import { defineRule, NONE } from '../rule.ts';

/** That other money is in the sum: a tip, or one payment for several people. */
const OTHER_MONEY: ReasonWords = {
  en: [
    'tip',
    'tips',
    'one card for',
    'paid for',
    'for both',
    'for all three',
    'rest owed',
    'owes',
    'on account',
    'voucher',
    'paid by',
    'for herself',
    'mother',
    'mum',
    'daughter',
    'sister',
    'husband',
    'partner',
    'friend',
  ],
  de: [
    'trinkgeld',
    'zusammen bezahlt',
    'für beide',
    'rest offen',
    'gutschein',
    'zahlt auch',
    'mutter',
    'tochter',
    'schwester',
    'freundin',
  ],
  fr: [
    'pourboire',
    'payé pour',
    'pour les deux',
    'reste dû',
    'bon cadeau',
    'une carte pour',
    'mère',
    'fille',
    'sœur',
    'amie',
  ],
  pt: ['gorjeta', 'pagou por', 'para as duas', 'para os dois', 'fica a dever', 'vale', 'mãe', 'filha', 'irmã', 'amiga'],
  es: [
    'propina',
    'pagó por',
    'para las dos',
    'para los dos',
    'queda a deber',
    'vale',
    'bono',
    'madre',
    'hija',
    'hermana',
    'amiga',
  ],
};

export default defineRule({
  name: 'paid-differs',
  family: 'money',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['paid'] },
  what: 'What was paid is neither what was charged nor what is due after deposits.',
  why: 'A figure is mistyped, or something is owed and no line says so.',
  source: { kind: 'notation' },
  accepts: OTHER_MONEY,
  check({ visit, money }, { journal }) {
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
          ? 'Correct an amount, or say after it what it was, as in `paid 90 card "10 tip"`; where `paid` always holds tips, once on the salon: `policy rule paid-differs off "…"`.'
          : 'Correct an amount, or say after it why, as in `paid 40 cash "rest owed"`.',
        figures: { paidMoney: paid, dueMoney: due },
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
