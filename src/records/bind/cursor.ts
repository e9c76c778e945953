import type { Item, LineTree } from '../../notation/line-tree.ts';
import type { Notice, ReadingRule } from '../../notation/reading-rules.ts';
import { fold } from '../../text/fold.ts';
import { type At, spanOf } from '../../text/span.ts';
import type { Name, Text, Word } from '../schema/values.ts';

/** One line being bound: its text, the items not yet taken, and where notices go. */
export type Cursor = {
  readonly text: string;
  readonly line: number;
  items: readonly Item[];
  next: number;
  readonly notices: Notice[];
  /** What of the line was not read, as typed; kept in the record. */
  rest?: Text;
};

/** What the closing of a line says: its remark and whose hand. Absent keys stay absent in the record. */
export type Closing = { says?: Text; by?: Name };

export const peek = (cursor: Cursor, ahead = 0): Item | undefined => cursor.items[cursor.next + ahead];

export const take = (cursor: Cursor): Item | undefined => cursor.items[cursor.next++];

export const atOf = (run: { readonly from: number; readonly to: number }): At => spanOf(run.from, run.to);

export const typed = (cursor: Cursor, run: { readonly from: number; readonly to: number }): string =>
  cursor.text.slice(run.from, run.to);

/** The folded word of a word item, without its hedge. */
export const wordOf = (cursor: Cursor, item: Item): string => fold(typed(cursor, item.first ?? item));

/** The next item's folded word, or undefined when it is no word. */
export const peekWord = (cursor: Cursor, ahead = 0): string | undefined => {
  const item = peek(cursor, ahead);
  return item?.kind === 'word' ? wordOf(cursor, item) : undefined;
};

/** Takes the next item when it is this word. */
export const takeWord = (cursor: Cursor, ...words: readonly string[]): boolean => {
  const word = peekWord(cursor);
  if (word === undefined || !words.includes(word)) return false;
  cursor.next++;
  return true;
};

/** Takes the next item when it is of this kind. */
export const takeKind = (cursor: Cursor, kind: Item['kind']): Item | undefined =>
  peek(cursor)?.kind === kind ? take(cursor) : undefined;

/** Most words kept; with more distinct ones than this the table starts anew. */
const MOST_WORDS = 5_000;
const words = new Map<string, string>();

/** A word as it was first met: records name the same few thousand again and again. */
const once = (word: string): string => {
  const known = words.get(word);
  if (known !== undefined) return known;
  if (words.size >= MOST_WORDS) words.clear();
  words.set(word, word);
  return word;
};

export const nameAt = (cursor: Cursor, item: Item): Name => ({
  name: once(wordOf(cursor, item)),
  at: atOf(item.first ?? item),
});

export const wordAt = (cursor: Cursor, item: Item): Word =>
  item.about
    ? { word: once(wordOf(cursor, item)), about: true, at: atOf(item) }
    : { word: once(wordOf(cursor, item)), at: atOf(item) };

export const notice = (
  cursor: Cursor,
  rule: ReadingRule,
  run: { readonly from: number; readonly to: number },
  message: string,
  more: Partial<Pick<Notice, 'todo' | 'label' | 'put'>> = {},
): void => {
  cursor.notices.push({ rule, line: cursor.line, at: atOf(run), message, ...more });
};

/** A line without its closing, in its groups. */
export type Opened = { readonly cursor: Cursor; readonly groups: Item[][]; readonly closing: Closing };

/** Signs that a hand puts before a price: a currency sign, or `@`. They say nothing that the line does not. */
const isMoneySign = (text: string, item: Item): boolean =>
  item.kind === 'unknown' && /^[\p{Sc}@]$/u.test(text.slice(item.from, item.to));

/** A colon that a hand puts after a word or a time (`check 15:05: gold`). */
const isColon = (text: string, item: Item, next: Item | undefined): boolean =>
  item.kind === 'stop' && item.glued && text[item.from] === ':' && next?.glued !== true;

const quotedText = (text: string): string => text.slice(1, text.length > 1 && /["“”»]$/.test(text) ? -1 : undefined);

/**
 * Takes the closing off a line: quoted remarks, `by NAME` and a full stop at its end, in any order. Two remarks are
 * joined. A quotation without an end is kept as the remark and reported.
 */
export const open = (text: string, line: number, tree: LineTree, notices: Notice[]): Opened => {
  const cursor: Cursor = { text, line, items: [], next: 0, notices };
  const groups = tree.groups.map((group) =>
    group.filter((item, at) => !isMoneySign(text, item) && !isColon(text, item, group[at + 1])),
  );
  // `note: …`, `visit: …`: straight after the first word.
  if (groups[0]?.[0]?.kind === 'stop') groups[0].shift();
  const closing: Closing = {};
  const last = groups.at(-1) ?? [];
  const remarks: Item[] = [];
  // A remark on one of several groups (`nape 9 "moss, even", lengths 8`) is a remark on the line.
  for (const group of groups.slice(0, -1))
    if (group.length > 1 && group.at(-1)?.kind === 'text') remarks.push(...group.splice(-1));
  const early = remarks.splice(0);
  for (;;) {
    const item = last.at(-1);
    if (item === undefined) break;
    if (item.kind === 'text' || item.kind === 'open') {
      remarks.unshift(item);
      if (item.kind === 'open') {
        notice(cursor, 'open-quote', { from: item.from, to: item.from + 1 }, 'The quotation has no end on this line.', {
          todo: 'Put `"` where it ends; the rest of the line is kept as its text.',
          label: 'opened here',
        });
      }
      last.pop();
      continue;
    }
    const before = last.at(-2);
    if (
      item.kind === 'word' &&
      before?.kind === 'word' &&
      wordOf(cursor, before) === 'by' &&
      closing.by === undefined
    ) {
      closing.by = nameAt(cursor, item);
      last.splice(-2);
      continue;
    }
    if (item.kind === 'stop' && /[.;:]/.test(typed(cursor, item))) {
      last.pop();
      continue;
    }
    break;
  }
  remarks.unshift(...early);
  const [first] = remarks;
  const final = remarks.at(-1);
  if (first !== undefined && final !== undefined) {
    closing.says = {
      text: remarks.map((item) => quotedText(typed(cursor, item))).join(' '),
      at: spanOf(first.from, final.to),
    };
  }
  return { cursor, groups, closing };
};

/** Takes what joins two things that are named one after the other: a comma, a plus sign, `and` or `&`. */
export const takeJoiner = (cursor: Cursor): boolean => {
  const item = peek(cursor);
  if (item === undefined || peek(cursor, 1) === undefined) return false;
  const joins = item.kind === 'comma' || item.kind === 'plus' || /^(and|&)$/i.test(typed(cursor, item));
  if (joins) cursor.next++;
  return joins;
};

/** Points the cursor at the items of one group. */
export const enter = (cursor: Cursor, items: readonly Item[]): void => {
  cursor.items = items;
  cursor.next = 0;
};

/** Reports what is left of the group, once, as one run. */
export const finish = (cursor: Cursor, hint?: string): void => {
  const first = peek(cursor);
  const last = cursor.items.at(-1);
  if (first === undefined || last === undefined) return;
  const run = { from: first.from, to: last.to };
  cursor.next = cursor.items.length;
  const words = typed(cursor, run);
  cursor.rest = { text: cursor.rest === undefined ? words : `${cursor.rest.text} ${words}`, at: atOf(run) };
  notice(cursor, 'not-read', run, `\`${words}\` is not read here.`, {
    todo: hint ?? 'Put it in quotation marks to keep it as a remark.',
    label: 'kept as typed',
  });
};

/** Items of all groups with commas between them, for words whose commas part more than lists; empty groups left out. */
export const flatten = (groups: readonly (readonly Item[])[]): Item[] => {
  const items: Item[] = [];
  for (const group of groups) {
    const before = items.at(-1);
    const after = group[0];
    // The tree keeps no commas: this one lies somewhere between its neighbours.
    if (before !== undefined && after !== undefined)
      items.push({ kind: 'comma', from: before.to, to: after.from, glued: true });
    items.push(...group);
  }
  return items;
};

/** Reports that a line lacks what its word needs, at the item where it was looked for. */
export const needs = (cursor: Cursor, message: string, todo: string): undefined =>
  void notice(cursor, 'nothing-said', peek(cursor) ?? { from: 0, to: cursor.text.length }, message, { todo });

/** The cursor at all items of a line, its commas among them. */
export const enterAll = ({ cursor, groups }: Opened): Cursor => {
  enter(cursor, flatten(groups));
  return cursor;
};

/** Takes names, with commas between them or none. */
export const takeNames = (cursor: Cursor): Name[] => {
  const names: Name[] = [];
  for (let item = peek(cursor); item?.kind === 'word' || item?.kind === 'comma'; item = peek(cursor)) {
    if (item.kind === 'word') names.push(nameAt(cursor, item));
    take(cursor);
  }
  return names;
};
