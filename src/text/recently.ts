/** Objects whose answers are kept; all that is asked for of one client is asked for together. */
const MOST = 2_000;

/**
 * Keeps what was worked out of the objects asked for lately, since many ask the same of one object in a row. An answer
 * may hang on the object alone; further values, where there are any, must be the same for the same object.
 *
 * A plain map that is emptied when it is full: a table of weak keys as long as the journal is gone through at every
 * collection of what is no longer needed, which was measured at an eighth of the time of a large check.
 */
export const recently = <K extends object, More extends readonly unknown[], R>(
  work: (key: K, ...more: More) => R,
): ((key: K, ...more: More) => R) => {
  const known = new Map<K, R>();
  return (key, ...more) => {
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before as R;
    const now = work(key, ...more);
    if (known.size >= MOST) known.clear();
    known.set(key, now);
    return now;
  };
};
