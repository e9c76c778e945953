import { createHash } from 'node:crypto';
import { lstatSync, readdirSync, readFileSync, readlinkSync } from 'node:fs';
import { join } from 'node:path';
import { CLIENTS, JOURNAL } from '../journeys/program.ts';

const OPEN = `visit 2026-11-25 14:00 wren-abbott by io
  bowl A 40 clay + 20vol 1:2
  on 14:20-14:30 A hairline
`;

/** Files that are notes but cannot be read as they are meant, and files that are no notes. */
export const NOT_OURS: Readonly<Record<string, string | Uint8Array>> = {
  'latin.bowl': Buffer.from('visit 2026-09-04 otto-lund\n   note   caf\xe9  \n', 'latin1'),
  'wide.bowl': Buffer.from('\ufeffclient  ada  \n', 'utf16le'),
  'photo.jpg': Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 1, 2]),
  'README.md': '# ours   \n\n\n',
  'old.bowl.bak': 'client   wren-abbott\n',
  '.hidden.bowl': 'client   wren-abbott\n',
  'node_modules/a.bowl': 'client   wren-abbott\n',
  'empty.txt': '',
};

/** A salon's folder as it is met: notes of several endings, damaged ones, and whatever else lies about. */
export const TREE: Readonly<Record<string, string | Uint8Array>> = {
  ...JOURNAL,
  ...NOT_OURS,
  'today.bowl': OPEN,
  'deep/windows.bowl': `\ufeff${CLIENTS.replaceAll('wren', 'bryn').replaceAll('otto', 'odo')}`.replaceAll('\n', '\r\n'),
  'deep/damaged.bowl':
    'clinet x "X"\n  allergy "nickel"\n<<<<<<< mine\nvisit 2026-01-01 a-b\n=======\n>>>>>>> theirs\n\0\n',
  'deep/stock.bowl': 'stock 2026-08-01\n  in clay 2 packs 24.00 lot K2231 use-by 2028-01\n',
};

/** Every path below a folder: kind, mode, owner, size, times of change in nanoseconds, and a hash of the content. */
export const stateOf = (folder: string): Record<string, string> =>
  Object.fromEntries(
    ['.', ...readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()].map((name) => {
      const path = join(folder, name);
      const stat = lstatSync(path, { bigint: true });
      const { mode, uid, gid, ino, size, mtimeNs, ctimeNs } = stat;
      const content = stat.isFile() ? readFileSync(path) : stat.isSymbolicLink() ? readlinkSync(path) : '';
      const hash = createHash('sha256').update(content).digest('hex');
      return [name, [mode.toString(8), uid, gid, ino, size, mtimeNs, ctimeNs, hash].join(' ')];
    }),
  );
