import type { Item } from '../../notation/line-tree.ts';
import type {
  Count,
  Density,
  Dose,
  Growth,
  Hours,
  In,
  Keeps,
  Lift,
  Measure,
  Mix,
  Money,
  Pack,
  Policy,
  Reorder,
  Scale,
  Scalp,
  Shades,
  StrengthLine,
  TimeLine,
  Tones,
  Uses,
} from '../schema/shelf.ts';
import type { Name } from '../schema/values.ts';
import { shadeOf } from './component.ts';
import {
  atOf,
  type Cursor,
  enter,
  finish,
  flatten,
  nameAt,
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
import {
  amountOf,
  dateOf,
  durationOf,
  figure,
  periodOf,
  plainNumber,
  ratioOf,
  strengthOf,
  unitOf,
  whenOf,
} from './figures.ts';

type Bound<T extends { word: string; line: number }> = Omit<T, 'word' | 'line' | 'says' | 'by'>;

const needs = (cursor: Cursor, message: string, todo: string): undefined =>
  void notice(cursor, 'nothing-said', peek(cursor) ?? { from: 0, to: cursor.text.length }, message, { todo });

const start = ({ cursor, groups }: Opened): Cursor => {
  enter(cursor, flatten(groups));
  return cursor;
};

const takeNumber = (cursor: Cursor): Item | undefined => takeKind(cursor, 'number');

const takeNames = (cursor: Cursor): Name[] => {
  const names: Name[] = [];
  for (let item = peek(cursor); item?.kind === 'word' || item?.kind === 'comma'; item = peek(cursor)) {
    if (item.kind === 'word') names.push(nameAt(cursor, item));
    take(cursor);
  }
  return names;
};

export const bindMoney = (opened: Opened): Bound<Money> | undefined => {
  const cursor = start(opened);
  const item = takeKind(cursor, 'word');
  finish(cursor);
  return item
    ? { currency: nameAt(cursor, item) }
    : needs(cursor, 'The line names no currency.', 'Write its three letters, as in `money GBP`.');
};

export const bindScale = (opened: Opened): Bound<Scale> | undefined => {
  const cursor = start(opened);
  const item = takeNumber(cursor);
  const step = item && amountOf(cursor, item);
  finish(cursor);
  if (item === undefined)
    return needs(cursor, 'The line does not say what the scales show.', 'Write the smallest step, as in `scale 1 g`.');
  return step && { step };
};

export const bindHours = (opened: Opened): Bound<Hours> | undefined => {
  const cursor = start(opened);
  const item = take(cursor);
  finish(cursor);
  // `9-19` is hours alone.
  const clock = item?.kind === 'number' ? { ...item, kind: 'clock' as const } : item;
  const period = clock?.kind === 'clock' || clock?.kind === 'pair' ? periodOf(cursor, clock) : undefined;
  if (period?.to === undefined)
    return needs(cursor, 'The line gives no opening hours.', 'Write both ends, as in `hours 9:00-19:00`.');
  return { from: period.from, to: period.to };
};

/** Days in the time a rate is given for; a month is a twelfth of 365.25 days. */
const RATE_DAYS: Readonly<Record<string, number>> = { d: 1, day: 1, w: 7, week: 7, mo: 30.4375, month: 30.4375 };

/** `growth 0.35 mm/d`, `growth 1.2 cm/mo` */
export const bindGrowth = (opened: Opened): Bound<Growth> | undefined => {
  const cursor = start(opened);
  const item = takeNumber(cursor);
  const slash = takeKind(cursor, 'slash');
  const per = takeKind(cursor, 'word');
  const days = per && RATE_DAYS[wordOf(cursor, per)];
  const length = item && { mm: 1, cm: 10 }[unitOf(cursor, item)];
  if (item === undefined || slash === undefined || days === undefined || length === undefined)
    return needs(cursor, 'The line gives no rate of growth.', 'Write length and time, as in `growth 0.35 mm/d`.');
  finish(cursor);
  return { rate: (plainNumber(cursor, item) * length) / days };
};

export const bindPolicy = (opened: Opened): Bound<Policy> | undefined => {
  const cursor = start(opened);
  const topic = takeKind(cursor, 'word');
  if (topic === undefined)
    return needs(
      cursor,
      'The line does not say what the policy is about.',
      'Write it as in `policy skin-test 48h every 26w`.',
    );
  const draft: Bound<Policy> = { topic: nameAt(cursor, topic), words: [], numbers: [], durations: [] };
  for (let item = take(cursor); item !== undefined; item = take(cursor)) {
    const duration = durationOf(cursor, item);
    if (item.kind === 'word') draft.words.push(wordAt(cursor, item));
    else if (duration !== undefined) draft.durations.push(duration);
    else if (item.kind === 'number') draft.numbers.push(plainNumber(cursor, item));
  }
  return draft;
};

export const bindMix = (opened: Opened): Bound<Mix> | undefined => {
  const cursor = start(opened);
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
  const cursor = start(opened);
  const products = takeNames(cursor);
  finish(cursor);
  return { products };
};

export const bindStrength = (opened: Opened): Bound<StrengthLine> => {
  const cursor = start(opened);
  const upTo = takeWord(cursor, 'to');
  const strengths: StrengthLine['strengths'] = [];
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    const strength = strengthOf(cursor, item);
    if (strength !== undefined) strengths.push(strength);
    else if (item.kind === 'chain') {
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
  if (takeWord(cursor, 'on-scalp')) return { if: 'on-scalp' };
  if (takeWord(cursor, 'pre-lightened')) return { if: 'pre-lightened' };
  if (takeWord(cursor, 'with')) {
    const item = takeKind(cursor, 'word');
    return item && { if: 'with', product: nameAt(cursor, item) };
  }
  if (!takeWord(cursor, 'grey')) return undefined;
  const item = takeNumber(cursor);
  return item && { if: 'grey', percent: plainNumber(cursor, item) };
};

/** `time 20-50 min from first-on, check every 10 min`, `time 35-45 min if grey 50%` */
export const bindTime = (opened: Opened): Bound<TimeLine> | undefined => {
  const cursor = start(opened);
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
    const item = takeNumber(cursor);
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
    const digit = take(cursor);
    const tone = takeKind(cursor, 'word');
    if (digit !== undefined && tone !== undefined)
      tones.push({ digit: typed(cursor, digit).toUpperCase(), tone: wordAt(cursor, tone) });
    finish(cursor, 'Write `tones 0 natural, 1 ash`.');
  }
  return { tones };
};

export const bindShades = (opened: Opened): Bound<Shades> => {
  const cursor = start(opened);
  const shades = takeNames(cursor);
  finish(cursor);
  return { shades };
};

/** `pack 60 g 7.10 from 2027-01-01` */
export const bindPack = (opened: Opened): Bound<Pack> | undefined => {
  const cursor = start(opened);
  const item = takeNumber(cursor);
  if (item === undefined)
    return needs(cursor, 'The line gives no pack size.', 'Write size and price, as in `pack 60 g 6.80`.');
  const amount = amountOf(cursor, item);
  const price = takeNumber(cursor);
  const date = takeWord(cursor, 'from') ? takeKind(cursor, 'date') : undefined;
  const from = date && dateOf(cursor, date);
  finish(cursor, 'Write size, price and date, as in `pack 60 g 6.80 from 2027-01-01`.');
  return amount && { amount, ...(price && { price: plainNumber(cursor, price) }), ...(from && { from }) };
};

export const bindReorder = (opened: Opened): Bound<Reorder> | undefined => {
  const cursor = start(opened);
  takeWord(cursor, 'at');
  const item = takeNumber(cursor);
  const at = item && amountOf(cursor, item);
  finish(cursor);
  if (item === undefined)
    return needs(cursor, 'The line does not say when to buy again.', 'Write it as in `reorder at 3 packs`.');
  return at && { at };
};

export const bindDensity = (opened: Opened): Bound<Density> | undefined => {
  const cursor = start(opened);
  const item = takeNumber(cursor);
  const density = item === undefined ? 0 : plainNumber(cursor, item);
  if (!(density > 0))
    return needs(cursor, 'The line gives no density.', 'Write grams a millilitre, as in `density 1.01`.');
  finish(cursor);
  return { density };
};

export const bindKeeps = (opened: Opened): Bound<Keeps> | undefined => {
  const cursor = start(opened);
  const keeps = durationOf(cursor, take(cursor));
  finish(cursor);
  return keeps ? { keeps } : needs(cursor, 'The line does not say how long it keeps.', 'Write it as in `keeps 12mo`.');
};

export const bindMeasure = (opened: Opened): Bound<Measure> | undefined => {
  const cursor = start(opened);
  const item = takeKind(cursor, 'word');
  const number = takeNumber(cursor);
  const amount = number && amountOf(cursor, number);
  finish(cursor);
  if (item === undefined || number === undefined)
    return needs(cursor, 'The line gives no measure.', 'Write its name and weight, as in `measure scoop 10 g`.');
  return amount && { measure: nameAt(cursor, item), amount };
};

export const bindScalp = (opened: Opened): Bound<Scalp> | undefined => {
  const cursor = start(opened);
  if (takeWord(cursor, 'never')) {
    finish(cursor);
    return {};
  }
  takeWord(cursor, 'to');
  const upTo = strengthOf(cursor, take(cursor));
  finish(cursor);
  return upTo ? { upTo } : needs(cursor, 'The line gives no strength.', 'Write `scalp to 6%` or `scalp never`.');
};

/** `dose 1-2 per 10` */
export const bindDose = (opened: Opened): Bound<Dose> | undefined => {
  const cursor = start(opened);
  const item = takeNumber(cursor);
  const range = item && amountOf(cursor, item);
  const per = takeWord(cursor, 'per') ? takeNumber(cursor) : undefined;
  finish(cursor, 'Write `dose 1-2 per 10`.');
  if (range === undefined || per === undefined)
    return needs(cursor, 'The line gives no dose.', 'Write it as in `dose 1-2 per 10`.');
  return { low: range.value, high: range.to ?? range.value, per: plainNumber(cursor, per) };
};

type StockDraft = { -readonly [key in keyof Bound<In>]?: Bound<In>[key] } & Bound<Count>;

const takeLot = (cursor: Cursor): In['lot'] => {
  const first = take(cursor);
  if (first === undefined) return undefined;
  let last = first;
  while (peek(cursor)?.glued) last = take(cursor) ?? last;
  return { text: typed(cursor, { from: first.from, to: last.to }), at: atOf({ from: first.from, to: last.to }) };
};

/** `in cream 7/43 4 packs 27.20 lot K2231 use-by 2028-01`, `count dev-6 640 g`, `out dev-9 200 g "past its date"` */
export const bindStock = (opened: Opened, word: 'in' | 'count' | 'out'): Bound<In> | undefined => {
  const cursor = start(opened);
  const first = takeKind(cursor, 'word');
  if (first === undefined)
    return needs(cursor, 'The line names no product.', `Write it as in \`${word} clay 2 packs\`.`);
  const draft: StockDraft = { product: nameAt(cursor, first) };
  const bare: Item[] = [];
  for (let item = peek(cursor); item !== undefined; item = peek(cursor)) {
    if (takeWord(cursor, 'lot')) {
      const lot = takeLot(cursor);
      if (lot !== undefined) draft.lot = lot;
    } else if (takeWord(cursor, 'use-by')) {
      const useBy = whenOf(cursor, take(cursor));
      if (useBy !== undefined) draft.useBy = useBy;
    } else if (item.kind === 'slashed' && draft.shade === undefined)
      draft.shade = shadeOf(typed(cursor, take(cursor) ?? item), atOf(item));
    else if (item.kind === 'word' && draft.shade === undefined)
      draft.shade = shadeOf(wordOf(cursor, take(cursor) ?? item), atOf(item));
    else if (
      item.kind === 'number' &&
      item.unit !== undefined &&
      draft.amount === undefined &&
      !isShadeLetter(cursor, item)
    ) {
      take(cursor);
      const amount = amountOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else if (item.kind === 'number') {
      take(cursor);
      const letters = peek(cursor);
      if (letters?.kind === 'word' && letters.glued && draft.shade === undefined) {
        take(cursor);
        draft.shade = shadeOf(
          typed(cursor, { from: item.from, to: letters.to }),
          atOf({ from: item.from, to: letters.to }),
        );
      } else bare.push(item);
    } else if (!/^[£$€]$/.test(typed(cursor, item))) break;
    else take(cursor);
  }
  settleStock(cursor, draft, bare, word);
  finish(cursor);
  return draft;
};

/** `6G 4 packs`: a letter stuck to a figure before the amount is a tone, never a unit. */
const isShadeLetter = (cursor: Cursor, item: Item): boolean =>
  /^\d+[A-Za-z]$/.test(typed(cursor, item)) &&
  cursor.items.slice(cursor.next + 1).some((other) => other.kind === 'number' && other.unit !== undefined);

/** Numbers without unit: a shade before the amount; after it the price (`in`), or the amount itself (`count`, `out`). */
const settleStock = (cursor: Cursor, draft: StockDraft, bare: readonly Item[], word: string): void => {
  const at = draft.amount?.at;
  for (const item of bare) {
    const before =
      at === undefined ? bare.indexOf(item) < bare.length - 1 || /[.,-]/.test(typed(cursor, item)) : atOf(item) < at;
    if (before && draft.shade === undefined) draft.shade = shadeOf(typed(cursor, item), atOf(item));
    else if (draft.amount === undefined) {
      const amount = amountOf(cursor, item);
      if (amount !== undefined) draft.amount = amount;
    } else if (word === 'in' && draft.price === undefined) draft.price = figure(typed(cursor, item));
    else
      notice(cursor, 'not-read', item, `\`${typed(cursor, item)}\` is one figure too many.`, {
        todo: 'Write product, shade, amount, price.',
      });
  }
  if (draft.amount === undefined)
    needs(cursor, 'The line gives no amount.', `Write it with its unit, as in \`${word} clay 2 packs\`.`);
};
