import { readFileSync, statSync } from 'node:fs';
import { neatenText } from '../notation/neaten.ts';
import { decode } from '../text/decode.ts';
import { notesAt, reasonOf } from './open-journal.ts';
import { printLine, remark } from './print.ts';
import { isRefusal, type Refusal, refusal } from './refusal.ts';
import { counted } from './summary.ts';
import { sweepBeside, whyKept, writeNotes } from './write/notes.ts';
import { groundsOf } from './write/place.ts';

export type NeatenOptions = { readonly check?: true };

type Tidied = { readonly path: string; readonly was: Buffer; readonly bytes: Buffer };

/** A file as it is and as it would be. Throws a refusal when neatening would change anything but white space. */
const neatened = (path: string, was: Buffer): Tidied => {
  // Reading keeps the byte-order mark, and valid UTF-8 comes back byte for byte.
  const text = was.toString('utf8');
  try {
    return { path, was, bytes: Buffer.from(neatenText(text), 'utf8') };
  } catch (error) {
    const { message } = error as Error;
    throw refusal(
      `\`${path}\` is not neatened: ${message}.`,
      'This is a fault in the program, and the file stands as it was.',
    );
  }
};

const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() !== false;

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** One refusal of several files, each with its own reason. */
const refusedTogether = (refused: readonly Refusal[]): Refusal => {
  const [first] = refused;
  if (first !== undefined && refused.length === 1) return first;
  return refusal(refused.map(({ message }) => message).join('\n'), 'See to each, then run the command again.');
};

/**
 * `bowlbook neaten`: white space in order and nothing else. With `--check`, names the files and writes none. A file that is
 * known beforehand to be kept from writing is left out and named, and the rest are neatened; a fault of the disk stops it.
 */
export const neaten = async (paths: readonly string[], options: NeatenOptions): Promise<number> => {
  const files = notesAt(paths);
  const grounds = groundsOf(paths);
  const changed: Tidied[] = [];
  const refused: Refusal[] = [];
  let skipped = 0;
  for (const path of files) {
    let was: Buffer;
    const kept = whyKept(path, grounds);
    try {
      if (kept !== undefined && !isFile(path)) throw kept;
      was = readFileSync(path);
    } catch (error) {
      if (isRefusal(error)) refused.push(error);
      else {
        remark(`\`${path}\` cannot be read: ${reasonOf(error)}. It is left out.`);
        skipped++;
      }
      continue;
    }
    if (decode(was).encoding !== 'utf-8') {
      remark(`\`${path}\` is not UTF-8, so it is left as it is; save it as UTF-8 in the editor.`);
      skipped++;
      continue;
    }
    const one = neatened(path, was);
    if (one.bytes.equals(was)) continue;
    if (kept === undefined) changed.push(one);
    else refused.push(kept);
  }
  // All files are neatened before the first is written, so a fault leaves every one as it was.
  for (const { path, was, bytes } of changed) {
    if (!options.check) writeNotes(path, bytes, was, grounds);
    printLine(path);
    await turn();
  }
  if (!options.check) sweepBeside(files, grounds);
  const of = `${changed.length} of ${counted(files.length, 'file')}`;
  remark(options.check ? `${of} would change, in white space only.` : `${of} changed, in white space only.`);
  if (refused.length > 0) throw refusedTogether(refused);
  if (skipped > 0) return 2;
  return options.check && changed.length > 0 ? 1 : 0;
};
