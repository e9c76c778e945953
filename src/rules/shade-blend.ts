import type { BowlReckoned, Portion } from '../reckon/model.ts';
import { ONE } from '../text/exact.ts';
import { blendShades, type ShadeBlend, type ShadePart, toneWords } from '../trade/blend.ts';
import { isTone } from '../trade/tone.ts';
import { portionsIn } from './contents.ts';

/** The depth and the tone words of a portion: by its shade's signs, or by a name that is a tone word itself. */
const shadeOf = ({ shade = '', item }: Portion): Omit<ShadePart, 'weight'> => {
  const [depth, signs] = shade.split('/');
  if (signs !== undefined) {
    const value = Number(depth);
    return { depth: Number.isFinite(value) ? value : undefined, tones: toneWords(signs, item?.tones ?? new Map()) };
  }
  return { depth: undefined, tones: shade.split('-').filter(isTone) };
};

/** The coloured portions of a bowl: those of a range, with a shade. */
export const shadesIn = (bowl: BowlReckoned): readonly Portion[] =>
  portionsIn(bowl).filter(({ role, shade }) => role === 'base' && shade !== undefined);

const mixed = (bowl: BowlReckoned): ShadeBlend | undefined => {
  const shades = shadesIn(bowl);
  if (shades.length === 0 || (shades.length > 1 && shades.some(({ weight }) => weight === undefined))) return undefined;
  return blendShades(shades.map((portion) => ({ weight: portion.weight ?? ONE, ...shadeOf(portion) })));
};

// Asked by many rules of the same bowl.
const known = new WeakMap<BowlReckoned, { readonly blend: ShadeBlend | undefined }>();

/** What the shades of a bowl come to, by weight; undefined without a shade, or while the weight of one of several is missing. */
export const blendOf = (bowl: BowlReckoned): ShadeBlend | undefined => {
  let held = known.get(bowl);
  if (held === undefined) {
    held = { blend: mixed(bowl) };
    known.set(bowl, held);
  }
  return held.blend;
};

/** `8/1, pearl`: the shades of a bowl as a message names them. */
export const shadesText = (bowl: BowlReckoned): string =>
  [...new Set(shadesIn(bowl).map(({ shade }) => shade))].join(', ');
