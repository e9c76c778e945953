import type { Item, Run } from '../../notation/line-tree.ts';
import type { Clock, Period } from '../schema/values.ts';
import { atOf, type Cursor, notice, peek, take, typed } from './cursor.ts';
import { boundedAt, figure, hedge } from './figures.ts';

const HALF_DAY = 720;

type Time = { minutes: number; other?: number };

/** Minutes since midnight of `14:35`, `14.35`, `2`, with `am` or `pm` where it stands. */
const timeOfDay = (cursor: Cursor, run: Run, half: Run | undefined): Time | undefined => {
  const text = typed(cursor, run).replace(/\s/g, '');
  const [hourText = '', minuteText = '0', seconds] = text.split(text.includes(':') ? ':' : /[.,]/);
  const [hour, minute] = [Number(hourText), Number(minuteText)];
  const fault = (message: string, todo: string): undefined =>
    void notice(cursor, 'bad-time', run, message, { todo, label: 'no time of day' });
  if (seconds !== undefined || !Number.isInteger(hour) || !Number.isInteger(minute))
    return fault(`\`${text}\` is no time of day.`, 'Write hours and minutes, as in `14:35`.');
  if (text !== hourText && minuteText.length !== 2)
    return fault(
      `\`${text}\` is no time of day.`,
      `Write \`${hourText}:0${minuteText}\` or \`${hourText}:${minuteText}0\`.`,
    );
  if (hour > 24 || (hour === 24 && minute > 0))
    return fault(`The hour is ${hour}; a day has 24.`, 'Write an hour from 0 to 23.');
  if (minute > 59) return fault(`The minute is ${minute}; an hour has 60.`, 'Write a minute from 00 to 59.');
  if (half !== undefined) {
    if (hour < 1 || hour > 12)
      return fault(`\`${text}${typed(cursor, half)}\` is no time of day.`, 'Write `am` and `pm` after 1 to 12 only.');
    const noon = typed(cursor, half).toLowerCase() === 'pm' ? HALF_DAY : 0;
    return { minutes: (hour % 12) * 60 + minute + noon };
  }
  const minutes = hour * 60 + minute;
  // One figure for the hour, or 10 to 12: only the salon's hours can say which half of the day.
  const settled = hourText.length > 1 && (hourText.startsWith('0') || hour > 12);
  return settled || hour === 0 ? { minutes } : { minutes, other: (minutes + HALF_DAY) % (2 * HALF_DAY) };
};

const clockOf = ({ minutes, other }: Time, item: Item, run: Run): Clock =>
  other === undefined && !item.about
    ? { minutes, at: atOf(run) }
    : { minutes, ...(other !== undefined && { other }), ...hedge(item), at: atOf(run) };

/** A clock or pair item as a span of clock time. */
export const periodOf = (cursor: Cursor, item: Item): Period | undefined => {
  const at = atOf(item);
  if (item.relative) {
    const scale = item.unit !== undefined && /^h$/i.test(typed(cursor, item.unit)) ? 60 : 1;
    const figureRun = item.first ?? item;
    const after = boundedAt(cursor, figureRun, figure(typed(cursor, figureRun)));
    return after === undefined ? undefined : { from: { after: after * scale, at }, at };
  }
  if (item.first === undefined) return undefined;
  const first = timeOfDay(cursor, item.first, item.unit ?? item.secondUnit);
  if (first === undefined) return undefined;
  const from = clockOf(first, item, item.first);
  if (item.second === undefined) return { from, at };
  const second = timeOfDay(cursor, item.second, item.secondUnit ?? item.unit);
  if (second === undefined) return { from, at };
  return { from, to: clockOf(second, item, item.second), at };
};

/**
 * Takes `0+25` out of the line, wherever it stands: minutes after the `zero` of the head. The three touch; `0 + 25` and
 * `10+25` are what they were.
 */
export const takeHeadTime = (cursor: Cursor): Period | undefined => {
  const index = cursor.items.findIndex((item, at) => {
    const [plus, after] = cursor.items.slice(at + 1, at + 3);
    return (
      at >= cursor.next &&
      item.kind === 'number' &&
      typed(cursor, item) === '0' &&
      plus?.kind === 'plus' &&
      plus.glued &&
      after?.kind === 'number' &&
      after.glued &&
      /^\d+( ?min(s|utes?)?)?$/i.test(typed(cursor, after))
    );
  });
  const [zero, plus, after] = index < 0 ? [] : cursor.items.slice(index, index + 3);
  if (zero === undefined || plus === undefined || after === undefined) return undefined;
  const run = after.first ?? after;
  const head = boundedAt(cursor, run, figure(typed(cursor, run)));
  if (head === undefined) return undefined;
  cursor.items = cursor.items.filter((_, place) => place < index || place > index + 2);
  const at = atOf({ from: zero.from, to: after.to });
  return { from: { head, at }, at };
};

/** Takes a time of day from a slot that is not first on its line: a pair, or a number such as `14.35`. */
export const takeTime = (cursor: Cursor): Clock | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'clock' || item?.kind === 'pair') {
    take(cursor);
    const period = periodOf(cursor, item);
    if (period?.to !== undefined)
      notice(cursor, 'not-read', item.second ?? item, 'One time belongs here; the first of the span counts.', {
        todo: 'Write the one time.',
        label: 'not kept',
      });
    return period?.from;
  }
  if (item?.kind !== 'number' || item.percent || item.second) return undefined;
  const half = item.unit !== undefined && /^[ap]m$/i.test(typed(cursor, item.unit)) ? item.unit : undefined;
  if (half === undefined && (item.unit !== undefined || !/^\d{1,2}[.,]\d\d$/.test(typed(cursor, item))))
    return undefined;
  take(cursor);
  const time = item.first && timeOfDay(cursor, item.first, half);
  return time && clockOf(time, item, item);
};
