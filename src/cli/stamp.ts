import { readLine } from '../notation/read-line.ts';
import { timeText } from './today.ts';

/** Words whose line begins with a time. */
const CLOCK_WORDS: ReadonlySet<string> = new Set([
  'on',
  'check',
  'off',
  'heat',
  'wash',
  'rinse',
  'dry',
  'cut',
  'reaction',
  'stopped',
]);

/** The line with the time put in after its first word, where the word takes one and none is typed. */
export const stamp = (typed: string, minute: number): string => {
  const line = typed.trim();
  const { word, wordRun, tree } = readLine(line);
  if (!CLOCK_WORDS.has(word) || tree.groups[0]?.[0]?.kind === 'clock') return line;
  return `${line.slice(0, wordRun.to)} ${timeText(minute)}${line.slice(wordRun.to)}`;
};
