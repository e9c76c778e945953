/** Requests of one device that may wait for their turn. */
const MOST_WAITING = 64;

/** Milliseconds after which work that has not ended, such as a body that is slow to come, holds up the next no more. */
const LONGEST = 1_000;

const breathe = (): Promise<void> => new Promise((done) => setImmediate(done));

/**
 * Does the work of each device one after another, and lets everything else in between: whoever asks a thousand times holds
 * up no other. Gives false, and does nothing, while too much of that device's waits already. What `work` throws is thrown.
 */
export type Turns = (device: string, work: () => Promise<void>) => Promise<boolean>;

/** Turns with nobody waiting. */
export const takeTurns = (): Turns => {
  const lines = new Map<string, { tail: Promise<void>; waiting: number }>();
  return async (device, work) => {
    const line = lines.get(device) ?? { tail: Promise.resolve(), waiting: 0 };
    if (line.waiting >= MOST_WAITING) return false;
    lines.set(device, line);
    line.waiting += 1;
    const done = line.tail.then(work);
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<void>((resolve) => {
      void line.tail.then(() => {
        timer = setTimeout(resolve, LONGEST);
      });
    });
    line.tail = Promise.race([done.catch(() => undefined), late]).then(() => {
      clearTimeout(timer);
      return breathe();
    });
    try {
      await done;
    } finally {
      line.waiting -= 1;
      if (line.waiting === 0) lines.delete(device);
    }
    return true;
  };
};
