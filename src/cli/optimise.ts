import { setFlagsFromString } from 'node:v8';

/**
 * When the engine turns code that it has run often into faster code. A year's notes are checked mostly by code that runs
 * for the first time, and what the engine optimises meanwhile is hardly used before the command ends. Large journals and
 * watching want it as the engine has it.
 *
 * Flags belong to a version of the engine, and one that it does not know is told of on standard error: so they are set in
 * the versions that they were measured in, and in no other.
 */
type Flags = { readonly later: readonly string[]; readonly soon: readonly string[] };

/** With a compiler between the first and the last, which pays off sooner. */
const WITH_MIDDLE: Flags = {
  later: ['--invocation-count-for-maglev=4000', '--invocation-count-for-turbofan=130000'],
  soon: ['--invocation-count-for-maglev=400', '--invocation-count-for-turbofan=3000'],
};

/** By the engine's version; processor time of a check of one chair's year, of what it was. */
export const FLAGS: ReadonlyMap<string, Flags> = new Map([
  // Node 20: 0.63.
  ['11.3', { later: ['--interrupt-budget=3000000'], soon: ['--interrupt-budget=67584'] }],
  // Node 22: 0.71.
  ['12.4', { later: ['--invocation-count-for-turbofan=130000'], soon: ['--invocation-count-for-turbofan=3000'] }],
  // Node 24: 0.82.
  ['13.6', WITH_MIDDLE],
]);

const set = (when: keyof Flags): void => {
  const [version] = /^\d+\.\d+/.exec(process.versions.v8) ?? [''];
  for (const flag of FLAGS.get(version)?.[when] ?? []) setFlagsFromString(flag);
};

/** For a command that ends soon, before it runs. */
export const optimiseLater = (): void => set('later');

/** For what runs long: as the engine has it when nobody asks. */
export const optimiseSoon = (): void => set('soon');

/** Bytes of notes from which on a journal is large: some eight thousand visits, with which it makes no difference. */
export const LARGE = 4_000_000;
