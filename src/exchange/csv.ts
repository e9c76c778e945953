import { stringify } from 'csv-stringify/sync';

/**
 * Comma-separated values as RFC 4180 has them: CRLF at the end of every record, a header, quotes doubled.
 *
 * Reads: figures already rounded, as text. Gives: one file. Runs again: when the figures change.
 */

/** A cell: text of the notes, or a figure as text; undefined is an empty cell. */
export type Cell = string | number | undefined;

/** What a spreadsheet takes for a formula. Source: OWASP, CSV injection; a tab and a line end count too, and blanks before one. */
const FORMULA = /^(?:[\t\r\n]|[\s\u200b\u2060\ufeff]*[=+\-@\uff0b\uff0d\uff1d\uff20])/;
/** A plain figure, which may be negative, stays a figure. */
const FIGURE = /^-?\d+(\.\d+)?$/;

/** Text that no spreadsheet obeys: what would be a formula has an apostrophe before it, as typists write it. */
const inert = (cell: Cell): string => {
  if (cell === undefined) return '';
  const text = String(cell);
  return FORMULA.test(text) && !FIGURE.test(text) ? `'${text}` : text;
};

/** A file of comma-separated values: the header, then a record a row. Source: RFC 4180, section 2. */
export const csvText = (header: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  stringify(
    [header, ...rows].map((row) => row.map(inert)),
    {
      record_delimiter: '\r\n',
      // The library quotes only the record's own line end; a reader may take either half of it for one.
      quoted_match: /[\r\n]/,
    },
  );
