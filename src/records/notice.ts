/** What is wrong with the typing of one line; the later stages know it by this name. */
export type { Notice, ReadingRule } from '../notation/reading-rules.ts';
export { READING_RULES } from '../notation/reading-rules.ts';
