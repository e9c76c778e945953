import type { Item } from '../../notation/line-tree.ts';
import type { Count, In } from '../schema/shelf.ts';
import { shadeOf, takeLot } from './component.ts';
import {
  atOf,
  type Cursor,
  enterAll,
  finish,
  nameAt,
  needs,
  notice,
  type Opened,
  peek,
  take,
  takeWord,
  typed,
  wordOf,
} from './cursor.ts';
import { otherDate, whenOf } from './dates.ts';
import { amountOf, moneyOf, unitOf } from './figures.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;
type Draft = { -readonly [key in keyof Bound<In>]?: Bound<In>[key] } & Bound<Count>;

const takeUseBy = (cursor: Cursor, draft: Draft): void => {
  const item = take(cursor);
  if (item === undefined) return;
  const known = cursor.notices.length;
  const useBy = whenOf(cursor, item);
  if (useBy !== undefined) draft.useBy = useBy;
  else if (cursor.notices.length === known && !otherDate(cursor, item))
    notice(cursor, 'bad-date', item, `\`${typed(cursor, item)}\` is no date to use it by.`, {
      todo: 'Write year and month, as in `use-by 2028-01`.',
    });
};

/** The item that names the product: the first word, wherever the amount stands. */
const productOf = (cursor: Cursor): Item | undefined => {
  const index = cursor.items.findIndex(
    ({ kind }, at) => kind === 'word' && !(cursor.items[at]?.glued && cursor.items[at - 1]?.kind === 'number'),
  );
  const item = cursor.items[index];
  cursor.items = cursor.items.filter((other) => other !== item);
  return item;
};

/** `in cream 7/43 4 packs 27.20 lot K2231 use-by 2028-01`, `count dev-6 640 g`, `out dev-9 200 g "past its date"` */
export const bindStock = (opened: Opened, word: 'in' | 'count' | 'out'): Bound<In> | undefined => {
  const cursor = enterAll(opened);
  const first = productOf(cursor);
  if (first === undefined)
    return needs(cursor, 'The line names no product.', `Write it as in \`${word} clay 2 packs\`.`);
  const draft: Draft = { product: nameAt(cursor, first) };
  const known = cursor.notices.length;
  const bare: Item[] = [];
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (draft.lot === undefined && takeWord(cursor, 'lot')) {
      const lot = takeLot(cursor);
      if (lot !== undefined) draft.lot = lot;
    } else if (draft.useBy === undefined && takeWord(cursor, 'use-by')) takeUseBy(cursor, draft);
    else if (item.kind === 'slashed' && draft.shade === undefined)
      draft.shade = shadeOf(typed(cursor, take(cursor) ?? item), atOf(item));
    else if (item.kind === 'word' && draft.shade === undefined && draft.amount === undefined && bare.length === 0)
      draft.shade = shadeOf(wordOf(cursor, take(cursor) ?? item), atOf(item));
    else if (
      item.kind === 'number' &&
      item.unit !== undefined &&
      draft.amount === undefined &&
      !isShadeLetter(cursor, item)
    ) {
      take(cursor);
      const amount = amountOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else if (item.kind === 'number' && isPlain(cursor, item)) {
      take(cursor);
      const letters = peek(cursor);
      if (letters?.kind === 'word' && letters.glued && draft.shade === undefined) {
        take(cursor);
        const run = { from: item.from, to: letters.to };
        draft.shade = shadeOf(typed(cursor, run), atOf(run));
      } else bare.push(item);
    } else break;
  }
  settle(cursor, draft, bare, word, known);
  finish(cursor);
  return draft;
};

/** A shade, a price or an amount without its unit; `each` says of a price that it is for one. */
const isPlain = (cursor: Cursor, item: Item): boolean =>
  item.unit === undefined || unitOf(cursor, item) === 'each' || isShadeLetter(cursor, item);

/** `6G 4 packs`: a letter stuck to a figure before the amount is a tone, never a unit. */
const isShadeLetter = (cursor: Cursor, item: Item): boolean =>
  /^\d+[A-Za-z]$/.test(typed(cursor, item)) &&
  cursor.items.slice(cursor.next + 1).some((other) => other.kind === 'number' && other.unit !== undefined);

/** Numbers without unit: a shade before the amount; after it the price (`in`), or the amount itself (`count`, `out`). */
const settle = (cursor: Cursor, draft: Draft, bare: readonly Item[], word: string, known: number): void => {
  const at = draft.amount?.at;
  for (const item of bare) {
    const before =
      at === undefined ? bare.indexOf(item) < bare.length - 1 || /[.,-]/.test(typed(cursor, item)) : atOf(item) < at;
    if (before && draft.shade === undefined) draft.shade = shadeOf(typed(cursor, item), atOf(item));
    else if (draft.amount === undefined) {
      const amount = amountOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else if (word === 'in' && draft.price === undefined) {
      const price = moneyOf(cursor, item);
      if (price !== undefined) draft.price = price;
    } else
      notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is one figure too many.`, {
        todo: 'Write product, shade, amount, price.',
      });
  }
  if (draft.amount === undefined && cursor.notices.length === known && peek(cursor) === undefined)
    needs(cursor, 'The line gives no amount.', `Write it with its unit, as in \`${word} clay 2 packs\`.`);
};
