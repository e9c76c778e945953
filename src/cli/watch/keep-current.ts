import { join, relative, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { isHidden } from '../../journal/find.ts';
import { type HintsOptions, startHints } from '../../journal/watch.ts';
import { openSession, type Session, type Settled } from '../../rules/session.ts';
import type { Finding } from '../../text/finding.ts';
import { withoutControls } from '../../text/width.ts';
import { reasonOf } from '../open-journal.ts';
import { type Drawing, FINDINGS, INDEX, startDrawing } from './draw.ts';
import { faultText } from './fault-text.ts';
import { type Difference, gainedAndLost } from './gained-and-lost.ts';
import { type Look, notesOnDisk } from './notes-on-disk.ts';
import type { PageFolder } from './page-folder.ts';
import { pageQueue } from './page-queue.ts';
import { type Job, type Looked, startPulse } from './pulse.ts';
import { troublesTo } from './troubles.ts';

/** The notes as they are known, the day they are reckoned to, and the folder they are in. */
export type State = { readonly settled: Settled; readonly on: string; readonly root: string };

/** A change that was taken in. */
export type Change = State & {
  /** Files that came, changed or went; none where only the day turned. */
  readonly files: readonly string[];
  /** The pages that were written, or went. */
  readonly pages: readonly string[];
  /** From the first sign of the change to the last of its pages, milliseconds. */
  readonly took: number;
  readonly found: Difference;
};

/** What is told while notes are kept current. */
export type Told = {
  readonly progress: (done: number, of: number) => void;
  readonly changed: (change: Change) => void;
  /** Something that does not end the watching: a file that cannot be read, pages that cannot be written. */
  readonly trouble: (what: string) => void;
};

export type KeepOptions = {
  readonly root: string;
  readonly folder: PageFolder;
  /** The day to reckon to, asked at every look. */
  readonly dayOf: () => string;
  readonly told: Told;
  /** False: the system is not asked to tell of changes, and the files are only looked through. */
  readonly events: boolean;
  /** For tests: what watches in the place of the file watcher. */
  readonly watch?: HintsOptions['watch'];
  /** For tests: what works the notes out in the place of the session. */
  readonly session?: () => Session;
};

export type Kept = {
  readonly state: () => State;
  /** A page as it is now, drawn; undefined for a name that is none. */
  readonly page: (name: string) => string | undefined;
  /** How many alerts the card of a client begins with. */
  readonly alerts: (client: string) => number;
  /** Clients at whose notes the program failed. */
  readonly leftOut: Drawing['leftOut'];
  /** Files of notes and pages written in the first build. */
  readonly first: { readonly files: number; readonly pages: number };
  /** Looks through all files at once. */
  readonly look: () => void;
  /** Ends it; a page under way is finished first. */
  readonly stop: () => Promise<void>;
};

/** Milliseconds between two looks through all files: beside the system's events, and without them. */
const BESIDE_EVENTS = 1_500;
export const WITHOUT_EVENTS = 500;

const isList = (name: string): boolean => name === INDEX || name === FINDINGS;

/** Keeps pages current while notes change. Resolves when every page stands as the notes are. */
export const keepCurrent = async (options: KeepOptions): Promise<Kept> => {
  const { root, folder, dayOf, told } = options;
  const top = resolve(root);
  const begin = () => ({
    session: (options.session ?? openSession)(),
    disk: notesOnDisk(root, folder.path),
    drawing: startDrawing(root),
  });
  let { session, disk, drawing } = begin();
  const troubles = troublesTo(told.trouble);
  const queue = pageQueue({ folder, draw: (name) => drawing.page(name), isList, progress: told.progress });
  let every = options.events ? BESIDE_EVENTS : WITHOUT_EVENTS;

  const takeIn = ({ put }: Look, on: string): State => {
    for (const [path, bytes] of put) session.put(path, bytes);
    const settled = session.settle(on);
    const { draw, gone } = drawing.take(settled, on);
    queue.add([...draw, ...gone, INDEX, FINDINGS]);
    return { settled, on, root };
  };

  const sayUnreadable = ({ unreadable, isThere }: Look, stands: string): void => {
    const say = (path: string, why: string): string => withoutControls(`\`${path}\` cannot be read: ${why}. ${stands}`);
    troubles.are('read', new Map([...unreadable].map(([path, why]) => [path, say(path, why)])));
    const away = `\`${withoutControls(root)}\` is not there. The pages stand as they are until it is back.`;
    troubles.are('root', new Map(isThere ? [] : [['', away]]));
  };

  const writePages = async (): Promise<readonly string[]> => {
    const { written, failed, undrawn } = await queue.write();
    const say = (why: string): string =>
      withoutControls(`Pages cannot be written: ${why}. The old ones stand, and it is tried again.`);
    troubles.are('write', new Map([...failed].map((why) => [why, say(why)])));
    const faults = [...undrawn].map(([page, error]) =>
      faultText(error, `\`${page}\` was drawn, which stands as it was`),
    );
    troubles.are('draw', new Map(faults.map((fault) => [fault, fault])));
    return written;
  };

  const seen = disk.look(performance.now());
  sayUnreadable(seen, 'It is left out.');
  let state = takeIn(seen, dayOf());
  let found: readonly Finding[] = state.settled.all().findings;
  folder.asPrivateAs(state.settled.journal.sources.keys());
  const pages = await writePages();
  // After a fault the drawing may be a new one with nothing in it, and the cards stand.
  let cards = drawing.files();
  folder.keepOnly(cards);

  /** After a fault of ours: what it left half done is not trusted, and everything is worked out anew. */
  let isFaulty = false;
  let day = state.on;
  const takeInOrTell = (look: Look, on: string): boolean => {
    let all = look;
    day = on;
    try {
      if (isFaulty) {
        ({ session, disk, drawing } = begin());
        all = disk.look(performance.now());
      }
      state = takeIn(all, on);
      cards = drawing.files();
      isFaulty = false;
    } catch (error) {
      isFaulty = true;
      const fault = faultText(error, 'a change was worked out, and the pages stand as they were until the next');
      troubles.are('work out', new Map([[fault, fault]]));
    }
    if (!isFaulty) troubles.are('work out', new Map());
    return !isFaulty;
  };

  /** Pages that something else changed or took. A folder that cannot be put right is told of, and is looked at again. */
  const lostPages = (): readonly string[] => {
    let why = new Map<string, string>();
    let lost: readonly string[] = [];
    try {
      lost = folder.lost(cards);
    } catch (error) {
      const reason = withoutControls(reasonOf(error));
      why = new Map([[reason, `The folder of the pages cannot be put right: ${reason}. It is tried again.`]]);
    }
    troubles.are('put right', why);
    return lost;
  };

  const work = async ({ files, now, since }: Job): Promise<Looked> => {
    const look = disk.look(now, files);
    const ofAll = files === undefined && look.isThere;
    if (ofAll) folder.asPrivateAs(state.settled.journal.sources.keys());
    const pagesLost = ofAll ? lostPages() : [];
    const looked = { took: performance.now() - now, again: look.again };
    sayUnreadable(look, 'What was read of it last stands.');
    if (!look.isThere) return looked;
    const on = dayOf();
    const isNew = look.put.size > 0 || on !== day;
    if (isNew && !takeInOrTell(look, on)) return looked;
    queue.add(pagesLost);
    if (queue.isEmpty()) return looked;
    const written = await writePages();
    if (isNew) {
      const before = found;
      found = state.settled.all().findings;
      const took = performance.now() - since;
      const difference = gainedAndLost(before, found);
      told.changed({ ...state, files: [...look.put.keys()], pages: written, took, found: difference });
    }
    return looked;
  };

  const pulse = startPulse(work, () => every);
  const hints = options.events
    ? startHints({
        root: top,
        isLeftOut: (path) =>
          path === folder.path ||
          relative(top, path)
            .split(/[\\/]/)
            .some((part) => part !== '..' && isHidden(part)),
        onFile: (path) => pulse.sign(join(root, relative(top, path))),
        onAnything: () => pulse.sign(),
        onFailure: (error) => {
          every = WITHOUT_EVENTS;
          const why = withoutControls((error as NodeJS.ErrnoException).code ?? error.message);
          told.trouble(
            `The system tells of no more changes (${why}). The files are looked through every ${WITHOUT_EVENTS / 1000} s instead.`,
          );
          pulse.now();
        },
        ...(options.watch && { watch: options.watch }),
      })
    : undefined;

  return {
    state: () => state,
    page: (name) => drawing.page(name),
    alerts: (client) => drawing.alerts(client),
    leftOut: () => drawing.leftOut(),
    first: { files: disk.count(), pages: pages.length },
    look: pulse.now,
    stop: async () => {
      queue.stop();
      await Promise.all([pulse.stop(), hints?.close()]);
    },
  };
};
