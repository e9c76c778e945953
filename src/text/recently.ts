/**
 * Objects whose answers are kept at once: more than a client has visits, since each rule goes through all of them and
 * would find none kept.
 */
const MOST = 20_000;

let turn = 0;

/**
 * Lets go the answers that `recently` keeps. Whoever works client by client is done with one: kept longer, all that was
 * worked out of her grows old in memory, which cost a large check half its memory and a third of its time.
 */
export const forgetRecent = (): void => {
  turn++;
};

type Answering<K extends object, More extends readonly unknown[], R> = (key: K, ...more: More) => R;

const keeping = <K extends object, More extends readonly unknown[], R>(
  work: Answering<K, More, R>,
  turnNow: () => number,
): Answering<K, More, R> => {
  let known = new Map<K, R>();
  let since = turnNow();
  return (key, ...more) => {
    // A new map each time: what an emptied one that has grown old held stays in memory with it.
    if (since !== turnNow() || known.size > MOST) {
      known = new Map();
      since = turnNow();
    }
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before as R;
    const now = work(key, ...more);
    known.set(key, now);
    return now;
  };
};

/**
 * Keeps what was worked out of the objects asked for lately, since many ask the same of one object in a row. An answer
 * may hang on the object alone; further values, where there are any, must be the same for the same object.
 *
 * A plain map that is thrown away when it is full: a table of weak keys as long as the journal is gone through at every
 * collection of what is no longer needed, which was measured at an eighth of the time of a large check.
 */
export const recently = <K extends object, More extends readonly unknown[], R>(
  work: Answering<K, More, R>,
): Answering<K, More, R> => keeping(work, () => turn);

/** As `recently`, for objects that belong to no client: files, what is on the shelf. They outlast `forgetRecent`. */
export const lasting = <K extends object, More extends readonly unknown[], R>(
  work: Answering<K, More, R>,
): Answering<K, More, R> => keeping(work, () => 0);
