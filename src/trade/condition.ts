import { isDenied, saidUndenied } from './denial.ts';
import { isSaidOfAThing } from './harm/told-harm.ts';

/** The developer, in per cent, from which lightener is called strong on weak hair: common practice, no source. */
export const STRONG_DEVELOPER = 9;

const WEAK =
  /\b(?:gummy|mushy|brittle|(?:snaps|snapping)(?!\s(?:right\s|straight\s)?back\b)|breaks|breaking|breakage|stays? stretched|stretch(?:es)? and stays?)\b/giu;

/** Hair that no longer is so, or is so less, does not speak against going on. */
const NO_LONGER = /\b(?:no longer|less)\s(?:\p{L}+\s)?$/iu;

/** The word in a remark that calls hair weak (`gummy`, `breaks`); undefined without one, and where it is denied. */
export function weakWord(text: string): string | undefined {
  const match = saidUndenied(text, WEAK);
  return match === undefined || NO_LONGER.test(text.slice(0, match.index)) ? undefined : match[0].toLowerCase();
}

/**
 * What a strand, a stretch or the fingers showed when the fibre went: common practice, no source. Hair that snaps back,
 * a base that is broken and roots that are melted are other things.
 */
const FAILED =
  /\b(?:stretch(?:es|ed)?\slike\s(?:chewing\s)?gum|(?<!bubble\s)gum(?:my|med)?|mush(?:y)?|(?:break(?:s|ing|age)?|broken?)(?!\s(?:through|into|(?:the|her|his)\s(?:base|red|orange|gold|warmth|colour|tint)))|snap(?:s|ped|ping)?(?!\s(?:right\s|straight\s)?back)|melt(?:s|ed|ing)(?!\s(?:in|into|the|roots?))|disintegrat(?:es|ed|ing)|dissolv(?:es|ed)|(?:falls|fell|came)\sapart|stay(?:s|ed)?\sstretched|stretch(?:es|ed)?\sand\sstay(?:s|ed)?|(?:stay(?:s|ed)?|came|comes|coming|left|remain(?:s|ed)?)\s(?:(?:away|off|out|behind)\s)?(?:in|between|on|round)\s(?:my|the|her|his)\s(?:fingers?|hands?|comb|brush|towel)|(?:inch(?:es)?|ends?|tips?|strands?|pieces?|cm)\s(?:stay(?:s|ed)?|was\sleft|were\sleft)\sbehind)\b(?!\sfree\b)/giu;

/** Of another day: `broke last time`. */
const EARLIER = /\b(?:last (?:time|visit|year|summer|winter)|used to|previously|(?:years?|months?) ago)\b/iu;

const CLAUSE = /[,;.:!()–—]|\b(?:and|but|then|though|until|till)\b/giu;

const isOfAnotherDay = (before: string, after: string): boolean => {
  const [clause = ''] = before.split(CLAUSE).slice(-1);
  const [rest = ''] = after.split(CLAUSE);
  return NO_LONGER.test(before) || EARLIER.test(clause + rest);
};

/**
 * The word by which a strand, stretch or porosity test says that the fibre went (`gummy`, `broke`, `stayed stretched`);
 * undefined without one, and where it is denied or of another day.
 */
export function failedWord(text: string): string | undefined {
  const plain = text.replace(/(?<=\p{L})-(?=\p{L})/gu, ' ');
  for (const match of plain.matchAll(FAILED)) {
    const to = match.index + match[0].length;
    const isSaid =
      !isDenied(plain, match.index, to) &&
      !isSaidOfAThing(plain, match.index, to) &&
      !isOfAnotherDay(plain.slice(0, match.index), plain.slice(to));
    if (isSaid) return match[0].toLowerCase();
  }
  return undefined;
}

/** Words of a porosity test or line for hair that takes up a lot: terms of a cosmetology course page on hair analysis. */
const POROUS: ReadonlySet<string> = new Set(['high', 'rough', 'extreme', 'grabby']);

/** Whether a word, in small letters, calls hair porous. */
export function isPorous(word: string): boolean {
  return POROUS.has(word);
}
