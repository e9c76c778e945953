import { fold } from './fold.ts';

/** Edits between two words: letters put in, left out, changed, or two neighbours swapped. */
export const editDistance = (a: string, b: string): number => {
  // Three rows of a table of all beginnings of one word by all of the other: the one being filled, and the two before.
  let before: number[] = [];
  let last: number[] = [];
  let now: number[] = [];
  for (let column = 0; column <= b.length; column++) last.push(column);
  for (let row = 1; row <= a.length; row++) {
    now[0] = row;
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min((last[column] ?? 0) + 1, (now[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + same);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) least = Math.min(least, (before[column - 2] ?? 0) + 1);
      now[column] = least;
    }
    [before, last, now] = [last, now, before];
  }
  return last[b.length] ?? 0;
};

/**
 * The names nearest to a mistyped one, nearest first, at most `most`. Near means at most a third of its letters away
 * (one at least), so a far name is never offered.
 */
export const nearNames = (typed: string, names: Iterable<string>, most = 3): string[] => {
  const word = fold(typed);
  const limit = Math.max(1, Math.floor(word.length / 3));
  const found: { name: string; far: number }[] = [];
  for (const name of names) {
    if (Math.abs(name.length - word.length) > limit) continue;
    const far = editDistance(word, fold(name));
    if (far <= limit) found.push({ name, far });
  }
  found.sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1));
  return found.slice(0, most).map(({ name }) => name);
};
