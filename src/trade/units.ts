import { type Exact, exact, mul, ONE } from '../text/exact.ts';

export type Quantity = 'mass' | 'volume';

/** A unit of weight or volume: `factor` turns it into grams or millilitres. */
export type Unit = { readonly quantity: Quantity; readonly factor: Exact; readonly source: string };

const SI = 'SI Brochure, 9th edition (2019), tables 2, 7 and 8';
const UK_GALLON = 'Units of Measurement Regulations 1995: 1/160 of the gallon of 4.54609 litres';

/** Every unit of weight and volume that the notation reads. */
export const UNITS = {
  g: { quantity: 'mass', factor: ONE, source: SI },
  kg: { quantity: 'mass', factor: exact(1000), source: SI },
  ml: { quantity: 'volume', factor: ONE, source: SI },
  l: { quantity: 'volume', factor: exact(1000), source: SI },
  'oz-wt': {
    quantity: 'mass',
    factor: exact(28_349_523_125, 1_000_000_000),
    source: 'from memory: 1/16 of the avoirdupois pound of 0.45359237 kg',
  },
  'floz-us': {
    quantity: 'volume',
    factor: exact(295_735_295_625, 10_000_000_000),
    source: 'definition: 1/128 of the US gallon of 231 cubic inches',
  },
  'floz-uk': { quantity: 'volume', factor: exact(284_130_625, 10_000_000), source: UK_GALLON },
  drop: { quantity: 'volume', factor: exact(1, 20), source: 'common practice, no source: twenty drops a millilitre' },
} as const satisfies Record<string, Unit>;

export type UnitName = keyof typeof UNITS;

/** Whether a word, in small letters, is a unit of weight or volume. */
export function isUnit(word: string): word is UnitName {
  return Object.hasOwn(UNITS, word);
}

/** Whether a word, in small letters, is a unit of volume. */
export function isVolume(word: string): word is UnitName {
  return isUnit(word) && UNITS[word].quantity === 'volume';
}

export type UnitMeaning = { readonly write: string; readonly means: string; readonly source: string };

/** Unit words with several meanings, each with what to write instead. */
export const AMBIGUOUS_UNITS: Readonly<Record<string, readonly UnitMeaning[]>> = {
  oz: [
    { write: 'oz-wt', means: 'an ounce of weight, 28.35 g', source: UNITS['oz-wt'].source },
    { write: 'floz-us', means: 'a US fluid ounce, 29.57 ml', source: UNITS['floz-us'].source },
    { write: 'floz-uk', means: 'an imperial fluid ounce, 28.41 ml', source: UNITS['floz-uk'].source },
    { write: 'ml', means: 'a label ounce, 30 ml', source: '21 CFR 101.9(b)(5)(viii), for nutrition labels only' },
  ],
};

/**
 * Grams of a quantity. A volume needs the density in g/ml. Undefined when the unit is not one of ours, or the density
 * is needed and not known.
 */
export function toGrams(value: Exact, unit: string, density?: Exact): Exact | undefined {
  if (!isUnit(unit)) return undefined;
  const { quantity, factor } = UNITS[unit];
  const base = mul(value, factor);
  if (quantity === 'mass') return base;
  return density === undefined ? undefined : mul(base, density);
}

/** What stuff comes in or is taken up with, without a weight of its own: common practice, no source. */
const CONTAINERS: ReadonlySet<string> = new Set([
  ...[
    'tube',
    'scoop',
    'sachet',
    'bottle',
    'pump',
    'cap',
    'tsp',
    'tbsp',
    'squeeze',
    'squirt',
    'dollop',
    'splash',
    'cup',
  ],
  ...['spoon', 'teaspoon', 'tablespoon', 'spoonful', 'teaspoonful', 'tablespoonful'],
]);

/** The name of a measure as one of several has it, for one or for more: `scoops` where a `scoop` is known. */
export const measureNamed = (word: string, known: { readonly has: (name: string) => boolean }): string | undefined =>
  [word, word.replace(/s$/, ''), word.replace(/es$/, '')].find((one) => known.has(one));

/** Whether a word, in small letters, measures by a container, so that only a product's own line gives its weight. */
export function isContainer(word: string): boolean {
  return measureNamed(word, CONTAINERS) !== undefined;
}

/** Lengths of time in minutes; a month has none, since months are counted on the calendar. Source: SI Brochure, table 8. */
export const TIME_UNITS = { min: 1, h: 60, d: 1440, w: 10_080, mo: undefined } as const;

export type TimeUnit = keyof typeof TIME_UNITS;

/** Whether a word, in small letters, is a unit of time. */
export function isTimeUnit(word: string): word is TimeUnit {
  return Object.hasOwn(TIME_UNITS, word);
}

/** Lengths in millimetres. Inch: 25.4 mm exactly, from memory (international yard of 1959). */
export const LENGTH_UNITS = { mm: ONE, cm: exact(10), in: exact(254, 10) } as const satisfies Record<string, Exact>;

export type LengthUnit = keyof typeof LENGTH_UNITS;

/** Whether a word, in small letters, is a unit of length. */
export function isLengthUnit(word: string): word is LengthUnit {
  return Object.hasOwn(LENGTH_UNITS, word);
}

/** Millimetres of a length. */
export function toMillimetres(value: Exact, unit: LengthUnit): Exact {
  return mul(value, LENGTH_UNITS[unit]);
}
