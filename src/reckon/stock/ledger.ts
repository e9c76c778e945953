import type { Journal } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { ShelfItem } from '../../journal/shelf.ts';
import type { Stood } from '../../journal/source.ts';
import type { Stock } from '../../records/schema/entry.ts';
import { add, div, type Exact, mul, neg, roundTo, sign, sub, sum, ZERO } from '../../text/exact.ts';
import { compareText, fold } from '../../text/fold.ts';
import { momentOfVisit } from '../client/state.ts';
import type { Minute, VisitReckoned } from '../model.ts';
import {
  type Batch,
  type BatchDraft,
  draw,
  firstExpired,
  heldIn,
  isLot,
  isWholePacks,
  lifeOf,
  PRICE_STEP,
} from './batches.ts';
import { priceOn, type StockMove, stockMoves } from './stock-entries.ts';
import type { Counted, Ledger, StockLine, Used } from './stock-line.ts';
import { type Touch, touchesOf } from './touch.ts';

/**
 * What the shelf holds: deliveries, counts, what went out and what bowls took, in order of time.
 *
 * Reads: the stock entries and the reckoned visits. Gives: a line for each product and shade of a salon. Runs again: when
 * a stock line, the shelf or a bowl changes. A count closes its day unless its header has a time.
 */

export type { Counted, Ledger, StockLine, Used } from './stock-line.ts';

type Step = { readonly date: string; readonly minute: Minute; readonly rank: number } & (
  | { readonly move: StockMove }
  | { readonly touch: Touch; readonly amount: Exact }
  | { readonly counts: readonly StockMove[] }
);

type Draft = {
  readonly salon: SalonSettings;
  readonly item: ShelfItem;
  readonly shade: string | undefined;
  readonly steps: Step[];
  pieces: boolean;
};

const NOON = 720;
const CLOSING = Number.MAX_SAFE_INTEGER;
const RANK = { in: 0, out: 1, use: 2, count: 3 } as const;

const compareSteps = (a: Step, b: Step): number =>
  compareText(a.date, b.date) || a.minute - b.minute || a.rank - b.rank;

type Costs = { -readonly [key in keyof StockLine['issued']]: Exact | undefined };

/** A line while it is worked through. */
type Working = {
  readonly draft: Draft;
  readonly batches: BatchDraft[];
  readonly order: (a: Batch, b: Batch) => number;
  readonly counts: Counted[];
  readonly used: Used[];
  readonly issued: Costs;
  short: Exact;
  cameIn: Exact;
  wentOut: Exact;
  unexplained: Exact;
  firstWithin: Exact;
  lastWithin: Exact | undefined;
  price: Exact | undefined;
  kept: boolean;
};

const levelOf = ({ batches, short }: Working): Exact => sub(heldIn(batches), short);

const put = (working: Working, batch: BatchDraft): void => {
  working.batches.push(batch);
  working.batches.sort(working.order);
};

/** The weighted price after so much at another price. Source of the method: moving average, in `tests/outside/`. */
const weigh = (working: Working, amount: Exact, price: Exact | undefined): void => {
  const level = levelOf(working);
  if (working.price === undefined || sign(level) <= 0) working.price = price;
  else if (price !== undefined && sign(amount) > 0) {
    const value = add(mul(working.price, level), mul(price, amount));
    working.price = roundTo(div(value, add(level, amount)), PRICE_STEP);
  }
};

const comeIn = (working: Working, { amount, price, lot, useBy, date, pack }: StockMove): void => {
  weigh(working, amount, price);
  put(working, { lot, arrived: date, useBy, price, pack, left: amount, openedOn: undefined });
  working.cameIn = add(working.cameIn, amount);
};

const dropEmpty = ({ batches }: Working): void => {
  batches.splice(0, batches.length, ...batches.filter(({ left }) => sign(left) > 0));
};

/** Takes an amount off the shelf: of the lot that is named as far as it goes, then in the batches’ order. */
const takeOff = (working: Working, amount: Exact, lot: string | undefined, date: string): ReturnType<typeof draw> => {
  const own = lot === undefined ? [] : working.batches.filter((batch) => isLot(batch.lot, lot));
  const first = draw(own, amount, date);
  const rest = draw(working.batches, first.missing, date);
  working.short = add(working.short, rest.missing);
  dropEmpty(working);
  return { draws: [...first.draws, ...rest.draws], missing: rest.missing };
};

const use = (working: Working, touch: Touch, amount: Exact): void => {
  const { issued, price, draft } = working;
  const { draws, missing } = takeOff(working, amount, touch.lot, touch.date);
  const shelfPrice = sign(missing) > 0 ? priceOn(draft.item, touch.date, draft.salon) : ZERO;
  const costs = draws.map(({ batch, amount: part }) => batch.price && mul(batch.price, part));
  costs.push(shelfPrice && mul(shelfPrice, missing));
  for (const cost of costs) issued.byBatch = issued.byBatch && cost && add(issued.byBatch, cost);
  const each = price ?? shelfPrice;
  issued.weighted = issued.weighted && each && add(issued.weighted, mul(each, amount));
  const lots = touch.lot === undefined || touch.lotOf !== undefined ? draws.map(({ batch }) => batch.lot) : [touch.lot];
  working.used.push({ touch, amount, lots: [...new Set(lots)] });
};

/** A pack counted as open: when it was opened nobody noted, so it was by the day of the count. */
const surplus = (working: Working, amount: Exact, move: StockMove): void => {
  const { pack, date, lot, item, salon } = move;
  const price = working.price ?? priceOn(item, date, salon);
  const isWhole = pack === undefined || isWholePacks(amount, pack);
  weigh(working, amount, price);
  put(working, {
    lot,
    arrived: date,
    useBy: undefined,
    price,
    pack,
    left: amount,
    openedOn: isWhole ? undefined : date,
  });
};

/** The lines of one entry that count one lot, or that name none. */
type LotCounted = { readonly first: StockMove; readonly lines: StockMove[] };

/** Sets what the batches of a lot hold, or of all lots that are not counted apart. */
const setLevel = (working: Working, own: BatchDraft[], { first, lines }: LotCounted, isFirst: boolean): void => {
  const { date, place, lot } = first;
  const counted = sum(lines.map(({ amount }) => amount));
  const within = sum(lines.map((move) => move.within));
  const short = lot === undefined ? working.short : ZERO;
  const expected = sub(heldIn(own), short);
  const difference = sub(counted, expected);
  working.counts.push({ date, place, lot, expected, counted, difference, first: isFirst, within });
  if (!isFirst) working.unexplained = add(working.unexplained, difference);
  working.short = sub(working.short, short);
  const over = sub(counted, heldIn(own));
  if (sign(over) > 0) surplus(working, over, first);
  else draw(own, neg(over), date);
  dropEmpty(working);
  // Only whole packs were counted, so none is open.
  const { pack } = first;
  if (pack !== undefined && isWholePacks(counted, pack)) for (const batch of own) batch.openedOn = undefined;
};

/** The counts of one entry: those that name a lot set that lot; the others together set all the rest. */
const count = (working: Working, moves: readonly StockMove[]): void => {
  const isFirst = working.counts.length === 0;
  const lots = new Map<string, LotCounted>();
  for (const move of moves) {
    const lot = fold(move.lot ?? '');
    const counted = lots.get(lot);
    if (counted === undefined) lots.set(lot, { first: move, lines: [move] });
    else counted.lines.push(move);
  }
  for (const [lot, counted] of [...lots].sort(([a], [b]) => compareText(b, a))) {
    const own = working.batches.filter((batch) =>
      lot === '' ? !lots.has(fold(batch.lot ?? '')) || batch.lot === undefined : isLot(batch.lot, lot),
    );
    setLevel(working, own, counted, isFirst);
  }
  const within = sum(moves.map((move) => move.within));
  if (isFirst) working.firstWithin = within;
  else working.lastWithin = within;
};

const take = (working: Working, step: Step): void => {
  if ('touch' in step) use(working, step.touch, step.amount);
  else if ('counts' in step) count(working, step.counts);
  else if (step.move.kind === 'in') comeIn(working, step.move);
  else {
    takeOff(working, step.move.amount, step.move.lot, step.date);
    working.wentOut = add(working.wentOut, step.move.amount);
  }
  if (!('touch' in step)) working.kept = true;
};

const lineOf = (draft: Draft): StockLine => {
  const steps = draft.steps.sort(compareSteps);
  const arrivals = steps.flatMap((step) => ('move' in step && step.move.kind === 'in' ? [step.move] : []));
  const life = lifeOf(arrivals.map(({ date, useBy }) => ({ arrived: date, useBy })));
  const working: Working = {
    draft,
    batches: [],
    order: firstExpired(life),
    counts: [],
    used: [],
    issued: { byBatch: ZERO, weighted: ZERO },
    short: ZERO,
    cameIn: ZERO,
    wentOut: ZERO,
    unexplained: ZERO,
    firstWithin: ZERO,
    lastWithin: undefined,
    price: undefined,
    kept: false,
  };
  for (const step of steps) take(working, step);
  const onHand = levelOf(working);
  const { batches, price, counts, firstWithin, lastWithin } = working;
  const values = batches.map((batch) => batch.price && mul(batch.price, batch.left));
  return {
    salon: draft.salon,
    item: draft.item,
    shade: draft.shade,
    pieces: draft.pieces,
    kept: working.kept,
    onHand,
    batches,
    short: working.short,
    counts,
    used: working.used,
    cameIn: working.cameIn,
    wentOut: working.wentOut,
    unexplained: working.unexplained,
    unexplainedWithin: lastWithin === undefined ? ZERO : add(firstWithin, lastWithin),
    issued: working.issued,
    value: {
      byBatch: values.every((value) => value !== undefined) ? values.reduce(add, ZERO) : undefined,
      weighted: price && sign(onHand) > 0 ? mul(price, onHand) : batches.length === 0 ? ZERO : undefined,
    },
  };
};

const shadeOf = ({ shade }: StockLine): string => shade ?? '';

const depthOf = (line: StockLine): number => Number.parseFloat(shadeOf(line)) || 0;

const compareLines = (a: StockLine, b: StockLine): number =>
  compareText(a.salon.name ?? '', b.salon.name ?? '') ||
  compareText(a.item.name, b.item.name) ||
  depthOf(a) - depthOf(b) ||
  compareText(shadeOf(a), shadeOf(b));

/** The shelf as it stands at the end of a day, by product and shade; `upTo` undefined: by all notes. */
export const stockLedger = (journal: Journal, reckoned: Iterable<VisitReckoned>, upTo?: string): Ledger => {
  const drafts = new Map<string, Draft>();
  const draftOf = (salon: SalonSettings, item: ShelfItem, shade: string | undefined): Draft => {
    const key = `${salon.name ?? ''}\n${item.name}\n${shade ?? ''}`;
    let draft = drafts.get(key);
    if (draft === undefined) {
      draft = { salon, item, shade, steps: [], pieces: false };
      drafts.set(key, draft);
    }
    return draft;
  };
  const { moves, unmoved } = stockMoves(journal);
  const counting = new Map<Draft, Map<Stood<Stock>, StockMove[]>>();
  for (const move of moves) {
    const { date, minute, kind } = move;
    if (upTo !== undefined && date > upTo) continue;
    const draft = draftOf(move.salon, move.item, move.shade);
    draft.pieces ||= move.pieces;
    const rank = minute === undefined ? RANK[kind] : 0;
    if (kind !== 'count') draft.steps.push({ date, minute: minute ?? -1, rank, move });
    else {
      const entries = counting.get(draft) ?? new Map<Stood<Stock>, StockMove[]>();
      const counts = entries.get(move.entry);
      if (counts !== undefined) counts.push(move);
      else {
        const own = [move];
        entries.set(move.entry, own);
        counting.set(draft, entries);
        draft.steps.push({ date, minute: minute ?? CLOSING, rank, counts: own });
      }
    }
  }
  for (const visit of reckoned) {
    if (upTo !== undefined && visit.date > upTo) continue;
    const minute = momentOfVisit(visit).minute ?? NOON;
    for (const touch of touchesOf(journal.shelf, visit)) {
      const { item, shade, amount } = touch;
      if (item === undefined || amount === undefined || sign(amount) <= 0) continue;
      if (item.ranged && shade === undefined) continue;
      const draft = draftOf(visit.salon, item, shade);
      draft.pieces ||= isPieces(item);
      draft.steps.push({ date: visit.date, minute, rank: RANK.use, touch, amount });
    }
  }
  return { lines: [...drafts.values()].map(lineOf).sort(compareLines), unmoved };
};

const isPieces = ({ packs }: ShelfItem): boolean => packs.some(({ amount }) => amount.unit === 'each');
