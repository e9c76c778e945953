import type { ShelfItem } from '../../journal/shelf.ts';
import type { Shade } from '../../records/schema/values.ts';
import { nearNames } from '../../text/near.ts';

/** What is wrong with a shade of a range, and what could be meant. */
export type ShadeFault = { readonly message: string; readonly todo: string; readonly near: readonly string[] };

/** Whether each sign by itself is declared, which is nearly always so. */
const areDeclared = (tones: string, declared: ReadonlyMap<string, string>): boolean => {
  for (const sign of tones) if (!declared.has(sign)) return false;
  return true;
};

/** The tones that a range does not declare, of a run of tone signs such as `43`; a sign may be two letters long. */
const strangers = (tones: string, declared: ReadonlyMap<string, string>): string[] => {
  if (areDeclared(tones, declared)) return [];
  const longest = Math.max(...[...declared.keys()].map(({ length }) => length));
  const found: string[] = [];
  for (let from = 0; from < tones.length; ) {
    let length = Math.min(longest, tones.length - from);
    while (length > 0 && !declared.has(tones.slice(from, from + length))) length--;
    if (length === 0 && /[\p{L}\d]/u.test(tones.charAt(from))) found.push(tones.charAt(from));
    from += Math.max(1, length);
  }
  return found;
};

const undeclared = (shade: Shade, tones: string, item: ShelfItem, strange: readonly string[]): ShadeFault => {
  const kept = [...tones].filter((sign) => !strange.includes(sign)).join('');
  const near = kept === '' ? [] : [shade.shade.replace(tones, kept)];
  const declared = [...item.tones.keys()].join(', ');
  return {
    message: `\`${strange[0]}\` is not a tone of \`${item.name}\`; its tones line has ${declared}.`,
    todo:
      near[0] === undefined
        ? `Write one of these, or add it to \`tones\`.`
        : `Write \`${near[0]}\`, or add \`${strange[0]}\` to \`tones\`.`,
    near,
  };
};

/** `30 cream 7`: a depth without a tone, where the range numbers no shade so. */
const noTone = (typed: string, item: ShelfItem): ShadeFault => ({
  message: `\`${typed}\` of \`${item.name}\` has no tone, and \`${item.name}\` has no shade that goes by that number.`,
  todo: `Write depth and tone, as in \`${typed}/0\`; if the tube says \`${typed}\` alone, put \`shades ${typed}\` under \`${item.name}\`.`,
  near: [],
});

/**
 * What is wrong with a shade, by the range's own `tones` and `shades` lines; undefined when nothing is. A range that
 * declares neither takes any shade.
 */
export const shadeFault = (shade: Shade, item: ShelfItem): ShadeFault | undefined => {
  if (item.shades.has(shade.shade)) return undefined;
  if (shade.tones !== undefined) {
    if (item.tones.size === 0) return undefined;
    const strange = strangers(shade.tones, item.tones);
    return strange.length === 0 ? undefined : undeclared(shade, shade.tones, item, strange);
  }
  if (/^\d+$/.test(shade.shade)) return noTone(shade.shade, item);
  if (item.shades.size === 0 && item.tones.size === 0) return undefined;
  const near = nearNames(shade.shade, item.shades);
  return {
    message: `\`${shade.shade}\` is not a shade of \`${item.name}\`.`,
    todo:
      near[0] === undefined
        ? 'Write depth and tone, as in `7/43`, or add it to `shades`.'
        : `Write \`${near[0]}\`, or add it to \`shades\`.`,
    near,
  };
};
