import type { Item, Run } from '../../notation/line-tree.ts';
import { daysInMonth, isDate } from '../../text/dates.ts';
import { AMBIGUOUS_UNITS } from '../../trade/units.ts';
import type { Amount, Clock, DateText, Depth, Duration, Period, Ratio, Strength, When } from '../schema/values.ts';
import { atOf, type Cursor, notice, peek, take, typed } from './cursor.ts';

const SIGNS: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** The value of `12`, `12.5`, `12,5`, `½`, `1½`. */
export const figure = (text: string): number => {
  const sign = SIGNS[text.at(-1) ?? ''];
  if (sign === undefined) return Number(text.replace(',', '.'));
  return (text.length > 1 ? Number(text.slice(0, -1).replace(',', '.')) : 0) + sign;
};

/** `1.000` and `1,000` are one or a thousand: asked about, never guessed. Nought point something is plain. */
const THOUSAND = /^[1-9]\d{0,2}[.,]\d{3}$/;

const numberAt = (cursor: Cursor, run: Run): number | undefined => {
  const text = typed(cursor, run);
  if (!THOUSAND.test(text)) return figure(text);
  const [whole = '', rest = ''] = text.split(/[.,]/);
  const small = rest === '000' ? whole : `${whole}.${rest.replace(/0+$/, '')}`;
  notice(cursor, 'two-readings', run, `\`${text}\` reads as ${small} or as ${whole}${rest}.`, {
    todo: `Write \`${small}\` or \`${whole}${rest}\`.`,
    label: 'which',
  });
  return undefined;
};

const UNIT_NAMES: Readonly<Record<string, string>> = {
  drops: 'drop',
  part: 'p',
  parts: 'p',
  packs: 'pack',
  mins: 'min',
};

/** The unit of a number item as records write it: '' when none was typed, `%` for per cent. */
export const unitOf = (cursor: Cursor, item: Item): string => {
  if (item.percent) return '%';
  if (item.unit === undefined) return '';
  const unit = typed(cursor, item.unit).toLowerCase();
  return UNIT_NAMES[unit] ?? unit;
};

const hedge = (item: Item): { about?: true } => (item.about ? { about: true } : {});

const bounds = (cursor: Cursor, item: Item): { value: number; to?: number } | undefined => {
  const value = item.first && numberAt(cursor, item.first);
  if (value === undefined) return undefined;
  const to = item.second && numberAt(cursor, item.second);
  return to === undefined ? { value } : { value, to };
};

/** A number item as an amount; undefined, with a notice, when it can be read two ways. */
export const amountOf = (cursor: Cursor, item: Item): Amount | undefined => {
  const range = bounds(cursor, item);
  const unit = unitOf(cursor, item);
  const meanings = AMBIGUOUS_UNITS[unit];
  if (meanings !== undefined && item.unit !== undefined) {
    const offers = meanings.map(({ write, means }) => `\`${write}\` (${means})`);
    notice(cursor, 'bare-oz', item.unit, `\`${unit}\` means ${meanings.length} things.`, {
      todo: `Write ${offers.slice(0, -1).join(', ')} or ${offers.at(-1)}.`,
      label: 'which ounce',
    });
    return undefined;
  }
  return range && { ...range, unit, ...hedge(item), at: atOf(item) };
};

/** A plain number: money, density. Three decimals are plain here. */
export const plainNumber = (cursor: Cursor, item: Item): number => figure(typed(cursor, item.first ?? item));

const TIME: Readonly<Record<string, Duration['unit']>> = { min: 'min', h: 'h', d: 'd', w: 'w', mo: 'mo' };

/** A number item as a length of time, when its unit is one. */
export const durationOf = (cursor: Cursor, item: Item | undefined): Duration | undefined => {
  if (item?.kind !== 'number') return undefined;
  const unit = TIME[unitOf(cursor, item)];
  const range = unit && bounds(cursor, item);
  return unit && range && { ...range, unit, ...hedge(item), at: atOf(item) };
};

/** A number item as a strength, when it says `%` or `vol`. */
export const strengthOf = (cursor: Cursor, item: Item | undefined): Strength | undefined => {
  if (item?.kind !== 'number') return undefined;
  const unit = unitOf(cursor, item);
  if (unit !== '%' && unit !== 'vol') return undefined;
  const range = bounds(cursor, item);
  return range && { value: range.value, unit, ...hedge(item), at: atOf(item) };
};

/** A pair item as a ratio of colour to developer. */
export const ratioOf = (cursor: Cursor, item: Item): Ratio | undefined => {
  const parts = typed(cursor, item.first ?? item)
    .split(':')
    .map(figure);
  const [colour = 0, developer = 0] = parts;
  if (parts.length !== 2 || !(colour > 0) || !(developer > 0)) {
    notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is no ratio of colour to developer.`, {
      todo: 'Write two parts, as in `1:1.5`.',
    });
    return undefined;
  }
  const ratio: Ratio = { colour, developer, at: atOf(item), ...hedge(item) };
  if (item.second === undefined) return ratio;
  const [first = 0, second] = typed(cursor, item.second).split(':').map(figure);
  // `1:1.5-1:2` and `1:1.5-2` say the same.
  return { ...ratio, to: second === undefined ? first : (second * colour) / first };
};

const HALF_DAY = 720;

/** Minutes since midnight of `14:35`, `14.35`, `2`, with `am` or `pm` where it stands. */
const timeOfDay = (cursor: Cursor, run: Run, half: Run | undefined): Omit<Clock, 'at'> | undefined => {
  const text = typed(cursor, run);
  const [hourText = '', minuteText = '0', seconds] = text.split(/[:.,]/);
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

/** A clock or pair item as a span of clock time. */
export const periodOf = (cursor: Cursor, item: Item): Period | undefined => {
  const at = atOf(item);
  if (item.relative) {
    const scale = item.unit !== undefined && /^h$/i.test(typed(cursor, item.unit)) ? 60 : 1;
    const after = figure(typed(cursor, item.first ?? item)) * scale;
    return { from: { after, at }, at };
  }
  if (item.first === undefined) return undefined;
  const first = timeOfDay(cursor, item.first, item.unit ?? item.secondUnit);
  if (first === undefined) return undefined;
  const from: Clock = { ...first, ...hedge(item), at: atOf(item.first) };
  if (item.second === undefined) return { from, at };
  const second = timeOfDay(cursor, item.second, item.secondUnit ?? item.unit);
  if (second === undefined) return { from, at };
  return { from, to: { ...second, ...hedge(item), at: atOf(item.second) }, at };
};

/** Takes a time of day from a slot that is not first on its line: a pair, or a number such as `14.35`. */
export const takeTime = (cursor: Cursor): Clock | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'clock' || item?.kind === 'pair') {
    take(cursor);
    return periodOf(cursor, item)?.from;
  }
  if (item?.kind !== 'number' || item.percent || item.second) return undefined;
  const half = item.unit !== undefined && /^[ap]m$/i.test(typed(cursor, item.unit)) ? item.unit : undefined;
  if (half === undefined && (item.unit !== undefined || !/^\d{1,2}[.,]\d\d$/.test(typed(cursor, item))))
    return undefined;
  take(cursor);
  const time = item.first && timeOfDay(cursor, item.first, half);
  return time && { ...time, ...hedge(item), at: atOf(item) };
};

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

/** A date item as a date; undefined, with a notice, when there is no such day. */
export const dateOf = (cursor: Cursor, item: Item): DateText | undefined => {
  const text = typed(cursor, item);
  if (isDate(text)) return { date: text, at: atOf(item) };
  const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
  monthFault(cursor, item, year, month, day);
  return undefined;
};

/** Reports a date typed in another order (`04/09/2026`, `4.9.2026`), with the readings it can have. */
export const otherDate = (cursor: Cursor, item: Item): boolean => {
  const text = typed(cursor, item);
  const [first = 0, second = 0, third = 0] = text.split(/[/.,]/).map(Number);
  const year = third < 100 ? 2000 + third : third;
  if (!/^\d{1,2}[/.,]\d{1,2}[/.,](\d{2}|\d{4})$/.test(text)) return false;
  const readings = [
    [second, first],
    [first, second],
  ]
    .map(([month = 0, day = 0]) => ({ date: `${year}-${two(month)}-${two(day)}`, says: `${day} ${MONTHS[month - 1]}` }))
    .filter(({ date }, index, all) => isDate(date) && all.findIndex((other) => other.date === date) === index);
  const offers = readings.map(({ date, says }) => `\`${date}\` (${says})`).join(' or ');
  notice(cursor, 'bad-date', item, `\`${text}\` is not year-month-day.`, {
    todo: offers === '' ? 'Write a date as in `2026-09-04`.' : `Write ${offers}.`,
    label: 'year first',
  });
  return true;
};

/** A date, a month or a year. */
export const whenOf = (cursor: Cursor, item: Item | undefined): When | undefined => {
  if (item === undefined) return undefined;
  const text = typed(cursor, item);
  if (item.kind === 'date') {
    const date = dateOf(cursor, item);
    return date && { when: date.date, at: date.at };
  }
  if (item.kind === 'month') {
    const month = Number(text.slice(5));
    if (month >= 1 && month <= 12) return { when: text, at: atOf(item) };
    notice(cursor, 'bad-date', item, `The month is ${month}; a year has 12.`, { label: 'no such month' });
    return undefined;
  }
  return item.kind === 'number' && /^\d{4}$/.test(text) ? { when: text, at: atOf(item) } : undefined;
};

/** Whether an item can be a date, a month or a year. */
export const isWhen = (cursor: Cursor, item: Item | undefined): boolean =>
  item?.kind === 'date' || item?.kind === 'month' || (item?.kind === 'number' && /^\d{4}$/.test(typed(cursor, item)));

/** Takes a depth: `6`, `6½`, `9-10`, `7+`, `5/6`. */
export const takeDepth = (cursor: Cursor): Depth | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'slashed') {
    const parts = typed(cursor, item).split('/');
    if (parts.length !== 2 || parts.some((part) => !/^\d{1,2}([.,]\d)?$/.test(part))) return undefined;
    take(cursor);
    const [value = 0, to = 0] = parts.map(figure);
    return { value, to, at: atOf(item) };
  }
  if (item?.kind !== 'number' || item.percent || item.unit) return undefined;
  const range = bounds(cursor, item);
  take(cursor);
  if (range === undefined) return undefined;
  const after = peek(cursor);
  if (after?.kind === 'plus' && after.glued) {
    take(cursor);
    return { ...range, plus: true, ...hedge(item), at: atOf({ from: item.from, to: after.to }) };
  }
  return { ...range, ...hedge(item), at: atOf(item) };
};
