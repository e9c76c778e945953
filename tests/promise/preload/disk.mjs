import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

/**
 * What a test does at a step of writing: nothing, an error in the system's manner, or whatever else it likes. `half`
 * does half of it, which only a write has.
 * @typedef {{ readonly name: string, readonly path: string, readonly half: () => void }} Step
 * @typedef {(step: Step) => NodeJS.ErrnoException | undefined} AtStep
 */

/** An error as the system gives it.
 * @param {string} code @param {string} name @param {string} path @returns {NodeJS.ErrnoException} */
export const systemError = (code, name, path) =>
  Object.assign(new Error(`${code}: as the test wants it, ${name} '${path}'`), { code, syscall: name, path });

/** Steps that change a disk. A closed file can no more be told from another, so closing is not among them. */
const STEPS = [
  'openSync',
  'writeFileSync',
  'fchmodSync',
  'fsyncSync',
  'renameSync',
  'mkdirSync',
  'rmSync',
  'rmdirSync',
];

/**
 * Lets `at` see every step of writing below a folder before it is done; one that it gives an error for fails with that,
 * a write after half its bytes. Gives what puts everything back.
 * @param {string} root @param {AtStep} at @returns {() => void}
 */
export const watchDisk = (root, at) => {
  const disk = /** @type {Record<string, (...given: unknown[]) => unknown>} */ (/** @type {unknown} */ (fs));
  const real = Object.fromEntries(STEPS.map((name) => [name, disk[name]]));
  /** @type {Map<unknown, string>} */
  const opened = new Map();
  for (const name of STEPS) {
    disk[name] = (...given) => {
      const path = String(opened.get(given[0]) ?? given[0]);
      const does = () => real[name]?.(...given);
      if (!path.startsWith(root) || (name === 'openSync' && given[1] === 'r')) {
        const result = does();
        // A folder is opened to see to the disk that it has a file's new name; numbers of files are given out again.
        if (name === 'openSync') opened.set(result, path);
        return result;
      }
      const half = () => {
        const bytes = name === 'writeFileSync' ? Buffer.from(/** @type {Uint8Array} */ (given[1])) : undefined;
        if (bytes !== undefined) real.writeFileSync?.(given[0], bytes.subarray(0, bytes.length >> 1));
      };
      const error = at({ name, path, half });
      if (error !== undefined) {
        half();
        throw error;
      }
      const result = does();
      if (name === 'openSync') opened.set(result, path);
      return result;
    };
  }
  syncBuiltinESMExports();
  return () => {
    Object.assign(disk, real);
    syncBuiltinESMExports();
  };
};
