import { withoutControls } from '../text/width.ts';
import type { Left } from './write/door.ts';

/** How many files are named. */
const MOST_NAMED = 3;

const named = (paths: readonly string[]): string => {
  const some = paths.slice(-MOST_NAMED).map((path) => `\`${withoutControls(path)}\``);
  return [...some, ...(paths.length > MOST_NAMED ? ['others'] : [])].join(', ');
};

/** What a fault left on the disk: said of what was in truth written or begun, and no more. */
export const leftText = ({ whole, half }: Left): string => {
  const stands = whole.length > 0 ? ` Written before it, and whole: ${named(whole)}.` : '';
  if (half.length > 0) return `This may be half written: ${named(half)}.${stands}`;
  return stands === '' ? 'No file was written.' : `Nothing was left half written.${stands}`;
};
