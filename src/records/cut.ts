/** The cutting of a file into entries is the notation's; the later stages know it by this name. */
export type { Cut } from '../notation/cut.ts';
export { cutEntries, isConflictEnd, isConflictStart } from '../notation/cut.ts';
export { isBlank } from '../notation/read-line.ts';
