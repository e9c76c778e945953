import { type Exact, toFixed } from '../text/exact.ts';

/** An exact number in JSON: rounded to three decimals for use, and exactly, as a whole number or a fraction `n/d`. */
export type Figure = { readonly value: number; readonly exact: string };

const isExact = (value: object): value is Exact => {
  const keys = Object.keys(value);
  return keys.length === 2 && 'n' in value && 'd' in value;
};

/** An exact number as JSON has it; undefined stays undefined. */
export const figureJson = (value: Exact | undefined): Figure | undefined =>
  value && { value: Number(toFixed(value, 3)), exact: value.d === 1 ? String(value.n) : `${value.n}/${value.d}` };

/** Plain data with every exact number in it turned into a figure. Only for data that holds no records of the journal. */
export const plainJson = (value: unknown): unknown => {
  if (value instanceof Map) return Object.fromEntries([...value].map(([key, inner]) => [key, plainJson(inner)]));
  if (Array.isArray(value)) return value.map(plainJson);
  if (typeof value !== 'object' || value === null) return value;
  if (isExact(value)) return figureJson(value);
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, plainJson(inner)]));
};
