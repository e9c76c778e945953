import type { Item } from '../../notation/line-tree.ts';
import { textEnd } from '../../notation/space.ts';
import { isBowlName } from '../../notation/words.ts';
import { fitted } from '../../text/fitted.ts';
import { fromOf, sliceOf, toOf } from '../../text/span.ts';
import type { Component, Name } from '../schema/values.ts';
import type { Again, Bowl, Home, Left, More, Plus, Weighed } from '../schema/visit.ts';
import { bindComponent, isWeightUnit } from './component.ts';
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
  wordOf,
} from './cursor.ts';
import { dateOf, otherDate } from './dates.ts';
import { amountOf, unitOf } from './figures.ts';
import { zoneWord } from './seen.ts';
import { takeTime } from './times.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

/** Takes the bowl's name that a line must begin with, or reports that there is none. */
const leadBowl = (cursor: Cursor, word: string): Name | undefined => {
  const first = peek(cursor);
  const name = peekWord(cursor);
  if (first !== undefined && name !== undefined && isBowlName(name)) {
    take(cursor);
    takeKind(cursor, 'stop');
    return nameAt(cursor, first);
  }
  // `roots 40 clay`: a word where the bowl's name belongs lends its letter; in `clay 40` it is the product.
  const lends = name !== undefined && peek(cursor, 1)?.kind === 'number' && peek(cursor, 2)?.kind === 'word';
  const letter = lends ? (name[0] ?? 'a').toUpperCase() : 'A';
  const after = lends ? cursor.items.slice(1, 3) : cursor.items.slice(0, 2);
  const more = (after.at(-1)?.to ?? first?.to ?? cursor.text.length) < textEnd(cursor.text) ? ['…'] : [];
  const line = [word, letter, ...after.map((item) => typed(cursor, item)), ...more].join(' ');
  notice(cursor, 'no-bowl', first ?? { from: 0, to: cursor.text.length }, `The \`${word}\` line names no bowl.`, {
    todo: `Write a letter first, as in \`${line}\`.`,
    label: 'a bowl is one letter',
  });
  return undefined;
};

/** Cuts `= 150` off the last group: the total as typed. */
const takeClaim = (cursor: Cursor, groups: Item[][]): Bowl['claim'] => {
  const last = groups.at(-1) ?? [];
  const index = last.findIndex(({ kind }) => kind === 'equal');
  if (index < 0) return undefined;
  const claim = last.splice(index);
  const figure = claim[1]?.kind === 'number' ? claim[1] : undefined;
  enter(cursor, figure === undefined ? claim : claim.slice(2));
  finish(cursor, 'Write the total in grams, as in `= 150`.');
  return figure && amountOf(cursor, figure);
};

const bindParts = (cursor: Cursor, groups: readonly (readonly Item[])[]): Component[] =>
  withBlends(cursor, groups).map((group) => bindComponent(cursor, group));

/** `7.5% from dev-6, dev-9`: a name alone after the comma is the blend’s second developer. */
const withBlends = (cursor: Cursor, groups: readonly (readonly Item[])[]): (readonly Item[])[] => {
  const all: (readonly Item[])[] = [];
  for (const group of groups) {
    const before = all.at(-1) ?? [];
    const [from, name] = before.slice(-2);
    const [only] = group;
    const blends =
      from?.kind === 'word' &&
      wordOf(cursor, from) === 'from' &&
      name?.kind === 'word' &&
      !isBowlName(wordOf(cursor, name)) &&
      before.some(({ percent, unit }) => percent === true || unit !== undefined);
    if (blends && group.length === 1 && only?.kind === 'word') all[all.length - 1] = [...before, only];
    else if (group.length > 0) all.push(group);
  }
  return all;
};

/** `40 clay 20vol 1:2`: a strength beside a shade, or a ratio where nothing else is mixed, wants a part of its own. */
const reportJoined = (cursor: Cursor, { product, strength, shade, ratio }: Component, alone: boolean): void => {
  if (product === undefined || strength === undefined || (shade === undefined && !(alone && ratio !== undefined)))
    return;
  const text = sliceOf(cursor.text, strength.at);
  const run = { from: fromOf(strength.at), to: toOf(strength.at) };
  notice(
    cursor,
    'two-readings',
    run,
    `\`${text}\` stands in one part of the mix with \`${sliceOf(cursor.text, product.at)}\`.`,
    {
      todo: `Write \`+\` before \`${text}\`, or before its weight.`,
      label: 'a part of its own',
    },
  );
};

/** `40 clay +`: a hand that was called away before the next part. A comma at the end leaves nothing out. */
const reportBroken = (cursor: Cursor, groups: readonly (readonly Item[])[]): void => {
  const before = groups.at(-2)?.at(-1);
  if (groups.at(-1)?.length !== 0 || before === undefined) return;
  const plus = cursor.text.indexOf('+', before.to);
  if (plus < 0 || cursor.text.slice(before.to, plus).trim() !== '') return;
  notice(cursor, 'not-read', { from: plus, to: plus + 1 }, 'Nothing stands after the last `+`.', {
    todo: 'Write the part that is missing, as in `+ 20vol 1:2`, or take the `+` out.',
    label: 'a part is missing',
  });
};

const bindMix = (opened: Opened, word: string): { bowl: Name; groups: Item[][] } | undefined => {
  const { cursor, groups } = opened;
  enter(cursor, groups[0] ?? []);
  const bowl = leadBowl(cursor, word);
  if (bowl !== undefined) reportBroken(cursor, groups);
  return bowl && { bowl, groups: [(groups[0] ?? []).slice(cursor.next), ...groups.slice(1)] };
};

/** `bowl A 40 clay + 20vol 1:2 = 120`, `bowl B 90 g of 2p cream 7/0 + …` */
export const bindBowl = (opened: Opened): Bound<Bowl> | undefined => {
  const lead = bindMix(opened, 'bowl');
  if (lead === undefined) return undefined;
  const { cursor } = opened;
  const { bowl, groups } = lead;
  // `bowl A = 40 clay + 80 20vol`: here the sign sums nothing up.
  if (groups[0]?.[0]?.kind === 'equal' && (groups.length > 1 || groups[0].length > 2)) groups[0].shift();
  const claim = takeClaim(cursor, groups);
  enter(cursor, groups[0] ?? []);
  const total = peek(cursor)?.kind === 'number' && peekWord(cursor, 1) === 'of' ? take(cursor) : undefined;
  if (total !== undefined) {
    take(cursor);
    groups[0] = (groups[0] ?? []).slice(cursor.next);
  }
  const amount = total && amountOf(cursor, total);
  const known = cursor.notices.length;
  const parts = bindParts(cursor, groups);
  if (cursor.notices.length === known) for (const part of parts) reportJoined(cursor, part, parts.length === 1);
  if (parts.length === 0)
    sayNothing(cursor, 'The bowl holds nothing yet.', 'Write what goes in it, as in `bowl A 40 clay + 20vol 1:2`.');
  return { bowl, parts, ...(amount && { total: amount }), ...(claim && { claim }) };
};

const sayNothing = (cursor: Cursor, message: string, todo: string): void =>
  notice(cursor, 'nothing-said', { from: 0, to: cursor.text.length }, message, { todo });

/** `plus A 3 bond`, `weighed A 41 clay, 82 dev-6` */
export const bindParted = (opened: Opened, word: 'plus' | 'weighed'): (Bound<Plus> & Bound<Weighed>) | undefined => {
  const lead = bindMix(opened, word);
  if (lead === undefined) return undefined;
  const parts = bindParts(opened.cursor, lead.groups);
  if (parts.length === 0)
    sayNothing(
      opened.cursor,
      `The \`${word}\` line has no amount.`,
      `Write what and how much, as in \`${word} A 3 bond\`.`,
    );
  return { bowl: lead.bowl, parts };
};

/** `home M 12 + 180 conditioner`: 12 g out of bowl M. */
export const bindHome = ({ cursor, groups }: Opened): Bound<Home> => {
  enter(cursor, groups[0] ?? []);
  const name = peekWord(cursor);
  const first = peek(cursor);
  const lead = first !== undefined && name !== undefined && isBowlName(name) ? take(cursor) : undefined;
  const parts = bindParts(cursor, [(groups[0] ?? []).slice(cursor.next), ...groups.slice(1)]);
  if (lead === undefined) return { parts };
  const bowl = nameAt(cursor, lead);
  const [own, ...more] = parts;
  // The part without a name is what comes out of the bowl.
  return {
    bowl,
    parts: own && own.product === undefined && own.strength === undefined ? [{ ...own, out: bowl }, ...more] : parts,
  };
};

/** `again A from 2026-07-10 A 80%`, `again b2 from b1 50%`, `again A from wren-abbott 2026-07-10 A` */
export const bindAgain = ({ cursor, groups }: Opened): Bound<Again> | undefined => {
  enter(cursor, groups[0] ?? []);
  const bowl = leadBowl(cursor, 'again');
  if (bowl === undefined) return undefined;
  const from: { -readonly [key in keyof Again['from']]: Again['from'][key] } = {};
  let share: Again['share'];
  takeWord(cursor, 'from');
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind === 'date' && from.date === undefined) {
      take(cursor);
      const date = dateOf(cursor, item);
      if (date !== undefined) from.date = date;
    } else if ((item.kind === 'slashed' || item.kind === 'chain') && otherDate(cursor, item)) take(cursor);
    else if (item.kind === 'word' && isBowlName(wordOf(cursor, item)) && from.bowl === undefined) {
      take(cursor);
      from.bowl = nameAt(cursor, item);
    } else if (item.kind === 'word' && from.client === undefined && from.date === undefined) {
      take(cursor);
      from.client = nameAt(cursor, item);
    } else if (item.kind === 'number' && item.percent && share === undefined) {
      take(cursor);
      share = amountOf(cursor, item);
    } else break;
  }
  finish(cursor, 'Write `again A from 2026-07-10 A 80%`.');
  return { bowl, from, ...(share && { share }) };
};

/** `more A 60 at 10:55` */
export const bindMore = ({ cursor, groups }: Opened): Bound<More> | undefined => {
  enter(cursor, groups[0] ?? []);
  const bowl = leadBowl(cursor, 'more');
  if (bowl === undefined) return undefined;
  const first = peek(cursor);
  const amount = first?.kind === 'number' && peekWord(cursor) !== 'at' ? amountOf(cursor, first) : undefined;
  if (first?.kind === 'number') take(cursor);
  takeWord(cursor, 'at');
  const time = takeTime(cursor);
  finish(cursor, 'Write `more A 60 at 10:55`.');
  return { bowl, ...(amount && { amount }), ...(time && { time }) };
};

const FATES: ReadonlySet<string> = new Set(['binned', 'kept', 'given']);
const isFate = (word: string): word is NonNullable<Left['fate']> => FATES.has(word);

/** `left A 14 binned`, `left A 14, T 3 kept` */
export const bindLeft = ({ cursor, groups }: Opened): Bound<Left> | undefined => {
  const left: Left['left'] = [];
  let fate: Left['fate'];
  for (const group of groups) {
    const known = cursor.notices.length;
    enter(cursor, group);
    let bowl: Name | undefined;
    let amount: Left['left'][number]['amount'] | undefined;
    for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
      const word = peekWord(cursor);
      if (word !== undefined && isBowlName(word) && (bowl === undefined || amount !== undefined)) {
        // `left A 14 B 3`
        if (bowl !== undefined && amount !== undefined) {
          left.push({ bowl, amount });
          amount = undefined;
        }
        bowl = nameAt(cursor, item);
      } else if (word !== undefined && isFate(word)) fate = word;
      else if (item.kind === 'number' && amount === undefined && isWeightUnit(unitOf(cursor, item)))
        amount = amountOf(cursor, item);
      else if (word !== undefined && zoneWord(word) !== undefined && bowl === undefined) {
        notice(cursor, 'no-bowl', item, '`left` is for grams left in a bowl, and this line names a place.', {
          todo: `For hair left out write \`leave ${typed(cursor, item)}\`.`,
          label: 'a place, no bowl',
        });
        return undefined;
      } else break;
      take(cursor);
    }
    finish(cursor, 'Write bowl, grams and fate, as in `left A 14 binned`.');
    if (bowl !== undefined && amount !== undefined) left.push({ bowl, amount });
    else if (cursor.notices.length === known && (bowl !== undefined || amount !== undefined)) {
      const run = { from: group[0]?.from ?? 0, to: group.at(-1)?.to ?? cursor.text.length };
      if (bowl === undefined)
        notice(cursor, 'no-bowl', run, 'The grams left belong to no bowl.', { todo: 'Write `left A 14`.' });
      else if (fate === undefined || amount === undefined)
        notice(cursor, 'nothing-said', run, 'The line does not say how many grams are left.', {
          todo: 'Write `left A 14`.',
        });
    }
  }
  if (left.length === 0 && groups.every((group) => group.length === 0))
    sayNothing(cursor, 'The line does not say what is left.', 'Write bowl and grams, as in `left A 14 binned`.');
  return { left: fitted(left), ...(fate && { fate }) };
};
