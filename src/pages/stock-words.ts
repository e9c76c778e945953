import type { SalonSettings } from '../journal/salon.ts';
import { figure } from '../reckon/say.ts';
import type { StockLine } from '../reckon/stock/ledger.ts';
import { type ShelfRow, wareName } from '../reckon/stock/shelf-state.ts';
import { type Exact, roundTo } from '../text/exact.ts';
import { escapeText } from './escape.ts';
import { plain } from './say-numbers.ts';

/** Amounts of stock in words: grams as the scales show them, pieces as they are. */

type Measured = Pick<StockLine, 'pieces' | 'salon'>;

/** The figure of an amount of stock, without its unit. */
export const stockFigure = ({ pieces, salon }: Measured, value: Exact): string =>
  figure(pieces ? value : roundTo(value, salon.scale));

/** `320 g`, `4 pieces`. */
export const stockAmount = (line: Measured, value: Exact): string => {
  const text = stockFigure(line, value);
  if (!line.pieces) return `${text} g`;
  return `${text} ${text === '1' ? 'piece' : 'pieces'}`;
};

/** The product or shade, and the salon where there are several. */
export const wareText = (line: StockLine, salons: ReadonlyMap<string, SalonSettings>): string => {
  const name = escapeText(wareName(line));
  return salons.size > 1 && line.salon.name !== undefined ? `${name}, ${escapeText(line.salon.name)}` : name;
};

/** Packs with one decimal; nothing where the pack is not known. */
export const packsText = ({ packs }: ShelfRow): string => (packs === undefined ? '' : plain(packs, 1));
