import type { Component } from '../schema/values.ts';
import { amountText, isPlainUnit, ratioText, shadeText, strengthText } from './figures.ts';
import { bowlText, namesText } from './names.ts';
import { type Said, spaced } from './said.ts';

/** One part of a mix: `30 cream 7/43`, `20vol 1:2`, `clay 1 scoop`, `40 from A`, `7.5% from dev-6 dev-9` */
export const componentText = (part: Said<Component>): string => {
  const { amount, product, second, shade, strength, ratio, blend, out, lot } = part;
  const weight = amount && amountText(amount);
  // A measure of the product's own is one where it stands after the name.
  const measured = amount !== undefined && !isPlainUnit(amount);
  return spaced(
    !measured && weight,
    product?.name,
    measured && weight,
    second?.name,
    shade && shadeText(shade),
    strength && strengthText(strength),
    out && `from ${bowlText(out)}`,
    blend && `from ${namesText(blend)}`,
    ratio && ratioText(ratio),
    lot && `lot ${lot.text}`,
  );
};

/** The parts of a mix, joined by plus signs, or by what is given. */
export const partsText = (parts: readonly Said<Component>[], joiner = ' + '): string =>
  parts
    .map(componentText)
    .filter((text) => text !== '')
    .join(joiner);
