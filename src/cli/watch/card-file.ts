import { createHash } from 'node:crypto';
import { CARDS } from './page-folder.ts';

/** Bytes that a file's name may have nearly everywhere, less what a temporary name adds. */
const LONGEST = 180;

/** Names that one system keeps for its devices, whatever their ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/**
 * The file of a client's card, from the top of the pages' folder. Letters, digits and hyphens stand as they are, anything
 * else as its code, so that no two clients share a file and none leads out of the folder.
 */
export const cardFile = (client: string): string => {
  const plain = client
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}-]/gu, (mark) => `_${(mark.codePointAt(0) ?? 0).toString(16)}_`);
  const isPlain = Buffer.byteLength(plain) <= LONGEST && !DEVICE.test(plain);
  const name = isPlain ? plain : `_${createHash('sha256').update(client).digest('hex').slice(0, 32)}`;
  return `${CARDS}/${name}.html`;
};

/** The file of a year's earlier visits of a client, beside her card. No card has a full stop in its name. */
export const yearFile = (client: string, year: string): string => cardFile(client).replace(/html$/, `${year}.html`);
