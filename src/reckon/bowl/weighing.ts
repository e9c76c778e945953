import type { ShelfItem } from '../../journal/shelf.ts';
import type { Amount } from '../../records/schema/values.ts';
import { type Exact, exactOf, mul, ONE } from '../../text/exact.ts';
import { isUnit, isVolume, measureNamed, toGrams, UNITS, type UnitName } from '../../trade/units.ts';
import { figure, grams, quoted } from '../say.ts';

/** What a salon settles about volumes: whether a millilitre without a density weighs a gram. */
export type Conversion = { readonly mlAsGrams: boolean };

/** Grams of so much of a unit of weight or volume; no unit is grams. Undefined for a volume without a density. */
export const gramsOfUnit = (
  value: Exact,
  unit: string,
  item: ShelfItem | undefined,
  { mlAsGrams }: Conversion,
): Exact | undefined => {
  if (unit === '' || unit === 'g') return value;
  const density = item?.density === undefined ? (mlAsGrams ? ONE : undefined) : exactOf(item.density);
  return toGrams(value, unit, density);
};

/** A typed amount as a weight: grams, parts of the bowl, or why it is neither. */
export type Weighing =
  | { readonly kind: 'grams'; readonly grams: Exact; readonly how?: string }
  | { readonly kind: 'parts'; readonly parts: Exact }
  | { readonly kind: 'no-density'; readonly message: string; readonly todo: string }
  | { readonly kind: 'unknown-measure'; readonly message: string; readonly todo: string };

/** How a volume became grams, in words. */
const volumeHow = (unit: UnitName, item: ShelfItem | undefined): string =>
  item?.density === undefined
    ? `1 ${unit} as ${figure(UNITS[unit].factor)} g, the salon’s policy`
    : `density ${item.density} of ${item.name}`;

const noDensity = (unit: string, item: ShelfItem | undefined, label: string): Weighing => ({
  kind: 'no-density',
  message: `The note says ${unit} of \`${label}\`, and no line gives its density.`,
  todo: `Write ${item === undefined ? 'grams' : `\`density\` under \`${item.name}\``}, or \`policy ml as g\` under the salon.`,
});

/**
 * What a typed amount weighs. Weights are exact grams; a volume takes the item's density or the salon's policy; a
 * measure (scoop) is the item's own; `p` is parts of the bowl; a pack is the one given. A range counts as its first.
 */
export const weigh = (
  amount: Amount,
  item: ShelfItem | undefined,
  label: string,
  conversion: Conversion,
  pack?: Exact,
): Weighing => {
  const value = exactOf(amount.value);
  const { unit } = amount;
  if (unit === '' || unit === 'g') return { kind: 'grams', grams: value };
  if (unit === 'p') return { kind: 'parts', parts: value };
  if (isUnit(unit)) {
    const weight = gramsOfUnit(value, unit, item, conversion);
    if (weight === undefined) return noDensity(unit, item, label);
    return isVolume(unit)
      ? { kind: 'grams', grams: weight, how: volumeHow(unit, item) }
      : { kind: 'grams', grams: weight };
  }
  if (unit === 'pack' && pack !== undefined) {
    const weight = mul(value, pack);
    return { kind: 'grams', grams: weight, how: `a pack of ${grams(pack)}` };
  }
  // `3 scoops` of a product that has a `scoop`.
  const one = (item && measureNamed(unit, item.measures)) ?? unit;
  const measure = item?.measures.get(one);
  if (measure === undefined) {
    const known = [...(item?.measures.keys() ?? [])];
    return {
      kind: 'unknown-measure',
      message: `\`${unit}\` is no measure of \`${item?.name ?? label}\`${known.length > 0 ? `; it has ${quoted(known)}` : ''}.`,
      todo:
        item === undefined
          ? 'Write grams.'
          : `Write grams, or \`measure ${unit} 10 g\` under \`${item.name}\` with its own weight.`,
    };
  }
  const weight = gramsOfUnit(exactOf(measure.value), measure.unit, item, conversion);
  if (weight === undefined) return noDensity(measure.unit, item, label);
  return { kind: 'grams', grams: mul(value, weight), how: `1 ${one} is ${grams(weight)}` };
};

/** What `left`, `more`, a total or a claim weighs in grams; undefined where its unit is no weight. */
export const plainGrams = (amount: Amount, conversion: Conversion): Exact | undefined => {
  const weighing = weigh(amount, undefined, '', conversion);
  return weighing.kind === 'grams' ? weighing.grams : undefined;
};

/** Why an amount of a whole bowl is no weight: a volume of a mixture has no density. */
export const noWeight = (
  amount: Amount,
): { kind: 'no-density' | 'unknown-measure'; message: string; todo: string } => ({
  kind: isVolume(amount.unit) ? 'no-density' : 'unknown-measure',
  message: `\`${figure(exactOf(amount.value))} ${amount.unit}\` of a mixture is not a weight.`,
  todo: isVolume(amount.unit) ? 'Write it in grams, or `policy ml as g` under the salon.' : 'Write it in grams.',
});
