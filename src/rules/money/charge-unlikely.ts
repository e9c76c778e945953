import type { Journal } from '../../journal/journal.ts';
import { wordsPlace } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { Place } from '../../text/span.ts';
import { moneyText } from '../money-text.ts';
import { defineRule, type Found, NONE } from '../rule.ts';

/**
 * So many times, or so small a part of, what was charged before is no ordinary change of price: beside one earlier
 * charge, and beside several that agree. Choices, no source.
 */
const [BESIDE_ONE, BESIDE_SEVERAL] = [4, 3];

/** Earlier charges of one item agree while the most is no more than so many times the least: else it has no usual price. */
const AGREE = 1.5;

/** What is charged as it comes: tips, goods, extras (en, de, fr, pt, es). */
const VARIES =
  /\b(?:tip|gratuity|retail|products?|goods|extras?|other|sundr|voucher|gift|trinkgeld|pourboire|gorjeta|propina|produits?|produtos?|productos?|produkte?)/iu;

/** Ten times or a tenth, all but for an ordinary rise: the point slipped, or a nought. */
const isSlip = (amount: number, usual: number): boolean => {
  const times = amount > usual ? amount / usual : usual / amount;
  return times >= 8 && times <= 12.5;
};

type Charged = { readonly amount: number; readonly date: string; readonly place: Place };

/** What was charged for an item before: how often, the least, the most and the last; and one that was far from those. */
type Known = { count: number; least: number; most: number; last: Charged; odd: Charged | undefined };

const knownOf = (last: Charged): Known => ({ count: 1, least: last.amount, most: last.amount, last, odd: undefined });

const add = (known: Known, now: Charged): void => {
  known.count++;
  known.least = Math.min(known.least, now.amount);
  known.most = Math.max(known.most, now.amount);
  known.last = now;
};

const isFar = (amount: number, { count, least, most }: Known): boolean => {
  if (most > AGREE * least) return false;
  const times = count === 1 ? BESIDE_ONE : BESIDE_SEVERAL;
  return amount >= times * most || amount * times <= least;
};

const isGoods = ({ shelf }: Journal, item: string): boolean => shelf.get(item)?.kind === 'goods';

/** The item and its price on their line. */
const amountPlace = (journal: Journal, place: Place, item: string): Place => {
  const name = item.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&').replace(/\s+/gu, '\\s+');
  return wordsPlace(journal, place, new RegExp(`${name}\\s+[\\d.,]+`, 'iu'));
};

const foundIn = (visit: VisitReckoned, known: Map<string, Known>, journal: Journal): readonly Found[] => {
  const { currency, items } = visit.money;
  const { facts } = visit.visit.entry;
  if (facts.some(({ word }) => word === 'redo')) return [];
  return items.flatMap(({ item, amount, place }): Found[] => {
    const isSaid = facts.some(({ line, says }) => line === place.line && says !== undefined);
    // A remark says why. Nothing charged says itself that it is no price.
    if (item === '' || amount <= 0 || isSaid || VARIES.test(item) || isGoods(journal, item)) return [];
    const key = `${item}\n${currency}`;
    const own = known.get(key);
    const now = { amount, date: visit.date, place };
    if (own === undefined) {
      known.set(key, knownOf(now));
      return [];
    }
    const { last, odd } = own;
    if (!isFar(amount, own)) {
      add(own, now);
      return [];
    }
    // Charged so twice, it is the price.
    if (odd !== undefined && !isFar(amount, knownOf(odd))) {
      const anew = knownOf(odd);
      add(anew, now);
      known.set(key, anew);
      return [];
    }
    own.odd = now;
    const isPlain = own.count > 1 && isSlip(amount, last.amount);
    return [
      {
        ...(isPlain && { severity: 'fix' as const }),
        place: amountPlace(journal, place, item),
        message: `${moneyText(amount, currency)} is charged for ${item}; on ${last.date} it was ${moneyText(last.amount, currency)}.`,
        expected: 'The price of the same item changes by less from visit to visit (common practice).',
        todo: `Write the price as it was charged, or why it is another, as in \`charge ${item} … "model evening"\`.`,
        label: amount > last.amount ? 'perhaps a nought too many' : 'perhaps a point too far left',
        also: [{ place: last.place, says: 'charged then' }],
      },
    ];
  });
};

export default defineRule({
  name: 'charge-unlikely',
  family: 'money',
  severity: 'mind',
  bears: 'never',
  over: 'client',
  what: 'The charge for an item is four times, or a quarter of, what the client was charged for it before; three times or a third where several earlier charges agree, and `fix` for ten times or a tenth of those.',
  why: 'A slipped point goes onto the card machine, into the takings and into the next price.',
  source: { kind: 'common practice' },
  check(_client, visits, journal) {
    if (visits.length < 2) return NONE;
    const known = new Map<string, Known>();
    return visits.flatMap((visit) => foundIn(visit, known, journal));
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2026-06-12 wren-abbott
      charge foils 65
    visit 2026-09-04 wren-abbott
      charge foils 6.50
             ^^^^^^^^^^`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-06-12 wren-abbott
      charge foils 65
    visit 2026-09-04 wren-abbott
      charge foils 70`,
});
