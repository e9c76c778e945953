import type { Item } from '../../notation/line-tree.ts';
import { evenlySpaced } from '../../notation/space.ts';
import { isBowlName, SOFT_WORDS } from '../../notation/words.ts';
import { fold } from '../../text/fold.ts';
import { spanOf, fromOf as startOf, toOf } from '../../text/span.ts';
import { DEPTHS } from '../../trade/depth.ts';
import { AMBIGUOUS_UNITS, isContainer, isTimeUnit, isUnit } from '../../trade/units.ts';
import type { Component, Name, Shade, Text } from '../schema/values.ts';
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

/** Depths end here; trade/depth.ts names them. */
const LIGHTEST = DEPTHS.at(-1) ?? 0;

/** A shade of figures and letters as records write it: `7.43` and `7-43` are `7/43`. */
export const shadeOf = (text: string, at: number): Shade => {
  const match = /^(\d+(?:[.,]5)?)([/.,-]?)([\p{L}\d/]+)$/u.exec(text);
  const slashed = /^(\d+(?:[.,]5)?)\/(.+)$/.exec(text);
  const [, depth = '', tones = ''] = slashed ?? (match === null ? [] : [match[0], match[1], match[3]]);
  if (depth === '') return { shade: evenlySpaced(fold(text)), at };
  const join = match?.[2] === '' && !text.includes('/') ? '' : '/';
  const upper = evenlySpaced(tones.toUpperCase());
  // A figure past every depth is a number of the maker's own (`77/0`): its depth is not known.
  const known = figure(depth) <= LIGHTEST ? { depth: figure(depth) } : {};
  return { shade: `${depth}${join}${upper}`, ...known, tones: upper, at };
};

/** `third`: of three names one is a measure, until it is settled which. */
type Draft = { -readonly [key in keyof Component]: Component[key] } & { third?: Name };

/** A number without unit, and the letters stuck to it, while it is still open whether it is an amount or a shade. */
type Open = { readonly item: Item; readonly letters: Item | undefined };

const isShaped = (cursor: Cursor, { item, letters }: Open): boolean => {
  if (letters !== undefined) return true;
  const text = typed(cursor, item);
  return (
    item.about !== true && (/^\d+[.,]\d+$/.test(text) || (item.second !== undefined && /^\d{1,2}-\d+$/.test(text)))
  );
};

/** Whether a figure begins with what can be a depth. */
const isDeep = (cursor: Cursor, item: Item): boolean => Number.parseInt(typed(cursor, item), 10) <= LIGHTEST;

/** Numbers that can be the shade; of two dotted ones the one that no depth begins is none (`7.43 30,5`). */
const shapedOf = (cursor: Cursor, open: readonly Open[]): Open[] => {
  const shaped = open.filter((one) => isShaped(cursor, one));
  const deep = shaped.filter(({ item }) => isDeep(cursor, item));
  return shaped.length > 1 && deep.length > 0 ? deep : shaped;
};

/** A single letter stuck to a figure can be a unit or a tone (`6G`, `8W`): only its place among the others tells. */
const isLetterUnit = (cursor: Cursor, item: Item): boolean =>
  item.unit !== undefined && item.second === undefined && /^\d+[A-Za-z]$/.test(typed(cursor, item));

const openText = (cursor: Cursor, { item, letters }: Open): { text: string; at: number } => {
  const run = { from: item.from, to: letters?.to ?? item.to };
  return { text: typed(cursor, run), at: atOf(run) };
};

/** `20v`: past every depth, so no shade, and not yet a strength. */
const strengthTyped = (cursor: Cursor, { item, letters }: Open): void => {
  const run = { from: item.from, to: letters?.to ?? item.to };
  const text = typed(cursor, run);
  const vol = `${text.slice(0, -1)}vol`;
  notice(
    cursor,
    'two-readings',
    run,
    `\`${text}\` reads as a shade of depth ${text.slice(0, -1)}, and depths end at 12.`,
    {
      todo: `Write \`${vol}\` for a strength.`,
      label: 'strength or shade',
      put: { title: `write ${vol}`, text: vol, sure: 'likely' },
    },
  );
};

/**
 * `30 grist 5`: a bare figure straight after the product's name, with no name behind it, can only be a shade that goes by
 * a number. Whether the range has it the shelf tells.
 */
const isNumberedShade = (cursor: Cursor, { product, second, shade }: Draft, { item, letters }: Open): boolean =>
  product !== undefined &&
  second === undefined &&
  shade === undefined &&
  letters === undefined &&
  /^\d{1,3}$/.test(typed(cursor, item)) &&
  cursor.text.slice(toOf(product.at), item.from).trim() === '';

/** Of the open numbers one is the amount, another the shade, wherever the name stands. */
const settle = (cursor: Cursor, draft: Draft, open: readonly Open[]): void => {
  const rest = [...open];
  const shade = (found: Open): void => {
    const { text, at } = openText(cursor, found);
    if (/^[2-9]\dv$/i.test(text)) strengthTyped(cursor, found);
    else draft.shade = shadeOf(text, at);
    rest.splice(rest.indexOf(found), 1);
  };
  const amount = (found: Open): void => {
    const value = amountOf(cursor, found.item);
    if (value !== undefined) draft.amount = value;
    rest.splice(rest.indexOf(found), 1);
  };
  const shaped = shapedOf(cursor, open);
  const lettered = open.filter(({ item }) => isLetterUnit(cursor, item) && isDeep(cursor, item));
  const plain = open.filter((one) => !shaped.includes(one) && !lettered.includes(one));
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
    if (extra !== undefined && isNumberedShade(cursor, draft, extra)) {
      draft.shade = { shade: typed(cursor, extra.item), at: atOf(extra.item) };
    } else if (extra !== undefined) {
      const { text } = openText(cursor, extra);
      // `30 clay 60 dev-6`: the second name is of the second amount, and kept as typed with it.
      const { second } = draft;
      if (second !== undefined && startOf(second.at) > extra.item.to) {
        const run = { from: extra.item.from, to: toOf(second.at) };
        cursor.rest ??= { text: typed(cursor, run), at: atOf(run) };
        delete draft.second;
      }
      notice(cursor, 'no-name', extra.item, `\`${text}\` has no name in this part of the mix.`, {
        todo: 'Write `+` before it, or `vol` or `%` after it for a strength.',
        label: 'of what',
      });
    }
  }
};

/** Takes a lot's number after `lot`: whatever touches. */
export const takeLot = (cursor: Cursor): Text | undefined => {
  const first = take(cursor);
  if (first === undefined) return undefined;
  let last = first;
  while (peek(cursor)?.glued) last = take(cursor) ?? last;
  const run = { from: first.from, to: last.to };
  return { text: typed(cursor, run), at: atOf(run) };
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

/** The place of a measure straight after a bare amount: `3 tbsp cherry`. Of three names any other may lack a plus. */
const afterAmount = (cursor: Cursor, items: readonly Item[]): number | undefined => {
  const index = items.findIndex((item) => item.kind === 'number' && item.unit === undefined && !item.percent);
  const after = items[index + 1];
  return index < 0 || after?.kind !== 'word' || !isContainer(wordOf(cursor, after))
    ? undefined
    : nameAt(cursor, after).at;
};

/** Takes a name; a part of a mix has two at most, and a third where one of them is a measure. A further one is not read. */
const takeName = (cursor: Cursor, draft: Draft, item: Item, items: readonly Item[]): boolean => {
  const name = nameAt(cursor, item);
  if (draft.second !== undefined) {
    const measure = afterAmount(cursor, items);
    const isMeasured = [draft.product, draft.second, name].some((one) => one?.at === measure);
    if (draft.third !== undefined || measure === undefined || !isMeasured) return false;
    draft.third = name;
  } else if (draft.product === undefined) draft.product = name;
  else draft.second = name;
  take(cursor);
  return true;
};

/** Of three names the one straight after the bare amount is its measure: `3 tbsp hulla cherry`, `hulla 3 tbsp cherry`. */
const measureOfThree = (cursor: Cursor, draft: Draft, items: readonly Item[]): void => {
  const { amount, product, second, third } = draft;
  if (third === undefined || product === undefined || second === undefined) return;
  delete draft.third;
  const at = afterAmount(cursor, items);
  const names = [product, second, third];
  const [name, shade] = names.filter((one) => one.at !== at);
  const measure = names.find((one) => one.at === at);
  if (amount === undefined || name === undefined || shade === undefined || measure === undefined) return;
  draft.amount = { ...amount, unit: measure.name };
  draft.product = name;
  draft.second = shade;
};

/** Takes the tones stuck to a figure: `10V`, `6-RV`. */
const takeLetters = (cursor: Cursor): Item | undefined => {
  const dashed = peek(cursor)?.kind === 'dash' && peek(cursor)?.glued === true ? 1 : 0;
  const letters = peek(cursor, dashed);
  if (letters?.kind !== 'word' || !letters.glued || letters.to - letters.from > 2) return undefined;
  cursor.next += dashed + 1;
  return letters;
};

/** Parts of a whole, typed in the form of a shade. */
const HALVES: Readonly<Record<string, string>> = { '1/2': '½', '1/3': '⅓', '2/3': '⅔', '1/4': '¼', '3/4': '¾' };

/** `1/2 scoop clay`: where the amount belongs, and no other amount on the part. */
const isHalfTyped = (cursor: Cursor, items: readonly Item[]): boolean =>
  items[0]?.kind === 'slashed' &&
  HALVES[typed(cursor, items[0])] !== undefined &&
  !items.some((item) => item.kind === 'number' && !item.percent && unitOf(cursor, item) !== 'vol');

/** Binds one component of a mix, in whatever order its amount, name, shade, strength and ratio stand. */
export const bindComponent = (cursor: Cursor, items: readonly Item[]): Component => {
  enter(cursor, items);
  const first = items[0];
  const last = items.at(-1);
  const draft: Draft = { at: first && last ? spanOf(first.from, last.to) : 0 };
  const open: Open[] = [];
  const next = items[1];
  if (first !== undefined && next?.kind === 'word' && isHalfTyped(cursor, items) && isContainer(wordOf(cursor, next))) {
    // `1/2 tube cream`: no shade is measured in tubes.
    take(cursor);
    const [parts = 0, of = 1] = typed(cursor, first).split('/').map(Number);
    draft.amount = { value: Math.round((parts / of) * 10_000) / 10_000, unit: '', at: atOf(first) };
  } else if (first !== undefined && isHalfTyped(cursor, items)) {
    take(cursor);
    const sign = HALVES[typed(cursor, first)] ?? '';
    notice(cursor, 'two-readings', first, `\`${typed(cursor, first)}\` reads as a shade, and the part has no weight.`, {
      todo: `Write \`${sign}\` for the amount, or a weight before the shade.`,
      label: 'amount or shade',
    });
  }
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'number') {
      take(cursor);
      const unit = unitOf(cursor, item);
      if (unit === '%' || unit === 'vol') {
        const strength = strengthOf(cursor, item);
        if (strength !== undefined && draft.strength === undefined) draft.strength = strength;
        continue;
      }
      const letters = item.unit === undefined ? takeLetters(cursor) : undefined;
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
      if (takeWord(cursor, 'lot')) {
        const lot = takeLot(cursor);
        if (lot !== undefined) draft.lot = lot;
      } else if (takeWord(cursor, 'from')) fromOf(cursor, draft);
      else if (!takeName(cursor, draft, item, items)) break;
      continue;
    }
    // `20vol (1:2)`
    if (item.kind !== 'stop' || !items.some(({ kind }) => kind === 'pair') || !/[()]/.test(typed(cursor, item))) break;
    take(cursor);
  }
  settle(cursor, draft, open);
  if (draft.third === undefined) measureFirst(cursor, draft, items);
  else measureOfThree(cursor, draft, items);
  finish(cursor, 'Write `+` between the parts of a mix; quotation marks keep the words as a remark.');
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
export const isWeightUnit = (unit: string): boolean =>
  unit === '' || unit === 'p' || isUnit(unit) || Object.hasOwn(AMBIGUOUS_UNITS, unit);
