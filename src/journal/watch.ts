import { type FSWatcher, watch } from 'chokidar';
import { ENDING } from './find.ts';

/**
 * What the system says happened below a folder of notes. Its word is a hint: it can come late, twice or never, so whoever
 * asks looks through the files beside it.
 */
export type Hints = { readonly close: () => Promise<void> };

export type HintsOptions = {
  /** The folder, as an absolute path. */
  readonly root: string;
  /** Whether a path below it is none of the notes: hidden, or where pages are put. */
  readonly isLeftOut: (path: string) => boolean;
  /** A file of notes may have changed, come or gone. */
  readonly onFile: (path: string) => void;
  /** Something else happened, so that any file may have changed. */
  readonly onAnything: () => void;
  /** The system takes no more watching; no further hint comes. */
  readonly onFailure: (error: Error) => void;
  /** For tests: what watches in the place of the file watcher. */
  readonly watch?: typeof watch;
};

/**
 * Milliseconds after a folder went until the watcher is made anew: one that sees a folder go and come back at once may
 * be deaf to it from then on (seen with chokidar 5.0.0 on Linux).
 */
const ANEW = 300;

/** Errors about one path, which looking settles; any other means that the system watches no more. */
const OF_A_PATH: ReadonlySet<string> = new Set(['EACCES', 'EPERM', 'ENOENT', 'ENOTDIR', 'ELOOP', 'EISDIR']);

/** Begins to listen to the system; nothing is told of what stands there already. */
export const startHints = (options: HintsOptions): Hints => {
  const { root, isLeftOut, onFile, onAnything, onFailure } = options;
  let watcher: FSWatcher | undefined;
  let timer: NodeJS.Timeout | undefined;
  let closed = false;

  const close = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    const old = watcher;
    watcher = undefined;
    await old?.close();
  };

  const fail = (error: unknown): void => {
    if (closed) return;
    closed = true;
    void close();
    onFailure(error instanceof Error ? error : new Error(String(error)));
  };

  const begin = (): void => {
    if (closed) return;
    const made = (options.watch ?? watch)(root, {
      ignoreInitial: true,
      // A link may lead back into its own path; what it leads to is looked through.
      followSymlinks: false,
      atomic: false,
      ignorePermissionErrors: true,
      ignored: (path, stats) =>
        path !== root && (isLeftOut(path) || (stats?.isFile() === true && !path.endsWith(ENDING))),
    });
    watcher = made;
    made.on('all', (event, path) => {
      if (made !== watcher || isLeftOut(path)) return;
      if (event === 'unlinkDir') {
        clearTimeout(timer);
        timer = setTimeout(anew, ANEW);
      }
      if (event === 'addDir' || event === 'unlinkDir') onAnything();
      else if (path.endsWith(ENDING)) onFile(path);
    });
    // Whatever happened while nobody listened is found by looking.
    made.on('ready', () => made === watcher && onAnything());
    made.on('error', (error) => {
      if (made !== watcher) return;
      if (OF_A_PATH.has((error as NodeJS.ErrnoException).code ?? '')) onAnything();
      else fail(error);
    });
  };

  const anew = (): void => {
    void close().then(begin, fail);
  };

  try {
    begin();
  } catch (error) {
    queueMicrotask(() => fail(error));
  }
  return {
    close: async () => {
      closed = true;
      await close();
    },
  };
};
