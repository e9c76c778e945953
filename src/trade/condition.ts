/** The developer, in per cent, from which lightener is called strong on weak hair: common practice, no source. */
export const STRONG_DEVELOPER = 9;

const WEAK =
  /(?<!\b(?:no|not|never|nothing|without|less|isn't)\s(?:\p{L}+\s)?)\b(?:gummy|mushy|brittle|snaps|snapping|breaks|breaking|breakage|stays? stretched|stretch(?:es)? and stays?)\b/iu;

/** The word in a remark that calls hair weak (`gummy`, `breaks`); undefined without one, and where it is denied. */
export function weakWord(text: string): string | undefined {
  return WEAK.exec(text)?.[0].toLowerCase();
}

/** Words of a porosity test or line for hair that takes up a lot: terms of a cosmetology course page on hair analysis. */
const POROUS: ReadonlySet<string> = new Set(['high', 'rough', 'extreme', 'grabby']);

/** Whether a word, in small letters, calls hair porous. */
export function isPorous(word: string): boolean {
  return POROUS.has(word);
}
