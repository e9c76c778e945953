import type { ClientFile, Journal } from '../../journal/journal.ts';
import { add, isZero, ZERO } from '../../text/exact.ts';
import { fold } from '../../text/fold.ts';
import { nearNames } from '../../text/near.ts';
import { grouped } from '../lift/grouped.ts';
import { compareText } from '../period.ts';
import { isLot } from './batches.ts';
import { type StockMove, stockMoves } from './stock-entries.ts';
import { canBe, type Touch, type TouchingVisit, testTouches, touchesOf, type Ware } from './touch.ts';

/**
 * Where a lot went. *Recorded*: the note names the lot. *Possible*: the note names none, or one that never came in, and
 * the lot had come in by that day and was not yet counted as gone. Nobody is left out because another lot is likelier.
 *
 * Reads: deliveries, counts and touches. Gives: clients and dates. Runs again: when one of them changes.
 */
export type Traced = { readonly touch: Touch; readonly certainty: 'recorded' | 'possible' };

/** One product or shade that a lot came in as. */
export type TracedWare = Ware & {
  /** The day it came in; undefined where only bowls name the lot. */
  readonly arrived: string | undefined;
  readonly deliveries: readonly StockMove[];
  /** The day it was counted as gone, after which no note uses the product until more comes in. */
  readonly gone: string | undefined;
};

export type LotTrace = {
  readonly lot: string;
  readonly wares: readonly TracedWare[];
  readonly traced: readonly Traced[];
  /** Lots of nearly the same name, where this one is nowhere. */
  readonly near: readonly string[];
};

const isWare = (move: StockMove, { item, shade }: Ware): boolean => move.item === item && move.shade === shade;

/** The day a lot was counted as none: by name, or with all of its product. */
const goneOn = (
  moves: readonly StockMove[],
  ware: Ware,
  lot: string,
  arrived: string | undefined,
  usedOn: (ware: Ware, from: string, before: string) => boolean,
): string | undefined => {
  const own = moves.filter((move) => isWare(move, ware)).sort((a, b) => compareText(a.date, b.date));
  const last = own.findLast(({ kind, lot: named }) => kind === 'in' && isLot(named, lot))?.date ?? arrived ?? '';
  for (const { kind, amount, date, lot: named, entry } of own) {
    if (kind !== 'count' || date < last || !isZero(amount)) continue;
    // Counted beside other lines of the same product, none here is only the rest.
    const together = own.filter((other) => other.kind === 'count' && other.entry === entry && other.lot === undefined);
    const isAll = named === undefined && isZero(together.reduce((whole, other) => add(whole, other.amount), ZERO));
    if (!isLot(named, lot) && !isAll) continue;
    const more = own.find((other) => other.kind === 'in' && other.date > date)?.date ?? '9999-12-31';
    if (!usedOn(ware, date, more)) return date;
  }
  return undefined;
};

/** Everything that touched anybody, and the lots that the notes name. */
export type Traceable = {
  readonly moves: readonly StockMove[];
  readonly touches: readonly Touch[];
};

/** Gathers what can be traced, of all visits given and all tests; `plain` are touches that are known already. */
export const traceable = (
  journal: Journal,
  visits: Iterable<TouchingVisit>,
  plain: readonly Touch[] = [],
): Traceable => {
  const { moves } = stockMoves(journal);
  const touches = [...plain];
  const add = (more: readonly Touch[]): void => {
    for (const touch of more) touches.push(touch);
  };
  for (const visit of visits) add(touchesOf(journal.shelf, visit));
  for (const client of journal.clients.values()) add(testTouches(journal.shelf, client));
  return { moves, touches };
};

const wareKey = ({ item, shade }: Ware): string => `${item.name}\n${shade ?? ''}`;

/** The products and shades that a lot came in as, or that bowls name with it. */
export const waresOf = ({ moves, touches }: Traceable, lot: string): TracedWare[] => {
  const found = new Map<string, { ware: Ware; deliveries: StockMove[] }>();
  for (const move of moves) {
    if (!isLot(move.lot, lot)) continue;
    const known = found.get(wareKey(move)) ?? { ware: { item: move.item, shade: move.shade }, deliveries: [] };
    if (move.kind === 'in') known.deliveries.push(move);
    found.set(wareKey(move), known);
  }
  for (const touch of touches) {
    const { item, shade, lot: named } = touch;
    if (item === undefined || !isLot(named, lot)) continue;
    // `30 cream` may be of the lot that came in as `cream 7/43`; another product of that lot came in unnoted.
    if (![...found.values()].some(({ ware }) => canBe(touch, ware)))
      found.set(wareKey({ item, shade }), { ware: { item, shade }, deliveries: [] });
  }
  const usedOn = (ware: Ware, from: string, before: string): boolean =>
    touches.some((touch) => touch.date > from && touch.date < before && canBe(touch, ware) && touch.how !== 'test');
  return [...found.values()].map(({ ware, deliveries }) => {
    const arrived = deliveries.map(({ date }) => date).sort(compareText)[0];
    return { ...ware, arrived, deliveries, gone: goneOn(moves, ware, lot, arrived, usedOn) };
  });
};

const isWithin = (date: string, { arrived, gone }: TracedWare): boolean =>
  (arrived === undefined || date >= arrived) && (gone === undefined || date <= gone);

const compareTraced = (a: Traced, b: Traced): number =>
  compareText(a.touch.client, b.touch.client) ||
  a.touch.place.line - b.touch.place.line ||
  compareText(a.touch.place.file, b.touch.place.file);

/** By date, then client, then line. A day holds few, so sorting day by day spares most comparisons. */
const sorted = (traced: readonly Traced[]): Traced[] =>
  [...grouped(traced, ({ touch }) => touch.date)]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([, ofDay]) => ofDay.sort(compareTraced));

/** Every client and date that a lot touched or can have touched, by date. */
export const traceLot = (all: Traceable, lot: string): LotTrace => {
  const { moves, touches } = all;
  const wares = waresOf(all, lot);
  const delivered = new Set(moves.flatMap((move) => (move.lot === undefined ? [] : [fold(move.lot)])));
  const traced: Traced[] = [];
  for (const touch of touches) {
    if (isLot(touch.lot, lot)) traced.push({ touch, certainty: 'recorded' });
    else if (touch.lot === undefined || !delivered.has(fold(touch.lot))) {
      if (wares.some((ware) => isWithin(touch.date, ware) && canBe(touch, ware)))
        traced.push({ touch, certainty: 'possible' });
    }
  }
  const known = [...delivered, ...touches.flatMap((touch) => (touch.lot === undefined ? [] : [fold(touch.lot)]))];
  const isNowhere = wares.length === 0;
  return { lot, wares, traced: sorted(traced), near: isNowhere ? nearNames(lot, new Set(known)) : [] };
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
  for (const { lot, kind } of all.moves)
    if (lot !== undefined && kind === 'in' && !lots.has(fold(lot)))
      lots.set(fold(lot), { lot, wares: waresOf(all, lot) });
  return all.touches
    .filter(({ client }) => client === name)
    .sort((a, b) => compareText(a.date, b.date) || a.place.line - b.place.line)
    .map((touch) => {
      const isKnown = touch.lot !== undefined && lots.has(fold(touch.lot));
      const possible = isKnown
        ? []
        : [...lots.values()].flatMap(({ lot, wares }) =>
            wares.some((ware) => isWithin(touch.date, ware) && canBe(touch, ware)) ? [lot] : [],
          );
      return { touch, recorded: touch.lot, possible };
    });
};
