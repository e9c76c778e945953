import type { Item } from '../../notation/line-tree.ts';
import { daysInMonth, isDate, isMonth } from '../../text/dates.ts';
import type { DateText, When } from '../schema/values.ts';
import { atOf, type Cursor, notice, peek, take, typed } from './cursor.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const two = (value: number): string => String(value).padStart(2, '0');

const monthFault = (cursor: Cursor, item: Item, year: number, month: number, day: number): void => {
  const text = typed(cursor, item);
  if (month < 1 || month > 12) {
    const swapped = `${year}-${two(day)}-${two(month)}`;
    const todo = isDate(swapped)
      ? `Write \`${swapped}\` if day and month are swapped.`
      : 'Write a month from 01 to 12.';
    notice(cursor, 'bad-date', item, `The month is ${month}; a year has 12.`, { todo, label: 'no such month' });
    return;
  }
  const days = daysInMonth(year, month);
  if (day < 1 || day > days) {
    const message = `${MONTHS[month - 1]} ${year} has ${days} days, and \`${text}\` asks for day ${day}.`;
    notice(cursor, 'bad-date', item, message, { todo: `Write a day from 01 to ${days}.`, label: 'no such day' });
    return;
  }
  const full = `${year}-${two(month)}-${two(day)}`;
  notice(cursor, 'bad-date', item, `\`${text}\` is short of a figure.`, {
    todo: `Write \`${full}\`.`,
    label: 'two figures each',
    put: { title: `write ${full}`, text: full, sure: 'likely' },
  });
};

/** A date or month as typed, its long dashes as plain ones. */
const plainDashes = (text: string): string => text.replace(/[‐-―−]/g, '-');

/** A date item as a date; undefined, with a notice, when there is no such day. */
export const dateOf = (cursor: Cursor, item: Item): DateText | undefined => {
  const written = typed(cursor, item);
  const text = isDate(written) ? written : plainDashes(written);
  if (isDate(text)) return { date: text, at: atOf(item) };
  const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
  monthFault(cursor, item, year, month, day);
  return undefined;
};

/** The readings of a date in another form: day and month in either order, the year first, or month and year alone. */
const otherReadings = (text: string): [year: number, month: number, day?: number][] | undefined => {
  const [first = 0, second = 0, third = 0] = text.split(/[/.,]/).map(Number);
  if (/^\d{4}[/.,]\d{1,2}[/.,]\d{1,2}$/.test(text)) return [[first, second, third]];
  if (/^\d{1,2}[/.,]\d{4}$/.test(text)) return [[second, first]];
  if (!/^\d{1,2}[/.,]\d{1,2}[/.,](\d{2}|\d{4})$/.test(text)) return undefined;
  // Two figures of a year are of this century up to 49: a choice, no source. It is offered only.
  const year = third >= 100 ? third : third + (third < 50 ? 2000 : 1900);
  return [
    [year, second, first],
    [year, first, second],
  ];
};

/** Reports a date typed in another form (`04/09/2026`, `4.9.2026`, `2026/09/04`, `5/2024`), with its readings. */
export const otherDate = (cursor: Cursor, item: Item): boolean => {
  const text = typed(cursor, item);
  const readings = otherReadings(text)
    ?.map(([year, month, day]) => ({
      date: `${year}-${two(month)}${day === undefined ? '' : `-${two(day)}`}`,
      says: `${day ?? ''} ${MONTHS[month - 1]}`.trim(),
    }))
    .filter(
      ({ date }, index, all) =>
        (isDate(date) || isMonth(date)) && all.findIndex((other) => other.date === date) === index,
    );
  if (readings === undefined) return false;
  const offers = readings.map(({ date, says }) => `\`${date}\` (${says})`).join(' or ');
  notice(cursor, 'bad-date', item, `\`${text}\` is not year-month-day.`, {
    todo: offers === '' ? 'Write a date as in `2026-09-04`.' : `Write ${offers}.`,
    label: 'year first',
  });
  return true;
};

/** Takes a date, or reports one typed in another order. */
export const takeDate = (cursor: Cursor): DateText | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'date') {
    take(cursor);
    return dateOf(cursor, item);
  }
  if (item !== undefined && (item.kind === 'slashed' || item.kind === 'chain') && otherDate(cursor, item)) take(cursor);
  return undefined;
};

/** A date, a month or a year. */
export const whenOf = (cursor: Cursor, item: Item | undefined): When | undefined => {
  if (item === undefined) return undefined;
  const text = plainDashes(typed(cursor, item));
  if (item.kind === 'date') {
    const date = dateOf(cursor, item);
    return date && { when: date.date, at: date.at };
  }
  if (item.kind === 'month') {
    const month = Number(text.slice(5));
    if (month >= 1 && month <= 12) return { when: text, at: atOf(item) };
    notice(cursor, 'bad-date', item, `The month is ${month}; a year has 12.`, {
      todo: 'Write a month from 01 to 12.',
      label: 'no such month',
    });
    return undefined;
  }
  return item.kind === 'number' && /^\d{4}$/.test(text) ? { when: text, at: atOf(item) } : undefined;
};

/** Whether an item can be a date, a month or a year. */
export const isWhen = (cursor: Cursor, item: Item | undefined): boolean =>
  item?.kind === 'date' || item?.kind === 'month' || (item?.kind === 'number' && /^\d{4}$/.test(typed(cursor, item)));
