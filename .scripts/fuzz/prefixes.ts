import { tryCase } from './cases.ts';

/** Tries every beginning of every file, byte by byte, as a file of its own; every 64th as a journal. Gives how many. */
export const tryPrefixes = (files: readonly string[], told: (progress: string) => void): number => {
  let count = 0;
  for (const [index, text] of files.entries()) {
    const bytes = Buffer.from(text);
    for (let end = 0; end <= bytes.length; end++) {
      const begun = [bytes.subarray(0, end)];
      tryCase({ kind: 'file', files: begun });
      if (end % 64 === 0) tryCase({ kind: 'journal', files: begun }, false);
      count++;
    }
    told(`${index + 1} of ${files.length} files, ${count} beginnings`);
  }
  return count;
};
