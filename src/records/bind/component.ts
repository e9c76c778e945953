import type { Item } from '../../notation/line-tree.ts';
import { isBowlName, SOFT_WORDS } from '../../notation/words.ts';
import { fold } from '../../text/fold.ts';
import { spanOf } from '../../text/span.ts';
import { isTimeUnit, isUnit } from '../../trade/units.ts';
import type { Component, Name, Shade } from '../schema/values.ts';
import {
  atOf,
  type Cursor,
  enter,
  finish,
  nameAt,
  notice,
  peek,
  peekWord,
  take,
  takeWord,
  typed,
  wordOf,
} from './cursor.ts';
import { amountOf, figure, ratioOf, strengthOf, unitOf } from './figures.ts';

/** A shade of figures and letters as records write it: `7.43` and `7-43` are `7/43`. */
export const shadeOf = (text: string, at: number): Shade => {
  const match = /^(\d+(?:[.,]5)?)([/.,-]?)([\p{L}\d/]+)$/u.exec(text);
  const slashed = /^(\d+(?:[.,]5)?)\/(.+)$/.exec(text);
  const [, depth = '', tones = ''] = slashed ?? (match === null ? [] : [match[0], match[1], match[3]]);
  if (depth === '') return { shade: fold(text), at };
  const join = match?.[2] === '' && !text.includes('/') ? '' : '/';
  const upper = tones.toUpperCase();
  return { shade: `${depth}${join}${upper}`, depth: figure(depth), tones: upper, at };
};

type Draft = { -readonly [key in keyof Component]: Component[key] };

/** A number without unit, and the letters stuck to it, while it is still open whether it is an amount or a shade. */
type Open = { readonly item: Item; readonly letters: Item | undefined };

const isShaped = (cursor: Cursor, { item, letters }: Open): boolean => {
  if (letters !== undefined) return true;
  const text = typed(cursor, item);
  return (
    item.about !== true && (/^\d+[.,]\d+$/.test(text) || (item.second !== undefined && /^\d{1,2}-\d+$/.test(text)))
  );
};

/** A single letter stuck to a figure can be a unit or a tone (`6G`, `8W`): only its place among the others tells. */
const isLetterUnit = (cursor: Cursor, item: Item): boolean =>
  item.unit !== undefined && item.second === undefined && /^\d+[A-Za-z]$/.test(typed(cursor, item));

const openText = (cursor: Cursor, { item, letters }: Open): { text: string; at: number } => {
  const run = { from: item.from, to: letters?.to ?? item.to };
  return { text: typed(cursor, run), at: atOf(run) };
};

/** Of the open numbers one is the amount, another the shade, wherever the name stands. */
const settle = (cursor: Cursor, draft: Draft, open: readonly Open[]): void => {
  const rest = [...open];
  const shade = (found: Open): void => {
    const { text, at } = openText(cursor, found);
    draft.shade = shadeOf(text, at);
    rest.splice(rest.indexOf(found), 1);
  };
  const amount = (found: Open): void => {
    const value = amountOf(cursor, found.item);
    if (value !== undefined) draft.amount = value;
    rest.splice(rest.indexOf(found), 1);
  };
  const plain = open.filter((one) => !isShaped(cursor, one) && !isLetterUnit(cursor, one.item));
  const shaped = open.filter((one) => isShaped(cursor, one));
  const lettered = open.filter((one) => isLetterUnit(cursor, one.item));
  const weighed = draft.amount !== undefined;
  if (draft.shade === undefined && (open.length > 1 || weighed)) {
    const lettersOnly = shaped.filter(({ letters }) => letters !== undefined);
    const [first, second] = shaped;
    if (lettersOnly[0] !== undefined) shade(lettersOnly[0]);
    else if ((plain[0] !== undefined || weighed) && first !== undefined) shade(first);
    else if ((plain[0] !== undefined || weighed) && lettered[0] !== undefined) shade(lettered[0]);
    else if (lettered.length > 1 && lettered[1] !== undefined) shade(lettered[1]);
    else if (first !== undefined && lettered[0] !== undefined) shade(first);
    else if (first !== undefined && second !== undefined) {
      const [a, b] = [openText(cursor, first).text, openText(cursor, second).text];
      notice(
        cursor,
        'two-readings',
        { from: first.item.from, to: second.item.to },
        `\`${a}\` and \`${b}\` can each be the shade.`,
        {
          todo: `Write the shade with a slash, as in \`${b.replace(/[.,-]/, '/')}\`.`,
          label: 'which is the shade',
        },
      );
      rest.splice(0);
      return;
    }
  } else if (draft.shade === undefined && shaped[0]?.letters !== undefined) {
    shade(shaped[0]);
  }
  const [next] = rest;
  if (next !== undefined) {
    if (draft.amount === undefined) amount(next);
    const [extra] = rest;
    if (extra !== undefined) {
      const { text } = openText(cursor, extra);
      notice(cursor, 'no-name', extra.item, `\`${text}\` has no name in this part of the mix.`, {
        todo: 'Write `+` before it, or `vol` or `%` after it for a strength.',
        label: 'of what',
      });
    }
  }
};

const lotOf = (cursor: Cursor, draft: Draft): void => {
  const first = peek(cursor);
  if (first === undefined) return;
  let last = first;
  take(cursor);
  while (peek(cursor)?.glued) last = take(cursor) ?? last;
  const run = { from: first.from, to: last.to };
  draft.lot = { text: typed(cursor, run), at: atOf(run) };
};

/** `from A` takes out of a bowl; `7.5% from dev-6 dev-9` blends two strengths. */
const fromOf = (cursor: Cursor, draft: Draft): void => {
  const names: Name[] = [];
  for (;;) {
    const item = peek(cursor);
    const word = peekWord(cursor);
    if (item === undefined || word === undefined || SOFT_WORDS.has(word)) break;
    names.push(nameAt(cursor, item));
    take(cursor);
  }
  const [first] = names;
  if (first === undefined) return;
  if (names.length === 1 && isBowlName(first.name)) draft.out = first;
  else draft.blend = names;
};

const addName = (cursor: Cursor, draft: Draft, item: Item): boolean => {
  const name = nameAt(cursor, item);
  if (draft.product === undefined) draft.product = name;
  else if (draft.second === undefined) draft.second = name;
  else {
    notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is a third name in one part of the mix.`, {
      todo: 'Write `+` between two products.',
    });
    return false;
  }
  return true;
};

/** Binds one component of a mix, in whatever order its amount, name, shade, strength and ratio stand. */
export const bindComponent = (cursor: Cursor, items: readonly Item[]): Component => {
  enter(cursor, items);
  const first = items[0];
  const last = items.at(-1);
  const draft: Draft = { at: first && last ? spanOf(first.from, last.to) : 0 };
  const open: Open[] = [];
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'number') {
      take(cursor);
      const unit = unitOf(cursor, item);
      if (unit === '%' || unit === 'vol') {
        const strength = strengthOf(cursor, item);
        if (strength !== undefined && draft.strength === undefined) draft.strength = strength;
        continue;
      }
      const after = peek(cursor);
      const letters =
        after?.kind === 'word' && after.glued && item.unit === undefined && after.to - after.from <= 2
          ? after
          : undefined;
      if (letters !== undefined) take(cursor);
      const plainUnit = item.unit === undefined || isTimeUnit(unit) || isLetterUnit(cursor, item);
      if (
        plainUnit &&
        !(isLetterUnit(cursor, item) && unit === 'g' && items.filter(({ kind }) => kind === 'number').length === 1)
      )
        open.push({ item, letters });
      else {
        const amount = amountOf(cursor, item);
        if (amount !== undefined && draft.amount === undefined) draft.amount = amount;
      }
      continue;
    }
    if (item.kind === 'slashed' && draft.shade === undefined) {
      take(cursor);
      draft.shade = shadeOf(typed(cursor, item), atOf(item));
      continue;
    }
    if (item.kind === 'pair' && draft.ratio === undefined) {
      take(cursor);
      const ratio = ratioOf(cursor, item);
      if (ratio !== undefined) draft.ratio = ratio;
      continue;
    }
    if (item.kind === 'word') {
      if (takeWord(cursor, 'lot')) lotOf(cursor, draft);
      else if (takeWord(cursor, 'from')) fromOf(cursor, draft);
      else {
        take(cursor);
        addName(cursor, draft, item);
      }
      continue;
    }
    break;
  }
  settle(cursor, draft, open);
  measureFirst(cursor, draft, items);
  finish(cursor);
  return draft;
};

/** `1 scoop clay`, `clay 1 scoop`: of two names the one straight after a bare amount may be a measure. */
const measureFirst = (cursor: Cursor, draft: Draft, items: readonly Item[]): void => {
  const { amount, product, second } = draft;
  if (amount === undefined || amount.unit !== '' || product === undefined || second === undefined) return;
  const index = items.findIndex((item) => item.kind === 'number' && atOf(item) === amount.at);
  const after = items[index + 1];
  if (after?.kind === 'word' && wordOf(cursor, after) === second.name && atOf(after.first ?? after) === second.at) {
    // The name stood before the amount, so the word after it can only be a measure.
    draft.amount = { ...amount, unit: second.name };
    delete draft.second;
  }
};

/** Whether a unit can stand on an amount in a bowl. */
export const isWeightUnit = (unit: string): boolean => unit === '' || unit === 'p' || isUnit(unit);
