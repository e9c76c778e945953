/** White space as notes hold it: with the byte-order mark and the zero-width space that a paste can bring along. */
const START = /^[\s\u200b\ufeff]+/;
const EVERY = /[\s\u200b\ufeff]+/g;
const ONE = /[\s\u200b\ufeff]/;

/** Where the white space that begins a text from `from` on ends. */
export const spaceEnd = (text: string, from = 0): number => {
  let to = from;
  while (to < text.length && ONE.test(text[to] ?? '')) to++;
  return to;
};

/** Where the white space at the end of a text begins. */
export const textEnd = (text: string): number => {
  let to = text.length;
  while (to > 0 && ONE.test(text[to - 1] ?? '')) to--;
  return to;
};

/** The text without the white space around it. */
export const trimmed = (text: string): string => text.slice(0, textEnd(text)).replace(START, '');

/** The text without any white space. */
export const withoutSpace = (text: string): string => text.replace(EVERY, '');

/** The text with each of its white spaces written as one space, as records hold words that stand apart. */
export const evenlySpaced = (text: string): string => text.replace(EVERY, ' ');
