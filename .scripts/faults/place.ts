import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type Kept, keepCurrent } from '../../src/cli/watch/keep-current.ts';
import { openPageFolder } from '../../src/cli/watch/page-folder.ts';

export const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** A client with one visit, and a mark in it to know its state by. */
export const notesOf = (name: string, mark = 1): string =>
  `client ${name} "${name.toUpperCase()}"
  natural 6
visit 2026-09-04 14:00 ${name}
  bowl A 40 clay + 20vol 1:2
  note mark-${mark}-end
`;

export const SHELF = `product clay "Grey clay" lightener
  mix 1:2
product dev-6 "Cream developer" developer 6%
`;

const FILES = { 'shelf.bowl': SHELF, 'a.bowl': notesOf('wren'), 'more/b.bowl': notesOf('otto') };

/** A folder of notes that is watched, with its pages in it. */
export type Place = {
  readonly root: string;
  /** A path below the folder of the notes, and one below the folder of the pages. */
  readonly at: (path: string) => string;
  readonly page: (name: string) => string;
  /** A path beside the folder of the notes, on the same disk. */
  readonly aside: (path: string) => string;
  readonly write: (path: string, text: string | Uint8Array) => void;
  /** Waits until a card shows a mark. */
  readonly shows: (client: string, mark: number) => Promise<void>;
  readonly turnDay: (day: string) => void;
};

/** What a watcher, or a cold build, came to: every file of the pages with its mode and content, and every finding. */
export type Outcome = { readonly pages: Readonly<Record<string, string>>; readonly findings: string };

/** Milliseconds after which something that should come is given up; a busy machine may need a good part of it. */
const LIMIT = 60_000;

const writeAt = (path: string, text: string | Uint8Array): void => {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};

const pagesIn = (out: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(out, { recursive: true, encoding: 'utf8' })
      .sort()
      .map((name) => {
        const stat = statSync(join(out, name));
        const content = stat.isFile() ? readFileSync(join(out, name), 'utf8') : 'a folder';
        return [name, `${(stat.mode & 0o777).toString(8)} ${content}`];
      }),
  );

const outcomeOf = (kept: Kept, out: string): Outcome => ({
  pages: pagesIn(out),
  findings: JSON.stringify(kept.state().settled.all().findings),
});

const watch = (root: string, out: string, dayOf: () => string, events: boolean): Promise<Kept> =>
  keepCurrent({
    root,
    folder: openPageFolder(out, root),
    dayOf,
    events,
    told: { progress: () => undefined, changed: () => undefined, trouble: () => undefined },
  });

const differenceOf = (now: Outcome, cold: Outcome): string | undefined => {
  const names = [...new Set([...Object.keys(now.pages), ...Object.keys(cold.pages)])];
  const other = names.filter((name) => now.pages[name] !== cold.pages[name]);
  if (other.length > 0) return `other than a cold build's: ${other.join(', ')}`;
  return now.findings === cold.findings ? undefined : 'other findings than a cold build has';
};

const marksIn = (outcome: Outcome, clients: readonly string[]): string =>
  clients
    .map((client) => `${client} ${/mark-(\d+)-end/.exec(outcome.pages[`clients/${client}.html`] ?? '')?.[1] ?? 'none'}`)
    .join(', ');

/** A state to bring about, and the marks that the cards show in the end; `undefined` for a client who has none. */
export type State = {
  readonly name: string;
  readonly act: (place: Place) => void | Promise<void>;
  readonly shows: Readonly<Record<string, number | undefined>>;
};

/**
 * Brings a state about under the watcher, and gives what differs from a cold build of the same notes when it has had time;
 * undefined when nothing does. `isWatched`: false leaves the watcher out, to show that a difference is found.
 */
export const tryState = async (
  { act, shows }: State,
  events: boolean,
  isWatched = true,
): Promise<string | undefined> => {
  const top = realpathSync(mkdtempSync(join(tmpdir(), 'bowlbook-faults-')));
  const [root, out] = [join(top, 'notes'), join(top, 'notes', 'pages')];
  let day = '2026-11-25';
  for (const [path, text] of Object.entries(FILES)) writeAt(join(root, path), text);
  const kept = await watch(root, out, () => day, events);
  if (!isWatched) await kept.stop();
  const until = async (holds: () => boolean): Promise<boolean> => {
    const end = performance.now() + (isWatched ? LIMIT : 0);
    for (;;) {
      try {
        if (holds()) return true;
      } catch {
        // Something is on its way from one place to another.
      }
      if (performance.now() > end) return false;
      await sleep(30);
    }
  };
  const place: Place = {
    root,
    at: (path) => join(root, path),
    page: (name) => join(out, name),
    aside: (path) => join(top, path),
    write: (path, text) => writeAt(join(root, path), text),
    shows: async (client, mark) => {
      const card = join(out, 'clients', `${client}.html`);
      if (isWatched && !(await until(() => readFileSync(card, 'utf8').includes(`mark-${mark}-end`))))
        throw new Error(`the card of ${client} never showed mark ${mark}`);
    },
    turnDay: (turned) => {
      day = turned;
    },
  };
  try {
    await act(place);
    const coldOut = join(top, 'cold', 'pages');
    const coldKept = await watch(root, coldOut, () => day, false);
    await coldKept.stop();
    const cold = outcomeOf(coldKept, coldOut);
    const wanted = Object.entries(shows)
      .map(([client, mark]) => `${client} ${mark ?? 'none'}`)
      .join(', ');
    const shown = marksIn(cold, Object.keys(shows));
    if (shown !== wanted) return `the state did not come about: a cold build shows ${shown}, not ${wanted}`;
    await until(() => differenceOf(outcomeOf(kept, out), cold) === undefined);
    return differenceOf(outcomeOf(kept, out), cold);
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  } finally {
    await kept.stop();
    rmSync(top, { recursive: true, force: true });
  }
};
