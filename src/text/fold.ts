/** Any dash a phone may put in, taken as the plain one. */
const DASHES = /[\u2010-\u2015\u2212]/g;
const APOSTROPHES = /[\u2018\u2019\u02bc]/g;

/** The form in which words and names are compared: NFC, lower case, plain dashes and apostrophes. */
export const fold = (text: string): string => {
  // Most words are plain ASCII in lower case: leave those alone.
  if (/^[a-z0-9.-]*$/.test(text)) return text;
  return text.normalize('NFC').replace(DASHES, '-').replace(APOSTROPHES, "'").toLowerCase();
};
