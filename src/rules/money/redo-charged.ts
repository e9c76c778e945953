import { placeOf, wordsPlace } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { moneyText } from '../money-text.ts';
import { defineRule, NONE } from '../rule.ts';

/** Items that are no colour work, and are charged at a redo as at any visit: trade words, no source. */
const BESIDE =
  /\b(?:cut|trim|fringe|dry|blow\S*|wash|style|styling|set|finish|treatment|mask|goods|shampoo|conditioner|tip|brows?|lash\w*)\b/iu;

export default defineRule({
  name: 'redo-charged',
  family: 'money',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  looksAt: { words: ['redo'] },
  what: 'A visit that puts an earlier one right has colour work charged.',
  why: 'What is put right is free of charge, and the day’s money counts it twice otherwise.',
  source: { kind: 'common practice' },
  check({ visit, money }, { journal }) {
    const [redo] = factsOf(visit, 'redo');
    const charge = redo && money.items.find(({ item, amount }) => amount > 0 && !BESIDE.test(item));
    if (redo === undefined || charge === undefined || money.charged <= 0) return NONE;
    return [
      {
        place: wordsPlace(journal, charge.place, /charge[^"#]*[^"#\s]/iu),
        message: `${moneyText(charge.amount, money.currency)} is charged${charge.item === '' ? '' : ` for ${charge.item}`}, and the visit puts that of ${redo.date.date} right.`,
        expected: 'A `redo` is put right free of charge.',
        todo: `Write \`${charge.item === '' ? 'charge' : `charge ${charge.item}`} 0\` or \`charge discount 100%\`; if it was paid for, why: \`because redo-charged "…"\`.`,
        also: [{ place: placeOf(visit, redo, redo.date.at), says: 'put right here' }],
      },
    ];
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-08-30 wren-abbott
      charge toner 38
    visit 2026-09-04 wren-abbott
      redo 2026-08-30
      charge toner 38
      ^^^^^^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-08-30 wren-abbott
      charge toner 38
    visit 2026-09-04 wren-abbott
      redo 2026-08-30
      charge toner 0`,
});
