import type { Item } from '../../notation/line-tree.ts';
import { isBowlName } from '../../notation/words.ts';
import { isLengthUnit } from '../../trade/units.ts';
import type { Word } from '../schema/values.ts';
import type {
  About,
  Call,
  Charge,
  Declined,
  Deposit,
  Fit,
  Leave,
  Next,
  Paid,
  Redo,
  Regrowth,
  Split,
} from '../schema/visit.ts';
import { shadeOf } from './component.ts';
import {
  atOf,
  type Closing,
  type Cursor,
  enter,
  finish,
  flatten,
  nameAt,
  notice,
  type Opened,
  peek,
  peekWord,
  take,
  takeKind,
  takeWord,
  typed,
  wordAt,
  wordOf,
} from './cursor.ts';
import { amountOf, dateOf, durationOf, otherDate, plainNumber, takeTime, unitOf } from './figures.ts';
import { takeZones } from './seen.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

const whole = (cursor: Cursor): { from: number; to: number } => ({ from: 0, to: cursor.text.length });

const needs = (cursor: Cursor, message: string, todo: string): undefined =>
  void notice(cursor, 'nothing-said', peek(cursor) ?? whole(cursor), message, { todo });

/** Takes a date, or reports one typed in another order. */
const takeDate = (cursor: Cursor): ReturnType<typeof dateOf> => {
  const item = peek(cursor);
  if (item?.kind === 'date') {
    take(cursor);
    return dateOf(cursor, item);
  }
  if (item !== undefined && (item.kind === 'slashed' || item.kind === 'chain') && otherDate(cursor, item)) take(cursor);
  return undefined;
};

/** `regrowth 2cm roots` */
export const bindRegrowth = ({ cursor, groups }: Opened): Bound<Regrowth> | undefined => {
  enter(cursor, flatten(groups));
  const before = takeZones(cursor);
  const item = peek(cursor);
  if (item?.kind !== 'number' || !isLengthUnit(unitOf(cursor, item)))
    return needs(cursor, 'The line gives no length of new growth.', 'Write it with its unit, as in `regrowth 2cm`.');
  take(cursor);
  const length = amountOf(cursor, item);
  const zones = [...before, ...takeZones(cursor)];
  finish(cursor);
  return length && { length, zones };
};

export const bindLeave = ({ cursor, groups }: Opened): Bound<Leave> | undefined => {
  enter(cursor, flatten(groups));
  const first = peek(cursor);
  const name = peekWord(cursor);
  if (first !== undefined && name !== undefined && isBowlName(name) && peek(cursor, 1)?.kind === 'number') {
    const figure = typed(cursor, peek(cursor, 1) ?? first);
    notice(cursor, 'not-read', first, '`leave` is for hair left out, and this line names a bowl.', {
      todo: `For grams in the bowl write \`left ${typed(cursor, first)} ${figure}\`.`,
      label: 'a bowl, no place',
    });
    return undefined;
  }
  const zones = takeZones(cursor);
  finish(cursor);
  return { zones };
};

const textOf = (words: readonly Word[]): string => words.map(({ word }) => word).join(' ');

const takeMoneyGroup = (cursor: Cursor): { words: Word[]; amount?: number; percent?: number } => {
  const words: Word[] = [];
  let amount: number | undefined;
  let percent: number | undefined;
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'word') words.push(wordAt(cursor, item));
    else if (item.kind === 'number' && item.percent && percent === undefined) percent = plainNumber(cursor, item);
    else if (item.kind === 'number' && item.unit === undefined && !item.second && amount === undefined)
      amount = plainNumber(cursor, item);
    else if (item.kind !== 'dash' && item.kind !== 'plus' && !/^[£$€]$/.test(typed(cursor, item))) break;
    take(cursor);
  }
  finish(cursor, 'Write the item and one amount, as in `charge foils 95.00`.');
  return { words, ...(amount !== undefined && { amount }), ...(percent !== undefined && { percent }) };
};

/** `charge foils 95.00`, `charge total 82`, `charge discount 20%`; several parted by commas are several charges. */
export const bindCharges = ({ cursor, groups, closing }: Opened): Bound<Charge>[] => {
  const charges = groups.map((group): Bound<Charge> => {
    enter(cursor, group);
    const { words, amount, percent } = takeMoneyGroup(cursor);
    const item = textOf(words);
    if (item === 'total') return { item, total: true, ...(amount !== undefined && { amount }) };
    if (percent !== undefined) return { item: item || 'discount', discount: percent };
    // `charge 40 "fringe trim"`: the remark names what was charged.
    return { item: item || closing.says?.text || '', ...(amount !== undefined && { amount }) };
  });
  const empty = charges.find(({ amount, discount }) => amount === undefined && discount === undefined);
  if (empty !== undefined)
    needs(cursor, 'The line gives no amount charged.', 'Write the item and the amount, as in `charge foils 95.00`.');
  return charges.filter((charge) => charge !== empty);
};

/** `paid 210 card`, `paid 100 card, 20 cash` */
export const bindPayments = ({ cursor, groups }: Opened): Bound<Paid>[] =>
  groups.map((group) => {
    enter(cursor, group);
    const { words, amount } = takeMoneyGroup(cursor);
    return { how: words, ...(amount !== undefined && { amount }) };
  });

/** `deposit 100 for 2026-12-12`, `deposit used 50` */
export const bindDeposit = ({ cursor, groups }: Opened): Bound<Deposit> => {
  enter(cursor, flatten(groups));
  const draft: { -readonly [key in keyof Bound<Deposit>]: Bound<Deposit>[key] } = {};
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (takeWord(cursor, 'used')) draft.used = true;
    else if (takeWord(cursor, 'returned')) draft.returned = true;
    else if (takeWord(cursor, 'for')) {
      const date = takeDate(cursor);
      if (date !== undefined) draft.for = date;
    } else if (item.kind === 'number' && draft.amount === undefined) {
      take(cursor);
      draft.amount = plainNumber(cursor, item);
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
    if (name !== undefined && figure !== undefined)
      shares.push({ by: nameAt(cursor, name), percent: plainNumber(cursor, figure) });
    finish(cursor, 'Write `split jo 50%, nia 50%`.');
  }
  return { shares };
};

/** `fit 2 packs withybed "8 honey"` */
export const bindFit = ({ cursor, groups }: Opened): Bound<Fit> => {
  enter(cursor, flatten(groups));
  const draft: { -readonly [key in keyof Bound<Fit>]: Bound<Fit>[key] } = {};
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'number' && draft.amount === undefined) {
      const amount = amountOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else if (item.kind === 'word' && draft.product === undefined) draft.product = nameAt(cursor, item);
    else if (item.kind === 'slashed' && draft.shade === undefined)
      draft.shade = shadeOf(typed(cursor, item), atOf(item));
    else break;
    take(cursor);
  }
  finish(cursor);
  return draft;
};

/** `declined lightener "under 16"` */
export const bindDeclined = ({ cursor, groups }: Opened): Bound<Declined> => {
  enter(cursor, flatten(groups));
  const what: Word[] = [];
  for (let item = peek(cursor); item?.kind === 'word' || item?.kind === 'comma'; item = peek(cursor)) {
    if (item.kind === 'word') what.push(wordAt(cursor, item));
    take(cursor);
  }
  finish(cursor);
  return { what };
};

/** `redo 2026-08-30` */
export const bindRedo = ({ cursor, groups }: Opened): Bound<Redo> | undefined => {
  enter(cursor, flatten(groups));
  const known = cursor.notices.length;
  const date = takeDate(cursor);
  if (date === undefined && cursor.notices.length === known)
    needs(cursor, 'The line does not say which visit is put right.', 'Write its date, as in `redo 2026-08-30`.');
  finish(cursor);
  return date && { date };
};

/** `about 2026-05-02 ends "went mauve after two washes"` */
export const bindAbout = ({ cursor, groups }: Opened): Bound<About> | undefined => {
  enter(cursor, flatten(groups));
  const known = cursor.notices.length;
  const date = takeDate(cursor);
  if (date === undefined && cursor.notices.length === known)
    needs(
      cursor,
      'The line does not say which visit it is about.',
      'Write its date, as in `about 2026-05-02 ends "…"`.',
    );
  const zones = takeZones(cursor);
  finish(cursor);
  return date && { date, zones };
};

/** `call 2026-11-05 10:00 "redness gone"` */
export const bindCall = ({ cursor, groups }: Opened): Bound<Call> => {
  enter(cursor, flatten(groups));
  const date = takeDate(cursor);
  const time = takeTime(cursor);
  finish(cursor);
  return { ...(date && { date }), ...(time && { time }) };
};

type Change = Next['changes'][number];

const changeOf = (cursor: Cursor, items: readonly Item[]): Change => {
  enter(cursor, items);
  const draft: { -readonly [key in keyof Change]: Change[key] } = { words: [], text: '' };
  const first = items[0];
  const last = items.at(-1);
  if (first !== undefined && last !== undefined) draft.text = typed(cursor, { from: first.from, to: last.to });
  for (let item = take(cursor); item !== undefined; item = take(cursor)) {
    if (item.kind === 'word' && draft.bowl === undefined && isBowlName(wordOf(cursor, item)))
      draft.bowl = nameAt(cursor, item);
    else if (item.kind === 'word') draft.words.push(wordAt(cursor, item));
    else if (item.kind === 'dash' || item.kind === 'plus') {
      const figure = peek(cursor);
      if (figure?.kind !== 'number' || !figure.percent) continue;
      take(cursor);
      draft.percent = plainNumber(cursor, figure) * (item.kind === 'dash' ? -1 : 1);
    }
  }
  return draft;
};

/** `next 6-8w roots, A -20%`, `next from 2026-12-02`, `next 2026-12-19 14:00 foils` */
export const bindNext = ({ cursor, groups }: Opened): Bound<Next> => {
  enter(cursor, groups[0] ?? []);
  const draft: { -readonly [key in keyof Bound<Next>]: Bound<Next>[key] } = { from: false, changes: [] };
  if (takeWord(cursor, 'from')) draft.from = true;
  const wait = durationOf(cursor, peek(cursor));
  if (wait !== undefined) {
    draft.wait = wait;
    take(cursor);
  } else {
    const date = takeDate(cursor);
    if (date !== undefined) {
      draft.date = date;
      const time = takeTime(cursor);
      if (time !== undefined) draft.time = time;
    }
  }
  const rest = [cursor.items.slice(cursor.next), ...groups.slice(1)];
  draft.changes = rest.filter((items) => items.length > 0).map((items) => changeOf(cursor, items));
  for (const { text, words } of draft.changes) {
    const glued = words.find(({ word }) => /^\p{L}\d*-\d+$/u.test(word));
    if (glued === undefined) continue;
    const split = glued.word.replace('-', ' -');
    const start = cursor.text.indexOf(text);
    notice(cursor, 'two-readings', { from: start, to: start + text.length }, `\`${glued.word}\` reads as one name.`, {
      todo: `Write \`${split.toUpperCase()}%\`, with a space before the minus.`,
    });
  }
  return draft;
};

/** A free line: all its text, or the quotation that it is. Only after a quotation can `by` or a comment follow. */
export const bindFree = (line: string, from: number): { text: string; closing: Closing; at: number } => {
  const raw = line.slice(from);
  const start = from + (raw.length - raw.trimStart().length);
  const text = raw.trim();
  const at = atOf({ from: start, to: start + text.length });
  const quoted = /^(?:"([^"“”]*)["“”]|[“„]([^"“”]*)["“”]|«([^»]*)»)\s*(?:by\s+([\p{L}\p{N}.-]+)\s*)?(?:#.*)?$/iu.exec(
    text,
  );
  if (quoted === null) return { text, closing: {}, at };
  const inner = quoted[1] ?? quoted[2] ?? quoted[3] ?? '';
  const by = quoted[4];
  const where = by === undefined ? -1 : line.lastIndexOf(by);
  const closing: Closing =
    by === undefined ? {} : { by: { name: by.toLowerCase(), at: atOf({ from: where, to: where + by.length }) } };
  return { text: inner, closing, at: atOf({ from: start + 1, to: start + 1 + inner.length }) };
};
