import type { Item } from '../../notation/line-tree.ts';
import { fitted } from '../../text/fitted.ts';
import { fromOf, toOf } from '../../text/span.ts';
import type { Word } from '../schema/values.ts';
import type { Charge, Deposit, Paid, Split } from '../schema/visit.ts';
import {
  type Cursor,
  enter,
  enterAll,
  finish,
  nameAt,
  needs,
  notice,
  type Opened,
  peek,
  take,
  takeKind,
  takeWord,
  typed,
  wordAt,
} from './cursor.ts';
import { takeDate } from './dates.ts';
import { moneyOf, plainNumber } from './figures.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

const textOf = (words: readonly Word[]): string => words.map(({ word }) => word).join(' ');

const takeMoneyGroup = (cursor: Cursor): { words: Word[]; amount?: number; percent?: number } => {
  const words: Word[] = [];
  let amount: number | undefined;
  let percent: number | undefined;
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    const next = peek(cursor, 1);
    if (item.kind === 'word') words.push(wordAt(cursor, item));
    else if (item.kind === 'number' && item.percent && percent === undefined && amount === undefined)
      percent = plainNumber(cursor, item);
    else if (isSum(item) && amount === undefined && percent === undefined) amount = moneyOf(cursor, item);
    else if (item.kind === 'dash' && next?.kind === 'number' && next.glued) break;
    else if (item.kind !== 'dash' && item.kind !== 'plus' && typed(cursor, item) !== '&') break;
    take(cursor);
  }
  finish(cursor, 'Write the item and one amount, as in `charge foils 95.00`.');
  return { words: fitted(words), ...(amount !== undefined && { amount }), ...(percent !== undefined && { percent }) };
};

const isSum = (item: Item): boolean =>
  item.kind === 'number' && item.unit === undefined && !item.second && !item.percent;

/** `charge foils 95.00`, `charge total 82`, `charge discount 20%`; several parted by commas are several charges. */
export const bindCharges = ({ cursor, groups }: Opened): Bound<Charge>[] => {
  const known = cursor.notices.length;
  const charges = groups.map((group): Bound<Charge> => {
    enter(cursor, group);
    const { words, amount, percent } = takeMoneyGroup(cursor);
    const item = textOf(words);
    if (item === 'total') return { item, total: true, ...(amount !== undefined && { amount }) };
    if (percent !== undefined) return { item: item || 'discount', discount: percent };
    return { item, ...(amount !== undefined && { amount }) };
  });
  const full = charges.filter(({ amount, discount }) => amount !== undefined || discount !== undefined);
  if (full.length < charges.length && cursor.notices.length === known)
    needs(cursor, 'The line gives no amount charged.', 'Write the item and the amount, as in `charge foils 95.00`.');
  return full;
};

/** `paid 210 card`, `paid 100 card, 20 cash` */
export const bindPayments = ({ cursor, groups, closing }: Opened): Bound<Paid>[] => {
  const by = takeMeans(cursor, closing);
  return groups.map((group, index) => {
    enter(cursor, group);
    const { words, amount } = takeMoneyGroup(cursor);
    const how = by !== undefined && index === groups.length - 1 ? [...words, by] : words;
    return { how, ...(amount !== undefined && { amount }) };
  });
};

/** Common practice, no source. */
const MEANS: ReadonlySet<string> = new Set(['card', 'cash', 'transfer', 'cheque', 'voucher', 'contactless', 'phone']);

/** `paid 90 by card`: after `by` stands whose hand it was, and no hand is called so. */
const takeMeans = (cursor: Cursor, closing: Opened['closing']): Word | undefined => {
  const { by } = closing;
  if (by === undefined || !MEANS.has(by.name)) return undefined;
  delete closing.by;
  const [from, to] = [fromOf(by.at), toOf(by.at)];
  const start = cursor.text.slice(0, from).search(/\bby\s*$/iu);
  const run = { from: start < 0 ? from : start, to };
  const meant = `${cursor.text.slice(0, run.from).trim()} ${by.name}`;
  notice(cursor, 'two-readings', run, `\`${typed(cursor, run)}\` reads as whose hand it was.`, {
    todo: `Write \`${meant}\`.`,
    label: 'how it was paid',
    put: { title: `write ${by.name}`, text: by.name, sure: 'likely' },
  });
  return { word: by.name, at: by.at };
};

/** `deposit 100 for 2026-12-12`, `deposit used 50` */
export const bindDeposit = (opened: Opened): Bound<Deposit> => {
  const cursor = enterAll(opened);
  const draft: { -readonly [key in keyof Bound<Deposit>]: Bound<Deposit>[key] } = {};
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (takeWord(cursor, 'used')) draft.used = true;
    else if (takeWord(cursor, 'returned')) draft.returned = true;
    else if (takeWord(cursor, 'for')) {
      const date = takeDate(cursor);
      if (date !== undefined) draft.for = date;
    } else if (isSum(item) && draft.amount === undefined) {
      take(cursor);
      const amount = moneyOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else break;
  }
  finish(cursor, 'Write `deposit 100 for 2026-12-12` or `deposit used 50`.');
  return draft;
};

/** `split jo 50%, nia 50%` */
export const bindSplit = ({ cursor, groups }: Opened): Bound<Split> => {
  const shares: Split['shares'] = [];
  for (const group of groups) {
    enter(cursor, group);
    const name = takeKind(cursor, 'word');
    const figure = takeKind(cursor, 'number');
    const percent = figure && plainNumber(cursor, figure);
    if (name !== undefined && percent !== undefined) shares.push({ by: nameAt(cursor, name), percent });
    else if (name !== undefined && peek(cursor) === undefined && figure === undefined)
      notice(cursor, 'nothing-said', name, `\`${typed(cursor, name)}\` has no share.`, {
        todo: 'Write `split jo 50%, nia 50%`.',
      });
    finish(cursor, 'Write `split jo 50%, nia 50%`.');
  }
  return { shares };
};
