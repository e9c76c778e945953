import { realpathSync, statSync } from 'node:fs';
import { join, normalize, relative } from 'node:path';
import { paintFor } from '../colour.ts';
import { journalOf } from '../find-journal.ts';
import { notesAt } from '../open-journal.ts';
import { optimiseSoon } from '../optimise.ts';
import { print, printLine, printPainted, remark, remarkLines } from '../print.ts';
import { startProgress } from '../progress.ts';
import { refusal } from '../refusal.ts';
import { summaryOf } from '../summary.ts';
import { dayOf, minuteOf, timeText } from '../today.ts';
import { INDEX } from './draw.ts';
import { eventsArrive } from './events-arrive.ts';
import { faultText } from './fault-text.ts';
import { keepCurrent, WITHOUT_EVENTS } from './keep-current.ts';
import { minuteNow } from './live.ts';
import { networkAddresses } from './network.ts';
import { type OpenHere, openHere } from './open-here.ts';
import { openPageFolder } from './page-folder.ts';
import { type ShareHere, shareHere } from './share-here.ts';
import { troublesTo } from './troubles.ts';
import { barText, changeText, guessedText, notedText, openedText, shareText, startText } from './watch-text.ts';

export type WatchOptions = {
  readonly out?: string;
  readonly on?: string;
  readonly events?: boolean;
  readonly open?: boolean;
  readonly share?: boolean;
};

const HOW = {
  events: 'Changes are told by the system, and all files are looked through beside that. Ctrl-C ends it.',
  looks: `The system tells of no changes here, so all files are looked through every ${WITHOUT_EVENTS / 1000} s. Ctrl-C ends it.`,
  asked: `All files are looked through every ${WITHOUT_EVENTS / 1000} s, as asked. Ctrl-C ends it.`,
} as const;

/** Milliseconds in which the last line can still go out. */
const LAST_WORD = 100;

/** Resolves when the process is asked to end: an interrupt, or a terminal that closes. */
const asked = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => resolve());
  });

/** `bowlbook watch`: keeps pages and findings current while the notes change, until it is interrupted. */
export const watchJournal = async (path: string | undefined, options: WatchOptions): Promise<number> => {
  optimiseSoon();
  const named = normalize(path ?? '.');
  dayOf(options.on);
  const journalFolder = journalOf(named);
  if (path !== undefined || journalFolder === undefined) notesAt([named]);
  if (!statSync(named).isDirectory())
    throw refusal(`\`${named}\` is a file, and a folder is watched.`, 'Name the folder that the notes are in.');
  const root = normalize(journalFolder?.folder ?? named);
  if (journalFolder?.isOther) remark(`The journal in \`${root}\` is watched, which \`${named}\` is a part of.`);
  const at = options.share ? networkAddresses() : [];
  const out = options.out ?? join(root, 'pages');
  const folder = openPageFolder(out, realpathSync(root));
  const arrive = options.events !== false && (await eventsArrive(folder.path, root));
  const paint = paintFor('stdout');
  let here: OpenHere | undefined;
  let shared: ShareHere | undefined;
  let progress: ReturnType<typeof startProgress> | undefined = startProgress();
  const kept = await keepCurrent({
    root,
    folder,
    dayOf: () => dayOf(options.on),
    events: arrive,
    told: {
      progress: (done, of) => progress?.say(barText(done, of)),
      trouble: remarkLines,
      changed: (change) => {
        printPainted(changeText(change, { root, at: timeText(minuteOf(undefined)), paint }));
        here?.tell(change.pages);
        shared?.tell(change.pages);
      },
    },
  });
  progress.done();
  progress = undefined;
  const end = asked();
  const { journal, all } = kept.state().settled;
  const { findings, answered } = all();
  print(summaryOf(journal, findings, answered));
  const how = arrive ? HOW.events : options.events === false ? HOW.asked : HOW.looks;
  print(startText(journal, { ...kept.first, root, index: join(out, INDEX), how }));
  const faults = troublesTo(remarkLines);
  const fault = (error: unknown): void => {
    const what = faultText(error, 'a page was asked for');
    faults.are(what, new Map([[what, what]]));
  };
  try {
    if (options.open) {
      here = await openHere(kept, { minute: minuteNow, fault });
      printLine(`Today’s visits and every page, on this machine alone: ${here.address}`);
    }
    if (options.share) {
      shared = await shareHere(kept, {
        at,
        minute: minuteNow,
        fault,
        opened: (from) => printLine(openedText(from, shared?.addresses() ?? [])),
        guessed: (from) => printLine(guessedText(from)),
        noted: ({ line, file, at: row }, from) => printLine(notedText({ line, file: relative(root, file), row, from })),
      });
      print(shareText(shared.addresses()));
    }
    await end;
  } finally {
    await Promise.all([kept.stop(), here?.stop(), shared?.stop()]);
  }
  print('Ended; the pages stand as the notes were last seen.');
  // The file watcher holds timers of up to a second, which nobody waits for.
  setTimeout(() => process.exit(), LAST_WORD).unref();
  return 0;
};
