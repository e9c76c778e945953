import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { afterAll, expect } from 'vitest';
import { type Change, type KeepOptions, type Kept, keepCurrent } from '../../src/cli/watch/keep-current.ts';
import { openPageFolder, type PageFolder } from '../../src/cli/watch/page-folder.ts';

export const DAY = '2026-11-25';

/** Milliseconds after which something that should come is given up; a busy machine may need a good part of it. */
const LIMIT = 60_000;

export const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Waits until something holds; throws with what was waited for when it never does. */
export const until = async (what: string, holds: () => boolean): Promise<void> => {
  const end = performance.now() + LIMIT;
  while (!holds()) {
    if (performance.now() > end) throw new Error(`it never came: ${what}`);
    await sleep(20);
  }
};

/** A client with one visit, and a mark in it to know its state by. */
export const notesOf = (name: string, mark = 1): string => `client ${name} "${name.toUpperCase()}"
  natural 6
visit 2026-09-04 14:00 ${name}
  bowl A 40 clay + 20vol 1:2
  note mark-${mark}-end
`;

export const SHELF = `product clay "Grey clay" lightener
  mix 1:2
product dev-6 "Cream developer" developer 6%
`;

/** A watched journal: its folder, its pages, what was told. */
export type Watched = {
  readonly root: string;
  readonly out: string;
  readonly kept: Kept;
  readonly changes: readonly Change[];
  readonly troubles: readonly string[];
  readonly write: (path: string, text: string) => void;
  /** A page as it is now; nothing while there is none. */
  readonly page: (name: string) => string;
  /** Waits until a card has a mark. */
  readonly shows: (client: string, mark: number) => Promise<void>;
  readonly stop: () => Promise<void>;
};

const folders: string[] = [];

export const tempFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'bowlbook-watch-'));
  folders.push(folder);
  return folder;
};

/** Every page of a folder with its content. */
export const pagesIn = (out: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(out, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.html'))
      .sort()
      .map((name) => [name, readFileSync(join(out, name), 'utf8')]),
  );

export const writeAt = (path: string, text: string): void => {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};

/** Watches a new folder with these files; everything is ended and taken away after the tests of the file. */
export const watchFolder = async (
  files: Readonly<Record<string, string>>,
  options: Partial<Pick<KeepOptions, 'events' | 'watch' | 'session' | 'dayOf' | 'root'>> & {
    readonly out?: string | undefined;
    readonly wrap?: (folder: PageFolder) => PageFolder;
  } = {},
): Promise<Watched> => {
  const root = options.root ?? join(tempFolder(), 'notes');
  for (const [path, text] of Object.entries(files)) writeAt(join(root, path), text);
  const { out = join(root, 'pages'), wrap = (folder) => folder, ...given } = options;
  const changes: Change[] = [];
  const troubles: string[] = [];
  const kept = await keepCurrent({
    folder: wrap(openPageFolder(out, root)),
    dayOf: () => DAY,
    events: true,
    told: {
      progress: () => undefined,
      changed: (change) => changes.push(change),
      trouble: (what) => troubles.push(what),
    },
    ...given,
    root,
  });
  let stopped = false;
  const stop = async (): Promise<void> => {
    if (!stopped) await kept.stop();
    stopped = true;
  };
  running.push(stop);
  const page = (name: string): string => {
    try {
      return readFileSync(join(out, name), 'utf8');
    } catch {
      return '';
    }
  };
  return {
    root,
    out,
    kept,
    changes,
    troubles,
    write: (path, text) => writeAt(join(root, path), text),
    page,
    shows: (client, mark) =>
      until(`${client} with mark ${mark}`, () => page(`clients/${client}.html`).includes(`mark-${mark}-end`)),
    stop,
  };
};

const running: (() => Promise<void>)[] = [];

afterAll(async () => {
  for (const stop of running) await stop();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** The pages that a watch begun now on the same notes would make. */
export const coldPages = async (root: string): Promise<Record<string, string>> => {
  const cold = await watchFolder({}, { root, out: join(tempFolder(), 'cold'), events: false });
  await cold.stop();
  return pagesIn(cold.out);
};

/** Waits until the pages are those of a cold build of the same notes; lists are written after the cards. */
export const endsCold = async ({ root, out }: Pick<Watched, 'root' | 'out'>): Promise<void> => {
  const cold = await coldPages(root);
  const isCold = (): boolean => {
    try {
      return isDeepStrictEqual(pagesIn(out), cold);
    } catch {
      return false;
    }
  };
  await until('the pages of a cold build', isCold).catch(() => undefined);
  expect(pagesIn(out)).toEqual(cold);
};
