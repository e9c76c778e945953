import type { ShelfItem } from '../../journal/shelf.ts';
import { ONE } from '../../text/exact.ts';
import { lasting, recently } from '../../text/recently.ts';
import { blendShades, type ShadeBlend, type ShadePart, toneWords } from '../../trade/blend.ts';
import { DEPTHS } from '../../trade/depth.ts';
import { isTone } from '../../trade/tone.ts';
import type { BowlReckoned, Portion } from '../model.ts';
import { portionsIn } from './contents.ts';

/** A portion of a range, in a shade. */
export type Shaded = Portion & { readonly item: ShelfItem; readonly shade: string };

/** A shade as records write it: depth, then a slash or a letter, then its tones. */
const FIGURED = /^(\d+(?:[.,]5)?)\/?(.+)$/;

const LAST_DEPTH = Math.max(...DEPTHS);

type ShadeRead = Omit<ShadePart, 'weight'>;

const readShade = (shade: string, item: ShelfItem): ShadeRead => {
  const [, figure, signs] = FIGURED.exec(shade) ?? [];
  if (figure !== undefined && signs !== undefined) {
    const depth = Number(figure.replace(',', '.'));
    // A figure past every depth is a number of the maker's own (`77/0`).
    return { depth: depth <= LAST_DEPTH ? depth : undefined, tones: toneWords(signs, item.tones) };
  }
  return { depth: undefined, tones: shade.split('-').filter(isTone) };
};

/** The shades of an item that were read; the same few are mixed again and again. */
const shadesRead = lasting((_item: ShelfItem) => new Map<string, ShadeRead>());

/** The depth and the tone words of a portion: by its shade's signs, or by a name that is a tone word itself. */
const shadeOf = ({ shade, item }: Shaded): ShadeRead => {
  const known = shadesRead(item);
  let read = known.get(shade);
  if (read === undefined) {
    read = readShade(shade, item);
    known.set(shade, read);
  }
  return read;
};

/**
 * The tone words of a portion that its range declares, or that its shade is named by; the common meanings of digits are
 * guesses, and a guess fills nothing.
 */
export const declaredTones = (portion: Shaded): readonly string[] =>
  portion.item.tones.size === 0 && FIGURED.test(portion.shade) ? [] : shadeOf(portion).tones;

/** The coloured portions of a bowl: those of a range, with a shade. */
export const shadesIn = (bowl: BowlReckoned): readonly Shaded[] =>
  portionsIn(bowl).filter((portion): portion is Shaded => {
    const { role, shade, item } = portion;
    return role === 'base' && shade !== undefined && item !== undefined;
  });

const mixed = (bowl: BowlReckoned): ShadeBlend | undefined => {
  const shades = shadesIn(bowl);
  if (shades.length === 0 || (shades.length > 1 && shades.some(({ weight }) => weight === undefined))) return undefined;
  return blendShades(
    shades.map((portion) => {
      const { depth, tones } = shadeOf(portion);
      return { weight: portion.weight ?? ONE, depth, tones };
    }),
  );
};

/** What the shades of a bowl come to, by weight; undefined without a shade, or while the weight of one of several is missing. */
export const blendOf: (bowl: BowlReckoned) => ShadeBlend | undefined = recently(mixed);

/** The tone words of everything coloured in a bowl, each once, as the range or the shade's own name says them. */
export const toneWordsIn = (bowl: BowlReckoned): readonly string[] => [
  ...new Set(shadesIn(bowl).flatMap((portion) => shadeOf(portion).tones)),
];

/** `8/1, pearl`: the shades of a bowl as a message names them. */
export const shadesText = (bowl: BowlReckoned): string =>
  [...new Set(shadesIn(bowl).map(({ shade }) => shade))].join(', ');
