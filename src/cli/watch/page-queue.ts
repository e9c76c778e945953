import { performance } from 'node:perf_hooks';
import { reasonOf } from '../open-journal.ts';
import type { PageFolder } from './page-folder.ts';

/** What came of writing pages. */
export type Written = {
  /** The pages that were new, or went. */
  readonly written: readonly string[];
  /** The system's reasons, where it refused. */
  readonly failed: ReadonlySet<string>;
  /** Pages that a fault of ours left undrawn, and the fault; as they stand they stay until they are to be drawn again. */
  readonly undrawn: ReadonlyMap<string, unknown>;
};

/** Pages that are to be drawn and written; one that cannot be written stays until it can. */
export type PageQueue = {
  readonly add: (names: Iterable<string>) => void;
  readonly isEmpty: () => boolean;
  /** Draws and writes what waits. */
  readonly write: () => Promise<Written>;
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

  const write = async (): Promise<Written> => {
    const names = [...waiting].sort((a, b) => Number(isList(a)) - Number(isList(b)));
    const failed = new Set<string>();
    const undrawn = new Map<string, unknown>();
    const written: string[] = [];
    let breath = performance.now();
    for (const [index, name] of names.entries()) {
      if (stopped) break;
      progress(index, names.length);
      let html: string | undefined;
      try {
        html = draw(name);
      } catch (error) {
        undrawn.set(name, error);
        waiting.delete(name);
        continue;
      }
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
    return { written, failed, undrawn };
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
