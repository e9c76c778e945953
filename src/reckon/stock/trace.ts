import type { ClientFile, Journal } from '../../journal/journal.ts';
import { rowOf } from '../../journal/where.ts';
import { add, isZero, ZERO } from '../../text/exact.ts';
import { compareText, fold } from '../../text/fold.ts';
import { nearNames } from '../../text/near.ts';
import type { Line } from '../../text/span.ts';
import { grouped } from '../lift/grouped.ts';
import { isLot } from './batches.ts';
import { type StockMove, stockMoves } from './stock-entries.ts';
import { canBe, type Touch, type TouchingVisit, testTouches, type Ware } from './touch.ts';
import { tracedTouches } from './touching.ts';

/**
 * Where a lot went. *Recorded*: the note names the lot, or the bowl that it is made again from does and the lot was not
 * counted as gone by then. *Possible*: the note itself names none, or one that never came in and is nearly this one, and the
 * lot had come in by that day, to that salon, and was not yet counted as gone. Nobody is left out because another lot is
 * likelier.
 *
 * Reads: deliveries, counts and touches. Gives: clients and dates. Runs again: when one of them changes.
 */
export type Traced = { readonly touch: Touch; readonly certainty: 'recorded' | 'possible' };

/** One product or shade that a lot came in as, in one salon. */
export type TracedWare = Ware & {
  /** The salon it came in to, or went on to; undefined where the notes do not say which of several. */
  readonly salon: string | undefined;
  /** The day it came in; undefined where only bowls name the lot. */
  readonly arrived: string | undefined;
  readonly deliveries: readonly StockMove[];
  /** The day it was counted as gone, after which no note belies it until more comes in. */
  readonly gone: string | undefined;
};

export type LotTrace = {
  readonly lot: string;
  readonly wares: readonly TracedWare[];
  readonly traced: readonly Traced[];
  /** Lots of nearly the same name, where this one is nowhere. */
  readonly near: readonly string[];
};

/** Everything that touched anybody, and the lots that the notes name. */
export type Traceable = {
  readonly moves: readonly StockMove[];
  readonly touches: readonly Touch[];
  /** The salon of a stock line; undefined where its entry does not say which of several. */
  readonly salonOf: (move: StockMove) => string | undefined;
  /** The line of the file that a line stands on now. */
  readonly rowOf: (line: Line) => number;
};

/** Gathers what can be traced, of all visits given and all tests. */
export const traceable = (journal: Journal, visits: Iterable<TouchingVisit>): Traceable => {
  const { moves } = stockMoves(journal);
  const touches: Touch[] = [];
  const add = (more: readonly Touch[]): void => {
    for (const touch of more) touches.push(touch);
  };
  for (const visit of visits) add(tracedTouches(journal, visit));
  for (const client of journal.clients.values()) add(testTouches(journal.shelf, client));
  const salonOf = ({ salon, entry }: StockMove): string | undefined =>
    journal.salons.size > 1 && !journal.salons.has(entry.entry.salon?.name ?? '') ? undefined : salon.name;
  return { moves, touches, salonOf, rowOf: (line) => rowOf(journal, line) };
};

/** Whether two salons can be the same one. */
const isThere = (a: string | undefined, b: string | undefined): boolean =>
  a === undefined || b === undefined || a === b;

type Stocked = Ware & { readonly salon: string | undefined };

const isWare = (move: StockMove, { item, shade }: Ware): boolean => move.item === item && move.shade === shade;

/** Whether the notes belie that a lot was gone from a day on, up to another. */
type Belied = (from: string, before: string) => boolean;

/** Whether a lot counted as none by its own name was used all the same: a note names it, or nothing else was there. */
const beliesLot = (all: Traceable, ware: Stocked, lot: string): Belied => {
  const others = all.moves.filter(
    (move) =>
      isWare(move, ware) &&
      isThere(all.salonOf(move), ware.salon) &&
      !isLot(move.lot, lot) &&
      (move.kind === 'in' || (move.kind === 'count' && !isZero(move.amount))),
  );
  return (from, before) =>
    all.touches.some(
      (touch) =>
        touch.date > from &&
        touch.date < before &&
        isThere(touch.salon, ware.salon) &&
        touch.how !== 'test' &&
        canBe(touch, ware) &&
        (isLot(touch.lot, lot)
          ? touch.lotOf === undefined
          : touch.lot === undefined && !others.some(({ date }) => date <= touch.date)),
    );
};

/** Whether a product counted as none was used all the same. */
const beliesAll =
  ({ touches }: Traceable, ware: Stocked): Belied =>
  (from, before) =>
    touches.some(
      (touch) =>
        touch.date > from &&
        touch.date < before &&
        isThere(touch.salon, ware.salon) &&
        canBe(touch, ware) &&
        touch.how !== 'test',
    );

/** The day a lot was counted as none: by name, which closes it whatever else is used, or with all of its product. */
const goneOn = (all: Traceable, ware: Stocked, lot: string, arrived: string | undefined): string | undefined => {
  const own = all.moves
    .filter((move) => isWare(move, ware) && isThere(all.salonOf(move), ware.salon))
    .sort((a, b) => compareText(a.date, b.date));
  const last = own.findLast(({ kind, lot: named }) => kind === 'in' && isLot(named, lot))?.date ?? arrived ?? '';
  for (const { kind, amount, date, lot: named, entry } of own) {
    if (kind !== 'count' || date < last || !isZero(amount)) continue;
    if (isLot(named, lot)) {
      if (!beliesLot(all, ware, lot)(date, '9999-12-31')) return date;
      continue;
    }
    // Counted beside other lines of the same product, none here is only the rest.
    const together = own.filter((other) => other.kind === 'count' && other.entry === entry && other.lot === undefined);
    const isAll = named === undefined && isZero(together.reduce((whole, other) => add(whole, other.amount), ZERO));
    const more = own.find((other) => other.kind === 'in' && other.date > date)?.date ?? '9999-12-31';
    if (isAll && !beliesAll(all, ware)(date, more)) return date;
  }
  return undefined;
};

const wareKey = ({ item, shade, salon }: Stocked): string => `${item.name}\n${shade ?? ''}\n${salon ?? ''}`;

/** The products and shades that a lot came in as, salon by salon, or that bowls name with it. */
export const waresOf = (all: Traceable, lot: string): TracedWare[] => {
  const { moves, touches, salonOf } = all;
  const found = new Map<string, { ware: Stocked; deliveries: StockMove[] }>();
  for (const move of moves) {
    if (!isLot(move.lot, lot)) continue;
    const ware = { item: move.item, shade: move.shade, salon: salonOf(move) };
    const known = found.get(wareKey(ware)) ?? { ware, deliveries: [] };
    if (move.kind === 'in') known.deliveries.push(move);
    found.set(wareKey(ware), known);
  }
  for (const touch of touches) {
    const { item, shade, lot: named, lotOf, salon } = touch;
    if (item === undefined || lotOf !== undefined || !isLot(named, lot)) continue;
    const alike = [...found.values()].filter(({ ware }) => canBe(touch, ware));
    if (alike.some(({ ware }) => isThere(ware.salon, salon))) continue;
    // `30 cream` may be of the lot that came in as `cream 7/43`; another product of that lot came in unnoted. Named in
    // another salon than it came in to, it was carried over, since when nobody noted.
    const ware = { ...(alike[0]?.ware ?? { item, shade }), salon };
    found.set(wareKey(ware), { ware, deliveries: alike.flatMap(({ deliveries }) => deliveries) });
  }
  return [...found.values()].map(({ ware, deliveries }) => {
    const arrived = deliveries.map(({ date }) => date).sort(compareText)[0];
    return { ...ware, arrived, deliveries, gone: goneOn(all, ware, lot, arrived) };
  });
};

const isWithin = (date: string, { arrived, gone }: TracedWare): boolean =>
  (arrived === undefined || date >= arrived) && (gone === undefined || date <= gone);

/** Whether a touch can have been of one of the wares: that product and shade, in that salon, on a day it was there. */
const canHaveBeen = (touch: Touch, wares: readonly TracedWare[]): boolean =>
  wares.some((ware) => isThere(touch.salon, ware.salon) && isWithin(touch.date, ware) && canBe(touch, ware));

/** Whether a note names this lot itself, or repeats a bowl that does while the lot can have been there. */
const isRecorded = (touch: Touch, lot: string, wares: readonly TracedWare[]): boolean =>
  isLot(touch.lot, lot) && (touch.lotOf === undefined || canHaveBeen(touch, wares));

/** Whether a note leaves open which lot it was: it names none itself, or by a slip one that no delivery brought. */
const isOpen = (touch: Touch, lot: string, delivered: ReadonlySet<string>): boolean =>
  touch.lot === undefined ||
  touch.lotOf !== undefined ||
  (!delivered.has(fold(touch.lot)) && nearNames(touch.lot, [lot]).length > 0);

const deliveredLots = (moves: readonly StockMove[]): Set<string> =>
  new Set(moves.flatMap(({ lot }) => (lot === undefined ? [] : [fold(lot)])));

const compareTraced =
  ({ rowOf }: Traceable) =>
  (a: Traced, b: Traced): number =>
    compareText(a.touch.client, b.touch.client) ||
    rowOf(a.touch.place) - rowOf(b.touch.place) ||
    compareText(a.touch.place.in.file, b.touch.place.in.file);

/** By date, then client, then line. A day holds few, so sorting day by day spares most comparisons. */
const sorted = (all: Traceable, traced: readonly Traced[]): Traced[] =>
  [...grouped(traced, ({ touch }) => touch.date)]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([, ofDay]) => ofDay.sort(compareTraced(all)));

/** Every client and date that a lot touched or can have touched, by date. */
export const traceLot = (all: Traceable, lot: string): LotTrace => {
  const { moves, touches } = all;
  const wares = waresOf(all, lot);
  const delivered = deliveredLots(moves);
  const traced: Traced[] = [];
  for (const touch of touches) {
    if (isRecorded(touch, lot, wares)) traced.push({ touch, certainty: 'recorded' });
    else if (isOpen(touch, lot, delivered) && canHaveBeen(touch, wares)) traced.push({ touch, certainty: 'possible' });
  }
  const known = [...delivered, ...touches.flatMap((touch) => (touch.lot === undefined ? [] : [fold(touch.lot)]))];
  const isNowhere = wares.length === 0;
  return { lot, wares, traced: sorted(all, traced), near: isNowhere ? nearNames(lot, new Set(known)) : [] };
};

/** What touched one client: each with the lot recorded, or the lots it can have come from. */
export type ClientTouch = {
  readonly touch: Touch;
  readonly recorded: string | undefined;
  readonly possible: readonly string[];
};

/** Everything that touched a client, by date, with the lots that it can have come from. */
export const traceClient = (all: Traceable, { name }: ClientFile): ClientTouch[] => {
  const lots = new Map<string, { lot: string; wares: TracedWare[] }>();
  const delivered = deliveredLots(all.moves);
  for (const { lot, kind } of all.moves)
    if (lot !== undefined && kind === 'in' && !lots.has(fold(lot)))
      lots.set(fold(lot), { lot, wares: waresOf(all, lot) });
  return all.touches
    .filter(({ client }) => client === name)
    .sort((a, b) => compareText(a.date, b.date) || all.rowOf(a.place) - all.rowOf(b.place))
    .map((touch) => {
      const { lot: named, lotOf } = touch;
      // A lot that no delivery brought is recorded all the same, as it is typed.
      const own = named === undefined ? undefined : lots.get(fold(named));
      const isRepeatedNow = lotOf === undefined || own === undefined || isRecorded(touch, own.lot, own.wares);
      const recorded = isRepeatedNow ? named : undefined;
      const possible = [...lots.values()].flatMap(({ lot, wares }) =>
        !(recorded !== undefined && isLot(recorded, lot)) && isOpen(touch, lot, delivered) && canHaveBeen(touch, wares)
          ? [lot]
          : [],
      );
      return { touch, recorded, possible };
    });
};
