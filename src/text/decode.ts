import { TextDecoder } from 'node:util';

/** A file as text: how its bytes were read, and the first thing about them that is not as it should be. */
export type Decoded = {
  readonly text: string;
  readonly bom: boolean;
  readonly encoding: 'utf-8' | 'windows-1252' | 'utf-16le' | 'utf-16be';
};

const startsWith = (bytes: Uint8Array, ...head: readonly number[]): boolean =>
  head.every((byte, index) => bytes[index] === byte);

// One decoder a coding: making one costs more than a small file does.
const decoders = new Map<string, TextDecoder>();
const decoder = (encoding: string): TextDecoder => {
  let found = decoders.get(encoding);
  if (found === undefined) {
    found = new TextDecoder(encoding, { fatal: encoding === 'utf-8' });
    decoders.set(encoding, found);
  }
  return found;
};

/**
 * Reads bytes as UTF-8, with or without a byte-order mark. Bytes that are not UTF-8 are read as UTF-16 when they begin
 * with its mark, else as Windows-1252, which has a character for every byte: nothing is lost and the reader can report it.
 */
export const decode = (bytes: Uint8Array): Decoded => {
  if (startsWith(bytes, 0xff, 0xfe))
    return { text: decoder('utf-16le').decode(bytes), bom: true, encoding: 'utf-16le' };
  if (startsWith(bytes, 0xfe, 0xff))
    return { text: decoder('utf-16be').decode(bytes), bom: true, encoding: 'utf-16be' };
  const bom = startsWith(bytes, 0xef, 0xbb, 0xbf);
  try {
    return { text: decoder('utf-8').decode(bytes), bom, encoding: 'utf-8' };
  } catch {
    return { text: decoder('windows-1252').decode(bytes), bom: false, encoding: 'windows-1252' };
  }
};

/** The lines of a text, without their endings; `\r` before a line feed is part of the ending. */
export const linesOf = (text: string): string[] => {
  const lines = text.split('\n');
  if (text.includes('\r')) {
    for (let index = 0; index < lines.length; index++) {
      const line = lines[index] ?? '';
      if (line.endsWith('\r')) lines[index] = line.slice(0, -1);
    }
  }
  // A text that ends with a line feed has no further line after it.
  if (lines.length > 1 && lines.at(-1) === '') lines.pop();
  return lines;
};
