import { daysOfUnit } from '../../trade/growth.ts';
import type { Growth, Hours, Money, Policy, Scale } from '../schema/shelf.ts';
import type { Period } from '../schema/values.ts';
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
  peekWord,
  take,
  takeKind,
  takeWord,
  typed,
  wordAt,
  wordOf,
} from './cursor.ts';
import { amountOf, durationOf, plainNumber, unitOf } from './figures.ts';
import { periodOf } from './times.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

export const bindMoney = (opened: Opened): Bound<Money> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'word');
  if (item === undefined)
    return needs(cursor, 'The line names no currency.', 'Write its three letters, as in `money GBP`.');
  const currency = nameAt(cursor, item);
  if (!/^[a-z]{3}$/.test(currency.name)) {
    notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is no currency of three letters (ISO 4217).`, {
      todo: 'Write its three letters, as in `money GBP`.',
    });
    return undefined;
  }
  finish(cursor);
  return { currency };
};

export const bindScale = (opened: Opened): Bound<Scale> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'number');
  if (item === undefined)
    return needs(cursor, 'The line does not say what the scales show.', 'Write the smallest step, as in `scale 1 g`.');
  const step = amountOf(cursor, item);
  finish(cursor);
  return step && { step };
};

export const bindHours = (opened: Opened): Bound<Hours> | undefined => {
  const cursor = enterAll(opened);
  const known = cursor.notices.length;
  const from = takeHours(cursor);
  const to =
    takeWord(cursor, 'to', 'until') || takeKind(cursor, 'dash') !== undefined ? takeHours(cursor)?.from : from?.to;
  if (from === undefined || to === undefined) {
    if (cursor.notices.length > known) return undefined;
    return needs(cursor, 'The line gives no opening hours.', 'Write both ends, as in `hours 9:00-19:00`.');
  }
  finish(cursor);
  return { from: from.from, to };
};

/** Takes `9:00`, `9:00-19:00`, `9-19`, which is hours alone. */
const takeHours = (cursor: Cursor): Period | undefined => {
  const item = peek(cursor);
  if (item === undefined || !['number', 'clock', 'pair'].includes(item.kind)) return undefined;
  take(cursor);
  return periodOf(cursor, item);
};

/** `growth 0.35 mm/d`, `growth 1.2 cm/mo` */
export const bindGrowth = (opened: Opened): Bound<Growth> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'number');
  const slash = takeKind(cursor, 'slash');
  const per = takeKind(cursor, 'word');
  const days = per && daysOfUnit(wordOf(cursor, per));
  const length = item && { mm: 1, cm: 10 }[unitOf(cursor, item)];
  const rate = item && plainNumber(cursor, item);
  if (rate === undefined || slash === undefined || days === undefined || length === undefined)
    return needs(cursor, 'The line gives no rate of growth.', 'Write length and time, as in `growth 0.35 mm/d`.');
  finish(cursor);
  return { rate: (rate * length) / days };
};

export const bindPolicy = (opened: Opened): Bound<Policy> | undefined => {
  const cursor = enterAll(opened);
  const topic = takeKind(cursor, 'word');
  if (topic === undefined)
    return needs(
      cursor,
      'The line does not say what the policy is about.',
      'Write it as in `policy skin-test 48h every 26w`.',
    );
  const draft: Bound<Policy> = { topic: nameAt(cursor, topic), words: [], numbers: [], durations: [] };
  // `skin test` is the one topic of two words.
  const second = draft.topic.name === 'skin' && peekWord(cursor) === 'test' ? take(cursor) : undefined;
  if (second !== undefined) draft.topic = { name: 'skin-test', at: atOf({ from: topic.from, to: second.to }) };
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (item.kind !== 'word' && item.kind !== 'number' && item.kind !== 'comma') break;
    take(cursor);
    const duration = durationOf(cursor, item);
    if (item.kind === 'word') draft.words.push(wordAt(cursor, item));
    else if (duration !== undefined) draft.durations.push(duration);
    else if (item.kind === 'number') {
      const value = plainNumber(cursor, item);
      if (value !== undefined) draft.numbers.push(value);
    }
  }
  finish(cursor);
  return draft;
};
