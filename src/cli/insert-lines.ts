const LF = 0x0a;
const CR = 0x0d;

/** One past the line feed of line `index`, counted from 0; the length of the bytes when the line has none. */
const endOfLine = (bytes: Buffer, index: number): number => {
  let end = 0;
  for (let line = 0; line <= index; line++) {
    const feed = bytes.indexOf(LF, end);
    if (feed < 0) return bytes.length;
    end = feed + 1;
  }
  return end;
};

/** The ending of the file's first line, which a new line takes too. */
const endingOf = (bytes: Buffer): string => {
  const feed = bytes.indexOf(LF);
  return feed > 0 && bytes[feed - 1] === CR ? '\r\n' : '\n';
};

/**
 * The bytes of a UTF-8 file with `lines` put in after line `after`, counted from 0 (-1: before the first). Every other
 * byte stays as it is; the new lines end as the file's lines do.
 */
export const insertLines = (bytes: Buffer, after: number, lines: readonly string[]): Buffer => {
  const at = after < 0 ? 0 : endOfLine(bytes, after);
  const ending = endingOf(bytes);
  const open = at > 0 && bytes[at - 1] !== LF ? ending : '';
  const text = open + lines.map((line) => line + ending).join('');
  return Buffer.concat([bytes.subarray(0, at), Buffer.from(text, 'utf8'), bytes.subarray(at)]);
};
