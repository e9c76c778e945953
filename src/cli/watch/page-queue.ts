import { performance } from 'node:perf_hooks';
import { reasonOf } from '../open-journal.ts';
import type { PageFolder } from './page-folder.ts';

/** Pages that are to be drawn and written; one that cannot be written stays until it can. */
export type PageQueue = {
  readonly add: (names: Iterable<string>) => void;
  readonly isEmpty: () => boolean;
  /** Draws and writes what waits, and gives the pages that were new or went. `failed`: the system's reasons, where it refused. */
  readonly write: () => Promise<{ readonly written: readonly string[]; readonly failed: ReadonlySet<string> }>;
  /** Leaves off after the page under way. */
  readonly stop: () => void;
};

export type QueueOptions = {
  readonly folder: PageFolder;
  /** A page's content; undefined for one that is no more. */
  readonly draw: (name: string) => string | undefined;
  /** Whether a page lists others, and so is drawn after them. */
  readonly isList: (name: string) => boolean;
  readonly progress: (done: number, of: number) => void;
};

/** Milliseconds of drawing after which everything else gets a turn. */
const BREATH = 40;

const breathe = (): Promise<void> => new Promise((done) => setImmediate(done));

/** An empty queue of pages for a folder. */
export const pageQueue = ({ folder, draw, isList, progress }: QueueOptions): PageQueue => {
  const waiting = new Set<string>();
  let stopped = false;

  const write: PageQueue['write'] = async () => {
    const names = [...waiting].sort((a, b) => Number(isList(a)) - Number(isList(b)));
    const failed = new Set<string>();
    const written: string[] = [];
    let breath = performance.now();
    for (const [index, name] of names.entries()) {
      if (stopped) break;
      progress(index, names.length);
      const html = draw(name);
      try {
        if (html === undefined) folder.take(name);
        if (html === undefined || folder.put(name, html)) written.push(name);
        waiting.delete(name);
      } catch (error) {
        failed.add(reasonOf(error));
      }
      if (performance.now() - breath > BREATH) {
        await breathe();
        breath = performance.now();
      }
    }
    return { written, failed };
  };

  return {
    add: (names) => {
      for (const name of names) waiting.add(name);
    },
    isEmpty: () => waiting.size === 0,
    write,
    stop: () => {
      stopped = true;
    },
  };
};
