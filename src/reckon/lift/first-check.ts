import type { ShelfItem } from '../../journal/shelf.ts';
import { minutesOf } from '../clock/applied.ts';

/** Minutes of a product's time line: of the one that holds without a condition, else of the first. */
export const lineOf = ({ times }: ShelfItem): { readonly from: number; readonly to: number } | undefined => {
  const line = (times.find(({ when }) => when === undefined) ?? times[0])?.minutes;
  const from = line && minutesOf(line);
  const to = line?.to === undefined ? from : minutesOf({ ...line, value: line.to });
  return from === undefined || to === undefined ? undefined : { from, to };
};

/** The middle of a product's time line in minutes; undefined without one. */
export const middleOfLine = (item: ShelfItem): number | undefined => {
  const line = lineOf(item);
  return line && (line.from + line.to) / 2;
};

/** A first look is had by this part of the shortest time expected, and not at odd minutes: choices, no source. */
const PART_OF_SHORTEST = 1 / 2;
const WHOLE = 5;

/**
 * Minutes after first on for the first look: as often as the product's line says to check, and by half of the shortest
 * time expected, taken down to whole fives. Undefined when neither is known.
 */
export const firstCheckAt = (item: ShelfItem, shortest?: number): number | undefined => {
  const every = item.times.find(({ checkEvery }) => checkEvery !== undefined)?.checkEvery;
  const half = shortest === undefined ? undefined : shortest * PART_OF_SHORTEST;
  const own = half === undefined ? undefined : Math.max(1, Math.floor(half / WHOLE) * WHOLE || Math.floor(half));
  const said = [every && minutesOf(every), own].filter((minutes) => minutes !== undefined);
  return said.length === 0 ? undefined : Math.min(...said);
};
