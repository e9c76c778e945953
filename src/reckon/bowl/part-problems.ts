import type { ShelfItem } from '../../journal/shelf.ts';
import type { StrengthLine } from '../../records/schema/shelf.ts';
import type { Name, Shade, Strength } from '../../records/schema/values.ts';
import { compare, type Exact, sub } from '../../text/exact.ts';
import { nearNames } from '../../text/near.ts';
import type { At } from '../../text/span.ts';
import { LAW } from '../../trade/law.ts';
import { percentOf } from '../../trade/strength.ts';
import type { BowlProblem } from '../model.ts';
import { figure, listed, perCent, quoted } from '../say.ts';
import { type Meant, percentTyped } from './developers.ts';
import type { Typed } from './part.ts';

/** A problem of one part; its place is on the part's own line. */
export type PartProblem = Omit<BowlProblem, 'place'> & { readonly at: At };

type Shelf = ReadonlyMap<string, ShelfItem>;

/**
 * A name that is not on the shelf, with the nearest ones that are. Of two the one that is near to some is meant. With a
 * shade beside it, it is a range: only ranges have shades.
 */
export const unknownName = (
  first: Name,
  second: Name | undefined,
  shelf: Shelf,
  shade: string | undefined,
): PartProblem => {
  const nearOf = (name: Name): string[] => nearNames(name.name, shelf.keys());
  const other = second !== undefined && nearOf(first).length === 0 && nearOf(second).length > 0 ? second : undefined;
  const { name, at } = other ?? first;
  const near = nearNames(name, shelf.keys());
  // A second name may as well lack a plus.
  const entry = shade === undefined || !/\d/.test(shade) ? `product ${name} additive` : `range ${name} permanent`;
  return {
    kind: 'unknown-name',
    at,
    message: `\`${name}\` is not on the shelf.`,
    todo:
      near.length > 0
        ? `Write ${quoted(near, 'or')}, or put \`${name}\` on the shelf.`
        : `Put \`${name}\` on the shelf, as in \`${entry}\`.`,
    near,
  };
};

/** An amount, a ratio or a lot that belongs to nothing. */
export const nameless = ({ amount, ratio, at }: Typed): PartProblem => {
  const onlyRatio = amount === undefined && ratio !== undefined;
  const what = amount !== undefined ? 'An amount' : onlyRatio ? 'A ratio' : 'A part';
  return {
    kind: 'unknown-name',
    at: amount?.at ?? ratio?.at ?? at,
    message: `${what} of the mix has no name.`,
    todo: onlyRatio ? 'Write it after the developer, as in `20vol 1:2`.' : 'Write of what, as in `40 clay`.',
  };
};

/** A name or a shade beside a product that has none. */
export const shadeOfProduct = (item: ShelfItem, typed: string, at: At): PartProblem => ({
  kind: 'shade-of-product',
  at,
  message: `\`${item.name}\` has no shades, and the note says \`${typed}\`.`,
  todo: `Write \`+\` between two products, take \`${typed}\` out, or make \`${item.name}\` a range.`,
});

export const noShade = (item: ShelfItem, at: At): PartProblem => {
  // A range whose shades go by names or numbers has no depths and tones to write.
  const [listed] = item.tones.size === 0 ? item.shades : [];
  return {
    kind: 'no-shade',
    at,
    message: `\`${item.name}\` is a range, and the note gives no shade.`,
    todo:
      listed === undefined
        ? `Write depth and tone, as in \`${item.name} 7/43\`.`
        : `Write the shade, as in \`${item.name} ${listed}\`.`,
  };
};

export const twoShades = (item: ShelfItem, shade: Shade, extra: Name): PartProblem => ({
  kind: 'unknown-shade',
  at: extra.at,
  message: `\`${item.name}\` has two shades in one part, \`${shade.shade}\` and \`${extra.name}\`.`,
  todo: 'Write `+` between two shades, each with its own amount.',
});

/** A strength typed beside a developer that has another. */
export const otherStrength = (label: string, own: Exact, typed: Exact, at: At): PartProblem => ({
  kind: 'disagree',
  at,
  message: `The note says ${perCent(typed)}, and \`${label}\` is ${perCent(own)}.`,
  todo: `Write \`${label}\` alone, or the strength alone.`,
});

/** A bare strength that no developer, or more than one, has. */
export const unmetStrength = (
  percent: Exact,
  meant: Exclude<Meant, { kind: 'one' }>,
  { unit, at }: Strength,
  bases: readonly ShelfItem[],
): PartProblem => {
  if (meant.kind === 'several') {
    const names = meant.items.map(({ name }) => name);
    return {
      kind: 'several-developers',
      at,
      message: `${names.length} developers on the shelf are ${perCent(percent)}: ${quoted(names)}.`,
      todo: `Write ${quoted(names, 'or')}, or name one in the product’s \`uses\` line.`,
      near: names,
    };
  }
  const { there } = meant;
  const weaker = there.findLast((one) => compare(one.percent, percent) < 0);
  const stronger = there.find((one) => compare(one.percent, percent) > 0);
  const strengths = [...new Set(there.map((one) => perCent(one.percent)))];
  const has = strengths.length === 0 ? '' : `; there ${strengths.length === 1 ? 'is' : 'are'} ${listed(strengths)}`;
  const near = there.filter((one) => sameOrNext(one.percent, percent)).map(({ item }) => item.name);
  if (compare(percent, STRONGEST) > 0) {
    // Volumes are sold by the ten; `20%` is a slip of them.
    const volumes = unit === '%' && /^[1-9]0$/.test(figure(percent)) ? percentOf(percent) : undefined;
    const meantVolumes = volumes !== undefined && compare(volumes, STRONGEST) <= 0;
    return {
      kind: 'no-developer',
      at,
      message: meantVolumes
        ? `${perCent(percent)} is stronger than any developer; \`${figure(percent)}vol\` is ${perCent(volumes)}.`
        : `${perCent(percent)} is stronger than any developer${has}.`,
      todo: meantVolumes ? `Write \`${figure(percent)}vol\`.` : 'Write the strength that was used.',
      near,
    };
  }
  const takes = bases.flatMap((item) => takesText(item) ?? []);
  const taken = bases.every(({ strengths }) => strengths === undefined || takesStrength(strengths, percent));
  const onShelf = `Put it on the shelf, as in \`product dev-${figure(percent)} developer ${figure(percent)}%\`.`;
  return {
    kind: 'no-developer',
    at,
    message: `${[`No developer on the shelf is ${perCent(percent)}${has}`, ...new Set(takes)].join('; ')}.`,
    todo:
      weaker && stronger
        ? `Write one of these, or a blend: \`${figure(percent)}% from ${weaker.item.name} ${stronger.item.name}\`.`
        : taken
          ? onShelf
          : 'Write the strength that was used.',
    near,
  };
};

/** The most peroxide that a developer for hair holds, per cent: the limit of Annex III, entry 12, on the head. */
const STRONGEST = LAW.eu.peroxide.percent;

const takesStrength = ({ strengths, upTo }: StrengthLine, percent: Exact): boolean =>
  (upTo !== undefined && compare(percent, percentTyped(upTo)) <= 0) ||
  strengths.some((one) => compare(percentTyped(one), percent) === 0);

/** `cream takes 3 %, 6 % or 9 %`; undefined where no strength line stands. */
const takesText = ({ name, strengths: line }: ShelfItem): string | undefined => {
  if (line === undefined) return undefined;
  const list = line.strengths.map((one) => perCent(percentTyped(one)));
  const upTo = line.upTo === undefined ? [] : [`up to ${perCent(percentTyped(line.upTo))}`];
  return `\`${name}\` takes ${listed([...list, ...upTo], 'or')}`;
};

/** A strength within three per cent of another: one step of the usual ones. */
const sameOrNext = (a: Exact, b: Exact): boolean => {
  const gap = compare(a, b) > 0 ? sub(a, b) : sub(b, a);
  return compare(gap, { n: 3, d: 1 }) <= 0;
};

/** A ratio in a mix that names no developer. */
export const ratioWithoutDeveloper = (says: string, at: At): PartProblem => ({
  kind: 'no-developer',
  at,
  message: `The ratio ${says} is of a developer, and the mix names none.`,
  todo: `Write it after the developer, as in \`+ 6% ${says}\`.`,
});
