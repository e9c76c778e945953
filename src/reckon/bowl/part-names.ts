import { outlinesOf, type ShelfItem } from '../../journal/shelf.ts';
import type { Amount, Name, Shade } from '../../records/schema/values.ts';
import { type Exact, exactOf } from '../../text/exact.ts';
import { fromOf } from '../../text/span.ts';
import { isContainer, measureNamed } from '../../trade/units.ts';
import { type Typed, typedPart } from './part.ts';

type Shelf = ReadonlyMap<string, ShelfItem>;

/** The names of a part, sorted: `extra` is one too many. */
export type PartNames = {
  readonly product: Name | undefined;
  readonly shade: Shade | undefined;
  readonly extra: Name | undefined;
  readonly amount: Amount | undefined;
};

/** `grist 3 + 20 dev-6`: a bare figure behind a range that lists it is the shade, and the weight is missing. */
const numberedShade = (product: Name, amount: Amount | undefined, shelf: Shelf): Shade | undefined => {
  if (amount?.unit !== '' || fromOf(amount.at) < fromOf(product.at)) return undefined;
  const shade = String(amount.value);
  return shelf.get(product.name)?.shades.has(shade) ? { shade, at: amount.at } : undefined;
};

/** Which of two names is the product, which a shade (`20 toner clear`) or a measure (`1 scoop clay`): the shelf tells. */
export const sortNames = ({ product, second, shade, amount }: Typed, shelf: Shelf): PartNames => {
  if (product === undefined || second === undefined) {
    const numbered = product && shade === undefined ? numberedShade(product, amount, shelf) : undefined;
    return { product, shade: shade ?? numbered, extra: undefined, amount: numbered === undefined ? amount : undefined };
  }
  const item = shelf.get(product.name);
  const other = shelf.get(second.name);
  const asShade = (name: Name): Shade => ({ shade: name.name, at: name.at });
  const isMeasure = ({ name }: Name): boolean =>
    isContainer(name) || outlinesOf(shelf).some(({ measures }) => measureNamed(name, measures) !== undefined);
  if (item === undefined && other !== undefined) {
    if (amount?.unit === '' && isContainer(product.name))
      return { product: second, shade, extra: undefined, amount: { ...amount, unit: product.name } };
    if (amount?.unit === '' && (measureNamed(product.name, other.measures) !== undefined || !other.ranged))
      return { product: second, shade, extra: undefined, amount: { ...amount, unit: product.name } };
    if (shade === undefined) return { product: second, shade: asShade(product), extra: undefined, amount };
    return { product: second, shade, extra: product, amount };
  }
  if (item === undefined && amount?.unit === '' && isMeasure(product))
    return { product: second, shade, extra: undefined, amount: { ...amount, unit: product.name } };
  if (item !== undefined && amount?.unit === '' && measureNamed(second.name, item.measures) !== undefined)
    return { product, shade, extra: undefined, amount: { ...amount, unit: second.name } };
  if (shade === undefined && (item === undefined || item.ranged))
    return { product, shade: asShade(second), extra: undefined, amount };
  return { product, shade, extra: second, amount };
};

/** The strength that a developer’s name gives while there is no shelf: 6 for `dev-6`. */
export const strengthInName = (name: string): Exact | undefined => {
  const match = /^dev-?(\d{1,3}(?:\.\d{1,3})?)$/.exec(name);
  return match === null ? undefined : exactOf(Number(match[1]));
};

/**
 * `40 clay 20vol 1:2` without a plus: the amount is the product’s, strength and ratio are the developer’s. A developer
 * keeps a strength typed beside it; so does, without a shelf, a name that stands beside another (`alone`: none does).
 * Undefined for a part that is one thing.
 */
export const splitDeveloper = (typed: Typed, shelf: Shelf, alone: boolean): readonly Typed[] | undefined => {
  const { product, strength, blend, in: ground, line, inLine } = typed;
  if (product === undefined || (strength === undefined && blend === undefined)) return undefined;
  const item = shelf.get(product.name) ?? shelf.get(typed.second?.name ?? '');
  const isDeveloper =
    shelf.size === 0 ? !alone || strengthInName(product.name) !== undefined : item?.kind === 'developer';
  if (isDeveloper || (shelf.size > 0 && item === undefined)) return undefined;
  const { strength: _, ratio, blend: __, ...rest } = typed.component;
  const developer = { at: typed.at, ...(strength && { strength }), ...(blend && { blend }), ...(ratio && { ratio }) };
  return [rest, developer].map((component) => typedPart(component, ground, line, inLine));
};
