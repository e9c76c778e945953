/** Any dash a phone may put in, taken as the plain one. */
const DASHES = /[\u2010-\u2015\u2212]/g;
const APOSTROPHES = /[\u2018\u2019\u02bc]/g;

/** Small letters a to z, digits, dots and plain dashes: what most words are made of. */
const isPlain = (text: string): boolean => {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if ((code < 97 || code > 122) && (code < 48 || code > 57) && code !== 45 && code !== 46) return false;
  }
  return true;
};

/** The form in which words and names are compared: NFC, lower case, plain dashes and apostrophes. */
export const fold = (text: string): string => {
  if (isPlain(text)) return text;
  return text.normalize('NFC').replace(DASHES, '-').replace(APOSTROPHES, "'").toLowerCase();
};

/** With a capital first letter, as a sentence begins. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The order of texts by their characters, the same everywhere. */
export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
