/**
 * Text of the notes made into Markdown that shows exactly that text. Whatever a note holds, it opens no heading, list,
 * table, link, emphasis or HTML on a page.
 */

/** Controls that a page cannot show, and marks that turn the direction of all the text after them. */
const UNSHOWN = /(?!\t)\p{Cc}|(?![\u061c\u200e\u200f])\p{Bidi_Control}/gu;
const INSTEAD = '\ufffd';

/** Plain words with single spaces between them, as nearly all texts are: nothing is to be done to them. */
const PLAIN = /^(?:[!-~]+ )*[!-~]+$/;

/** The text as a page shows it: one line, single spaces, U+FFFD for what cannot be shown. */
export const shownText = (text: string): string =>
  PLAIN.test(text)
    ? text
    : text
        .replace(/[\s\u0085]+/g, ' ')
        .replace(UNSHOWN, INSTEAD)
        .trim();

/** What a piece of Markdown could be made of. */
const MARKS = /[\\`*_[\]<|~&#]/;

/** Markdown for a piece of text that never stands first in its paragraph, heading, list item or table cell. */
export const escapeInside = (text: string): string => {
  const shown = shownText(text);
  if (!MARKS.test(shown)) return shown;
  return shown
    .replace(/[\\`*_[\]<|~]/g, '\\$&')
    .replace(/&(?=#|\p{L})/gu, '\\&')
    .replace(/(^| )#/g, '$1\\#');
};

/** Markdown for a piece of text wherever it stands in a paragraph, a heading, a list item or a table cell. */
export const escapeText = (text: string): string =>
  escapeInside(text)
    .replace(/^[-+=>]/, '\\$&')
    .replace(/^(\d+)([.)])/, '$1\\$2');

/** Markdown for text kept as typed: a code span, its spaces as they are. Not for table cells. */
export const codeSpan = (text: string): string => {
  const plain = text.replace(/[\r\n\u0085\u2028\u2029]/g, ' ').replace(UNSHOWN, INSTEAD);
  const longest = Math.max(0, ...[...plain.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  const padded = /^`|`$|^ .*[^ ].* $/.test(plain) || plain === '' ? ` ${plain} ` : plain;
  return `${fence}${padded}${fence}`;
};

/** Markdown for a finding's wording: what it holds between backquotes becomes code, all else is text. */
export const escapeSaid = (message: string): string =>
  message
    .split(/(`[^`]+`)/)
    .filter((part) => part !== '')
    .map((part) => {
      if (part.length > 2 && part.startsWith('`') && part.endsWith('`')) return codeSpan(part.slice(1, -1));
      // The spaces beside a code span are the sentence's own.
      const [before, after] = [/^\s/.test(part) ? ' ' : '', /\s$/.test(part) && part.trim() !== '' ? ' ' : ''];
      return `${before}${escapeText(part)}${after}`;
    })
    .join('');
