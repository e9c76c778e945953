import { add, div, type Exact, exact, exactOf, isZero, mul, toNumber, ZERO } from '../text/exact.ts';
import { DEFAULT_TONE_DIGITS, type ToneFamily, toneFamily } from './tone.ts';

/** One shade of a mixture: its weight in any one unit, its depth (none: clear), its tones as words, strongest first. */
export type ShadePart = {
  readonly weight: Exact;
  readonly depth: number | undefined;
  readonly tones: readonly string[];
};

export type ShadeBlend = {
  /** Mean of the depths by weight; undefined when no part has one. */
  readonly depth: Exact | undefined;
  /** Tone families by their share of the weight that has a tone, largest first. */
  readonly tones: readonly { readonly family: ToneFamily; readonly share: Exact }[];
};

/** What a tone counts for by its place in the shade's name: a choice, since pages say only that the first is strongest. */
const weightOf = (index: number): Exact => exact(index === 0 ? 2 : 1);

/**
 * The depth and tone that shades mixed together are expected to have, by weight: common practice, no source. What has
 * no depth (clear) thins the colour and moves neither; a tone word that belongs to no family is left out.
 */
export function blendShades(parts: readonly ShadePart[]): ShadeBlend {
  let [weight, depths, toned]: [Exact, Exact, Exact] = [ZERO, ZERO, ZERO];
  const families = new Map<ToneFamily, Exact>();
  for (const part of parts) {
    if (part.depth !== undefined) {
      weight = add(weight, part.weight);
      depths = add(depths, mul(part.weight, exactOf(part.depth)));
    }
    for (const [index, tone] of part.tones.entries()) {
      const family = toneFamily(tone);
      if (family === undefined) continue;
      const counts = mul(part.weight, weightOf(index));
      families.set(family, add(families.get(family) ?? ZERO, counts));
      toned = add(toned, counts);
    }
  }
  return {
    depth: isZero(weight) ? undefined : div(depths, weight),
    tones: isZero(toned)
      ? []
      : [...families]
          .map(([family, counts]) => ({ family, share: div(counts, toned) }))
          .sort((a, b) => toNumber(b.share) - toNumber(a.share)),
  };
}

/**
 * The tones of a shade as words, strongest first: its signs read one by one, a declared sign of several letters whole. A
 * range's own meanings come before the common ones, and a range that declares any has no others.
 */
export function toneWords(signs: string, declared: ReadonlyMap<string, string>): string[] {
  const meanings = declared.size > 0 ? declared : new Map<string, string>(Object.entries(DEFAULT_TONE_DIGITS));
  const longest = Math.max(...[...meanings.keys()].map(({ length }) => length));
  const words: string[] = [];
  for (let from = 0; from < signs.length; ) {
    let length = longest;
    while (length > 1 && !meanings.has(signs.slice(from, from + length))) length--;
    const word = meanings.get(signs.slice(from, from + length));
    if (word !== undefined) words.push(word);
    from += length;
  }
  return words;
}
