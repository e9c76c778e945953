import type { Item, Run } from '../../notation/line-tree.ts';
import { UNIT_NAMES } from '../../notation/words.ts';
import { daysInMonth, isDate, isMonth } from '../../text/dates.ts';
import { fold } from '../../text/fold.ts';
import { DEPTHS } from '../../trade/depth.ts';
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

/** Figures above this are slips of the hand, and past what a number holds exactly. */
const MOST = 1e9;

const boundedAt = (cursor: Cursor, run: Run, value: number): number | undefined => {
  if (value <= MOST) return value;
  notice(cursor, 'not-read', run, `The figure has ${run.to - run.from} characters, too many to reckon with.`, {
    todo: 'Write the figure that is meant.',
    label: 'too large',
  });
  return undefined;
};

const numberAt = (cursor: Cursor, run: Run): number | undefined => {
  const text = typed(cursor, run);
  if (!THOUSAND.test(text)) return boundedAt(cursor, run, figure(text));
  const [whole = '', rest = ''] = text.split(/[.,]/);
  const small = rest === '000' ? whole : `${whole}.${rest.replace(/0+$/, '')}`;
  notice(cursor, 'two-readings', run, `\`${text}\` reads as ${small} or as ${whole}${rest}.`, {
    todo: `Write \`${small}\` or \`${whole}${rest}\`.`,
    label: 'which',
  });
  return undefined;
};

/** The unit of a number item as records write it: '' when none was typed, `%` for per cent. */
export const unitOf = (cursor: Cursor, item: Item): string => {
  if (item.percent) return '%';
  if (item.unit === undefined) return '';
  const unit = fold(typed(cursor, item.unit));
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

/** A sum of money; undefined, with a notice, when it can be read two ways. */
export const moneyOf = (cursor: Cursor, item: Item): number | undefined =>
  item.first === undefined ? undefined : numberAt(cursor, item.first);

/** A plain number, as a density or a share; three decimals are plain here. Undefined, with a notice, when too large. */
export const plainNumber = (cursor: Cursor, item: Item): number | undefined =>
  boundedAt(cursor, item.first ?? item, figure(typed(cursor, item.first ?? item)));

/** A count as in `x6`, from its digits. */
export const countAt = (cursor: Cursor, run: Run): number | undefined =>
  boundedAt(cursor, run, Number(typed(cursor, run).replace(/^\D/, '')));

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
  if (range?.to !== undefined) {
    notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is a range; a strength is one figure.`, {
      todo: `Write each strength with its \`${unit === '%' ? '%' : 'vol'}\`, as in \`6% 9%\`.`,
    });
    return undefined;
  }
  return range && { value: range.value, unit, ...hedge(item), at: atOf(item) };
};

/** A pair item as a ratio of colour to developer. */
export const ratioOf = (cursor: Cursor, item: Item): Ratio | undefined => {
  const parts = typed(cursor, item.first ?? item)
    .split(':')
    .map((part) => figure(part.trim()));
  const [colour = 0, developer = 0] = parts;
  if (parts.length !== 2 || !(colour > 0) || !(developer > 0) || colour > MOST || developer > MOST) {
    notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is no ratio of colour to developer.`, {
      todo: 'Write two parts, as in `1:1.5`.',
    });
    return undefined;
  }
  const ratio: Ratio = { colour, developer, at: atOf(item), ...hedge(item) };
  if (item.second === undefined) return ratio;
  const [first = 0, second] = typed(cursor, item.second)
    .split(':')
    .map((part) => figure(part.trim()));
  // `1:1.5-1:2` and `1:1.5-2` say the same.
  const to = second === undefined ? first : (second * colour) / first;
  return to > 0 && to <= MOST ? { ...ratio, to } : ratio;
};

const HALF_DAY = 720;

/** Minutes since midnight of `14:35`, `14.35`, `2`, with `am` or `pm` where it stands. */
const timeOfDay = (cursor: Cursor, run: Run, half: Run | undefined): Omit<Clock, 'at'> | undefined => {
  const text = typed(cursor, run).replace(/\s/g, '');
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
    const figureRun = item.first ?? item;
    const after = boundedAt(cursor, figureRun, figure(typed(cursor, figureRun)));
    return after === undefined ? undefined : { from: { after: after * scale, at }, at };
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
  const text = typed(cursor, item);
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

const DARKEST = DEPTHS[0];
const LIGHTEST = DEPTHS.at(-1) ?? DARKEST;

/** What is no depth although a depth belongs here: a figure past the scale, or a shade. Reported, and not kept. */
const depthFault = (cursor: Cursor, item: Item, { value, to = value }: Omit<Depth, 'at'>): boolean => {
  const text = typed(cursor, item);
  if (Math.max(value, to) > LIGHTEST || Math.min(value, to) < DARKEST || (value * 4) % 1 !== 0) {
    const shade = /^\d{1,2}[.,/]\d+$/.test(text);
    notice(
      cursor,
      'two-readings',
      item,
      `\`${text}\` is no depth; depths run from ${DARKEST} to ${LIGHTEST} by halves.`,
      {
        todo: shade
          ? `Write depth and tone, as in \`${Math.floor(value)} ash\`.`
          : `Write \`${text}%\` for a share of grey, or a depth.`,
        label: shade ? 'depth or shade' : 'depth or share',
      },
    );
    return true;
  }
  return false;
};

/** `5/6` is a span of depths; `8/1` and `7/43` look like shades and are asked about. */
const slashedDepth = (cursor: Cursor, item: Item): Depth | undefined => {
  const [value = 0, to = 0] = typed(cursor, item).split('/').map(figure);
  if (Math.abs(to - value) <= 2 && to >= DARKEST) return { value, to, at: atOf(item) };
  const text = typed(cursor, item);
  notice(cursor, 'two-readings', item, `\`${text}\` reads as depths ${value} to ${to}, or as a shade.`, {
    todo: `Write depth and tone, as in \`${Math.floor(value)} ash\`${to < DARKEST || to > LIGHTEST ? '' : `, or \`${value}-${to}\` for the span`}.`,
    label: 'depths or shade',
  });
  return undefined;
};

/** Takes a depth: `6`, `6½`, `9-10`, `7+`, `5/6`. Undefined where none stands, or, with a notice, where it is none. */
export const takeDepth = (cursor: Cursor): Depth | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'slashed') {
    if (!/^\d{1,2}([.,]\d)?\/\d{1,2}([.,]\d)?$/.test(typed(cursor, item))) return undefined;
    take(cursor);
    return slashedDepth(cursor, item);
  }
  if (item?.kind !== 'number' || item.percent || item.unit) return undefined;
  const range = bounds(cursor, item);
  take(cursor);
  if (range === undefined || depthFault(cursor, item, range)) return undefined;
  const after = peek(cursor);
  if (after?.kind === 'plus' && after.glued) {
    take(cursor);
    return { ...range, plus: true, ...hedge(item), at: atOf({ from: item.from, to: after.to }) };
  }
  return { ...range, ...hedge(item), at: atOf(item) };
};
