import type { Item, Run } from '../../notation/line-tree.ts';
import { UNIT_NAMES } from '../../notation/words.ts';
import { fold } from '../../text/fold.ts';
import { AMBIGUOUS_UNITS } from '../../trade/units.ts';
import type { Amount, Duration, Ratio, Strength } from '../schema/values.ts';
import { atOf, type Cursor, notice, typed } from './cursor.ts';

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

/** A value as it stands; undefined, with a notice, when it is too large to be meant. */
export const boundedAt = (cursor: Cursor, run: Run, value: number): number | undefined => {
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

/** What a record says of a hedged item. */
export const hedge = (item: Item): { about?: true } => (item.about ? { about: true } : {});

type Bounds = { value: number; to?: number };

/** The two ends of a number item, or its one figure. */
export const bounds = (cursor: Cursor, item: Item): Bounds | undefined => {
  const value = item.first && numberAt(cursor, item.first);
  if (value === undefined) return undefined;
  const to = item.second && numberAt(cursor, item.second);
  return to === undefined ? { value } : { value, to };
};

/** Figures with their unit. Most are one plain figure, made in one piece: a copy costs each a layout of its own. */
const measured = <U extends string>({ value, to }: Bounds, unit: U, item: Item): Amount & { unit: U } =>
  to === undefined && !item.about
    ? { value, unit, at: atOf(item) }
    : { value, ...(to !== undefined && { to }), unit, ...hedge(item), at: atOf(item) };

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
  return range && measured(range, unit, item);
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
  return unit && range && measured(range, unit, item);
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
  return range && measured(range, unit, item);
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
