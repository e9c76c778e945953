import type { Item } from '../../notation/line-tree.ts';
import { type EntryKind, SOFT_WORDS, UNIT_WORDS } from '../../notation/words.ts';
import { nearNames } from '../../text/near.ts';
import { isKind, KINDS } from '../../trade/kinds.ts';
import type { Client, Product, Range, Salon, Stock, Stylist, Visit } from '../schema/entry.ts';
import type { DateText, Name, Strength } from '../schema/values.ts';
import {
  type Cursor,
  enter,
  finish,
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
import { dateOf, otherDate } from './dates.ts';
import { strengthOf } from './figures.ts';
import { takeTime } from './times.ts';

type Head<E extends { kind: string; facts: unknown }> = Omit<E, 'kind' | 'facts'>;

/** Takes the name of what a header opens; a word with a meaning of its own is reported. */
const takeName = (cursor: Cursor, kind: EntryKind): Name | undefined => {
  const item = takeKind(cursor, 'word');
  if (item === undefined) return undefined;
  const name = nameAt(cursor, item);
  const taken = UNIT_WORDS.has(name.name) || SOFT_WORDS.has(name.name) || /^\p{L}\d*$/u.test(name.name);
  if (taken)
    notice(
      cursor,
      'name-taken',
      item,
      `\`${typed(cursor, item)}\` cannot be the name of a ${kind}: it has a meaning of its own.`,
      {
        todo: `Give it a longer name, as in \`${kind} ${name.name}-1\`.`,
        label: 'a unit, a bowl or a word of the notation',
      },
    );
  return name;
};

const named = (
  cursor: Cursor,
  kind: EntryKind,
  closing: Opened['closing'],
): { name?: Name; full?: { text: string; at: number } } => {
  const name = takeName(cursor, kind);
  const inside = takeKind(cursor, 'text');
  const full = inside === undefined ? closing.says : quoted(cursor, inside);
  return { ...(name && { name }), ...(full && { full }) };
};

const quoted = (cursor: Cursor, item: Item): { text: string; at: number } => ({
  text: typed(cursor, item).slice(1, -1),
  at: nameAt(cursor, item).at,
});

export const bindSalon = ({ cursor, groups, closing }: Opened): Head<Salon> => {
  enter(cursor, groups[0] ?? []);
  const head = named(cursor, 'salon', closing);
  finish(cursor);
  return head;
};

export const bindStylist = ({ cursor, groups, closing }: Opened): Head<Stylist> => {
  enter(cursor, groups[0] ?? []);
  const head = named(cursor, 'stylist', closing);
  const item = takeWord(cursor, 'at') ? takeKind(cursor, 'word') : undefined;
  finish(cursor);
  return { ...head, ...(item && { salon: nameAt(cursor, item) }) };
};

const takeStrength = (cursor: Cursor): Strength | undefined => {
  const strength = strengthOf(cursor, peek(cursor));
  if (strength !== undefined) take(cursor);
  return strength;
};

/** `range NAME "…" KIND`, `product NAME "…" KIND 6% in ratio` */
export const bindShelfHead = (
  { cursor, groups, closing }: Opened,
  kind: 'range' | 'product',
): Head<Product> & Head<Range> => {
  enter(cursor, groups[0] ?? []);
  const head: { -readonly [key in keyof Head<Product>]: Head<Product>[key] } = {
    ...named(cursor, kind, closing),
    inRatio: false,
  };
  const early = takeStrength(cursor);
  const word = takeKind(cursor, 'word');
  if (word !== undefined) {
    head.kindWord = wordAt(cursor, word);
    const kindName = wordOf(cursor, word);
    if (isKind(kindName)) head.type = kindName;
    else {
      const near = nearNames(kindName, KINDS);
      notice(cursor, 'header-shape', word, `\`${typed(cursor, word)}\` is no kind of product.`, {
        todo: near.length > 0 ? `Write \`${near.join('` or `')}\`.` : `The kinds are ${KINDS.join(', ')}.`,
        ...(near[0] !== undefined && { put: { title: `write ${near[0]}`, text: near[0], sure: 'likely' as const } }),
      });
    }
  } else {
    const from = head.full?.at ?? head.name?.at;
    const run = groups[0]?.[0] ?? { from: 0, to: cursor.text.length };
    if (from !== undefined)
      notice(cursor, 'header-shape', run, `The ${kind} says no kind.`, {
        todo: `End the line with one of ${KINDS.join(', ')}.`,
      });
  }
  const strength = early ?? takeStrength(cursor);
  if (strength !== undefined) head.strength = strength;
  else if (head.type === 'developer' && word !== undefined)
    notice(cursor, 'header-shape', word, 'The developer says no strength, so no bowl with it has one.', {
      todo: 'Write its strength after the kind, as in `developer 6%`.',
      label: 'how strong',
    });
  if (peekWord(cursor) === 'in' && peekWord(cursor, 1) === 'ratio') {
    head.inRatio = true;
    take(cursor);
    take(cursor);
  }
  finish(cursor);
  return head;
};

export const bindClientHead = ({ cursor, groups, closing }: Opened): Head<Client> => {
  enter(cursor, groups[0] ?? []);
  const head = named(cursor, 'client', closing);
  finish(cursor);
  return head;
};

/** Takes a date, or reports one that is not year-month-day; `undefined` when the item is neither. */
const takeAnyDate = (cursor: Cursor, draft: { date?: DateText | undefined }): boolean => {
  const item = peek(cursor);
  if (item === undefined) return false;
  if (item.kind === 'date') {
    take(cursor);
    const date = dateOf(cursor, item);
    if (date !== undefined && draft.date !== undefined)
      notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is a second date.`, {
        todo: 'Write an entry for each day.',
        label: 'kept as typed',
      });
    else if (date !== undefined) draft.date = date;
    return true;
  }
  if ((item.kind === 'slashed' || item.kind === 'chain' || item.kind === 'number') && otherDate(cursor, item)) {
    take(cursor);
    return true;
  }
  if (item.kind !== 'month') return false;
  take(cursor);
  notice(cursor, 'bad-date', item, `\`${typed(cursor, item)}\` is a month; the line needs a day.`, {
    todo: `Write the day as well, as in \`${typed(cursor, item)}-01\`.`,
  });
  return true;
};

/** Whether a word stands here that can go on a name: neither `by` nor another word of the notation. */
const isFurtherName = (cursor: Cursor): boolean => {
  const word = peekWord(cursor);
  return word !== undefined && !SOFT_WORDS.has(word);
};

/** `visit 2026-09-04 14:00 wren-abbott by io at harbour`, in any order. */
export const bindVisitHead = ({ cursor, groups, closing }: Opened): Head<Visit> => {
  enter(cursor, groups[0] ?? []);
  const head: { -readonly [key in keyof Head<Visit>]: Head<Visit>[key] } = {};
  if (closing.says !== undefined) head.says = closing.says;
  if (closing.by !== undefined) head.by = closing.by;
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (takeAnyDate(cursor, head)) continue;
    const time = head.time === undefined ? takeTime(cursor) : undefined;
    if (time !== undefined) head.time = time;
    else if (takeWord(cursor, 'by')) {
      const by = takeKind(cursor, 'word');
      if (by !== undefined) head.by = nameAt(cursor, by);
    } else if (takeWord(cursor, 'at')) {
      const at = takeTime(cursor);
      const salon = at === undefined ? takeKind(cursor, 'word') : undefined;
      if (at !== undefined) head.time = at;
      else if (salon !== undefined) head.salon = nameAt(cursor, salon);
    } else if (item.kind === 'word' && head.client === undefined) {
      head.client = nameAt(cursor, take(cursor) ?? item);
      // `Marlo Fenwick`: whether that is someone's full name is for the journal to say.
      const more: Name[] = [];
      while (isFurtherName(cursor)) more.push(nameAt(cursor, take(cursor) ?? item));
      if (more.length > 0) head.more = more;
    } else if (item.kind === 'comma' || item.kind === 'stop') take(cursor);
    else break;
  }
  finish(cursor, 'A visit line holds a date, a time, one client, `by` and `at`.');
  if (head.client === undefined)
    notice(cursor, 'header-shape', { from: 0, to: cursor.text.length }, 'The visit names no client.', {
      todo: `Write the client’s short name after the date, as in \`visit ${head.date?.date ?? '2026-09-04'} ${shortOf(head.says?.text)}\`.`,
    });
  return head;
};

/** A full name as a short one: `Tove Amberley` as `tove-amberley`. */
const shortOf = (full = 'wren-abbott'): string => {
  const words = full.toLowerCase().match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
  return words.length === 0 || words.length > 4 ? 'wren-abbott' : words.join('-');
};

/** `stock 2026-08-01 at harbour` */
export const bindStockHead = ({ cursor, groups, closing }: Opened): Head<Stock> => {
  enter(cursor, groups[0] ?? []);
  const head: { -readonly [key in keyof Head<Stock>]: Head<Stock>[key] } = {};
  if (closing.says !== undefined) head.says = closing.says;
  while (peek(cursor) !== undefined) {
    if (takeAnyDate(cursor, head)) continue;
    const time = head.time === undefined ? takeTime(cursor) : undefined;
    if (time !== undefined) head.time = time;
    else if (takeWord(cursor, 'at')) {
      const salon = takeKind(cursor, 'word');
      if (salon !== undefined) head.salon = nameAt(cursor, salon);
    } else break;
  }
  finish(cursor, 'A stock line holds a date, a time and `at`.');
  return head;
};
