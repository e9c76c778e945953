import type { Item } from '../../notation/line-tree.ts';
import type {
  Density,
  Dose,
  Keeps,
  Lift,
  Measure,
  Mix,
  Over,
  Pack,
  Reorder,
  Scalp,
  Shades,
  StrengthLine,
  TimeLine,
  Tones,
  Uses,
} from '../schema/shelf.ts';
import type { Name } from '../schema/values.ts';
import {
  atOf,
  type Cursor,
  enter,
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
  takeNames,
  takeWord,
  typed,
  wordAt,
} from './cursor.ts';
import { dateOf } from './dates.ts';
import { amountOf, durationOf, moneyOf, plainNumber, ratioOf, strengthOf } from './figures.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

export const bindMix = (opened: Opened): Bound<Mix> | undefined => {
  const cursor = enterAll(opened);
  if (takeWord(cursor, 'none')) {
    finish(cursor);
    return {};
  }
  const item = takeKind(cursor, 'pair');
  if (item === undefined)
    return needs(cursor, 'The line gives no ratio.', 'Write colour to developer, as in `mix 1:1.5`, or `mix none`.');
  const ratio = ratioOf(cursor, item);
  finish(cursor);
  return ratio && { ratio };
};

export const bindUses = (opened: Opened): Bound<Uses> => {
  const cursor = enterAll(opened);
  const products = takeNames(cursor);
  finish(cursor);
  return { products };
};

/** `6,9%` can be 6.9 % or two strengths; figures that are no strength anyone sells are taken as they stand. */
const isTwoStrengths = (cursor: Cursor, item: Item): boolean => {
  const [first = '', second] = typed(cursor, item.first ?? item).split(',');
  if (second === undefined || !item.percent || !SOLD.has(first) || !SOLD.has(second)) return false;
  notice(cursor, 'two-readings', item, `\`${typed(cursor, item)}\` reads as ${first}.${second}% or as two strengths.`, {
    todo: `Write \`${first}.${second}%\`, or \`${first}% ${second}%\`.`,
    label: 'which',
  });
  return true;
};

/** Strengths that developers are sold in, in per cent: common practice, no source. */
const SOLD: ReadonlySet<string> = new Set(['3', '4', '6', '9', '12']);

export const bindStrength = (opened: Opened): Bound<StrengthLine> => {
  const cursor = enterAll(opened);
  takeWord(cursor, 'up');
  const upTo = takeWord(cursor, 'to');
  const strengths: StrengthLine['strengths'] = [];
  for (let item = peek(cursor); item !== undefined && !(upTo && strengths.length > 0); item = peek(cursor)) {
    const known = cursor.notices.length;
    const strength = isTwoStrengths(cursor, item) ? undefined : strengthOf(cursor, item);
    if (strength !== undefined) strengths.push(strength);
    else if (cursor.notices.length > known) {
      take(cursor);
      continue;
    } else if (item.kind === 'chain') {
      const parts = typed(cursor, item).split(/[.,]/);
      notice(cursor, 'two-readings', item, `\`${typed(cursor, item)}\` is no number.`, {
        todo: `Write \`${parts.map((part) => `${part}%`).join(' ')}\`.`,
      });
    } else if (item.kind !== 'comma' && !(item.kind === 'unknown' && item.glued)) break;
    take(cursor);
  }
  finish(cursor, 'Write strengths with `%` or `vol`, as in `strength 3% 6% 9%`.');
  const [last] = strengths;
  return upTo && last !== undefined ? { strengths: [], upTo: last } : { strengths };
};

const takeCondition = (cursor: Cursor): TimeLine['when'] => {
  const joined = `${peekWord(cursor)}-${peekWord(cursor, 1)}`;
  if (joined === 'on-scalp' || joined === 'pre-lightened') {
    cursor.next += 2;
    return { if: joined };
  }
  if (takeWord(cursor, 'on-scalp')) return { if: 'on-scalp' };
  if (takeWord(cursor, 'pre-lightened')) return { if: 'pre-lightened' };
  if (takeWord(cursor, 'with')) {
    const item = takeKind(cursor, 'word');
    return item && { if: 'with', product: nameAt(cursor, item) };
  }
  // `grey 50%` or `50% grey`
  const before = peekWord(cursor, 1) === 'grey' ? takeKind(cursor, 'number') : undefined;
  if (!takeWord(cursor, 'grey')) return undefined;
  const item = before ?? takeKind(cursor, 'number');
  const percent = item && plainNumber(cursor, item);
  return percent === undefined ? undefined : { if: 'grey', percent };
};

/** `time 20-50 min from first-on, check every 10 min`, `time 35-45 min if grey 50%` */
export const bindTime = (opened: Opened): Bound<TimeLine> | undefined => {
  const cursor = enterAll(opened);
  const item = peek(cursor);
  const minutes = durationOf(cursor, item);
  if (minutes === undefined)
    return needs(cursor, 'The line gives no minutes.', 'Write them as in `time 30-45 min from all-on`.');
  take(cursor);
  const draft: { -readonly [key in keyof Bound<TimeLine>]: Bound<TimeLine>[key] } = { minutes };
  while (peek(cursor) !== undefined) {
    if (takeKind(cursor, 'comma') !== undefined) continue;
    if (takeWord(cursor, 'from')) {
      const from = peekWord(cursor);
      if (from !== 'first-on' && from !== 'all-on') break;
      draft.from = from;
      take(cursor);
    } else if (takeWord(cursor, 'check')) {
      takeWord(cursor, 'every');
      const every = durationOf(cursor, peek(cursor));
      if (every === undefined) break;
      take(cursor);
      draft.checkEvery = every;
    } else if (takeWord(cursor, 'if')) {
      const when = takeCondition(cursor);
      if (when === undefined) break;
      draft.when = when;
    } else break;
  }
  finish(
    cursor,
    'Write `from first-on`, `from all-on`, `check every 10 min`, or `if grey 50%`, `if on-scalp`, `if with PRODUCT`, `if pre-lightened`.',
  );
  return draft;
};

/** `lift 3% 0-1, 6% 1-2, 9% 2-3` */
export const bindLift = ({ cursor, groups }: Opened): Bound<Lift> => {
  const claims: Lift['claims'] = [];
  for (const group of groups) {
    enter(cursor, group);
    const strength = strengthOf(cursor, peek(cursor));
    if (strength !== undefined) take(cursor);
    const item = takeKind(cursor, 'number');
    const range = item && amountOf(cursor, item);
    if (strength !== undefined && range !== undefined)
      claims.push({ strength, low: range.value, high: range.to ?? range.value });
    finish(cursor, 'Write `lift 3% 0-1, 6% 1-2`.');
  }
  return { claims };
};

/** `tones 0 natural, 1 ash` */
export const bindTones = ({ cursor, groups }: Opened): Bound<Tones> => {
  const tones: Tones['tones'] = [];
  for (const group of groups) {
    enter(cursor, group);
    const item = peek(cursor);
    // `0 in …` is a length, and `1-2` a range: no sign of a tone.
    const isSign = item !== undefined && item.unit === undefined && item.second === undefined;
    const digit = isSign ? (takeKind(cursor, 'number') ?? takeKind(cursor, 'word')) : undefined;
    // `0 = natural`, `1 - ash`
    if (takeKind(cursor, 'equal') === undefined) takeKind(cursor, 'dash');
    const tone = takeKind(cursor, 'word');
    if (digit !== undefined && tone !== undefined)
      tones.push({ digit: typed(cursor, digit).toUpperCase(), tone: wordAt(cursor, tone) });
    else if (digit !== undefined && peek(cursor) === undefined)
      notice(cursor, 'nothing-said', digit, `\`${typed(cursor, digit)}\` has no tone.`, {
        todo: 'Write `tones 0 natural, 1 ash`.',
      });
    finish(cursor, 'Write `tones 0 natural, 1 ash`.');
  }
  return { tones };
};

export const bindShades = (opened: Opened): Bound<Shades> => {
  const cursor = enterAll(opened);
  const shades: Name[] = [];
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    const isNumber = item.kind === 'number' && /^\d{1,3}$/.test(typed(cursor, item));
    if (item.kind === 'word') shades.push(nameAt(cursor, item));
    // `shades 3 5`: some makers number them.
    else if (isNumber) shades.push({ name: typed(cursor, item), at: atOf(item) });
    else if (item.kind !== 'comma') break;
    take(cursor);
  }
  finish(cursor);
  return { shades };
};

/** A price may have three decimals (`1.250` a sachet); noughts alone (`1.000`) are asked about. */
const priceOf = (cursor: Cursor, item: Item): number | undefined =>
  /^\d{1,3}\.(?!000)\d{3}$/.test(typed(cursor, item)) ? plainNumber(cursor, item) : moneyOf(cursor, item);

/** `pack 60 g 7.10 from 2027-01-01` */
export const bindPack = (opened: Opened): Bound<Pack> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'number');
  if (item === undefined)
    return needs(cursor, 'The line gives no pack size.', 'Write size and price, as in `pack 60 g 6.80`.');
  const amount = amountOf(cursor, item);
  const price = takeKind(cursor, 'number');
  const date = takeWord(cursor, 'from') ? takeKind(cursor, 'date') : undefined;
  const from = date && dateOf(cursor, date);
  finish(cursor, 'Write size, price and date, as in `pack 60 g 6.80 from 2027-01-01`.');
  const paid = price && priceOf(cursor, price);
  return amount && { amount, ...(paid !== undefined && { price: paid }), ...(from && { from }) };
};

export const bindReorder = (opened: Opened): Bound<Reorder> | undefined => {
  const cursor = enterAll(opened);
  takeWord(cursor, 'at');
  const item = takeKind(cursor, 'number');
  if (item === undefined)
    return needs(cursor, 'The line does not say when to buy again.', 'Write it as in `reorder at 3 packs`.');
  const at = amountOf(cursor, item);
  finish(cursor);
  return at && { at };
};

export const bindDensity = (opened: Opened): Bound<Density> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'number');
  const density = item && plainNumber(cursor, item);
  if (density === undefined || density <= 0)
    return needs(cursor, 'The line gives no density.', 'Write grams a millilitre, as in `density 1.01`.');
  // `1.01 g/ml` says the same.
  if (takeKind(cursor, 'slash') !== undefined) takeWord(cursor, 'ml');
  finish(cursor);
  return { density };
};

export const bindKeeps = (opened: Opened): Bound<Keeps> | undefined => {
  const cursor = enterAll(opened);
  const keeps = durationOf(cursor, peek(cursor));
  if (keeps === undefined)
    return needs(cursor, 'The line does not say how long it keeps.', 'Write it as in `keeps 12mo`.');
  take(cursor);
  finish(cursor);
  return { keeps };
};

export const bindMeasure = (opened: Opened): Bound<Measure> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'word');
  takeKind(cursor, 'equal');
  const number = takeKind(cursor, 'number');
  if (item === undefined || number === undefined)
    return needs(cursor, 'The line gives no measure.', 'Write its name and weight, as in `measure scoop 10 g`.');
  const amount = amountOf(cursor, number);
  finish(cursor);
  return amount && { measure: nameAt(cursor, item), amount };
};

export const bindScalp = (opened: Opened): Bound<Scalp> | undefined => {
  const cursor = enterAll(opened);
  if (takeWord(cursor, 'never')) {
    finish(cursor);
    return {};
  }
  takeWord(cursor, 'up');
  takeWord(cursor, 'to');
  const upTo = strengthOf(cursor, peek(cursor));
  if (upTo === undefined) return needs(cursor, 'The line gives no strength.', 'Write `scalp to 6%` or `scalp never`.');
  take(cursor);
  finish(cursor);
  return { upTo };
};

/** `dose 1-2 per 10` */
export const bindDose = (opened: Opened): Bound<Dose> | undefined => {
  const cursor = enterAll(opened);
  const item = takeKind(cursor, 'number');
  const range = item && amountOf(cursor, item);
  const number = takeWord(cursor, 'per') ? takeKind(cursor, 'number') : undefined;
  const per = number && plainNumber(cursor, number);
  if (range === undefined || per === undefined)
    return needs(cursor, 'The line gives no dose.', 'Write it as in `dose 1-2 per 10`.');
  finish(cursor, 'Write `dose 1-2 per 10`.');
  return { low: range.value, high: range.to ?? range.value, per };
};

/** `over 8`, `over depth 8`, `over 3 darker` */
export const bindOver = (opened: Opened): Bound<Over> | undefined => {
  const cursor = enterAll(opened);
  const hint = 'Write the darkest depth, as in `over 8`, or how much darker than the shade, as in `over 3 darker`.';
  takeWord(cursor, 'depth');
  const item = takeKind(cursor, 'number');
  const value = item && plainNumber(cursor, item);
  if (value === undefined) return needs(cursor, 'The line gives no depth.', hint);
  if (!takeWord(cursor, 'depths')) takeWord(cursor, 'depth');
  const darker = takeWord(cursor, 'darker');
  finish(cursor, hint);
  return darker ? { darker: value } : { depth: value };
};
