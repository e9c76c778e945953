import { realpathSync, statSync } from 'node:fs';
import { join, normalize } from 'node:path';
import { paintFor } from '../colour.ts';
import { notesAt } from '../open-journal.ts';
import { print, remark } from '../print.ts';
import { startProgress } from '../progress.ts';
import { refusal } from '../refusal.ts';
import { summaryOf } from '../summary.ts';
import { dayOf, minuteOf, timeText } from '../today.ts';
import { INDEX } from './draw.ts';
import { eventsArrive } from './events-arrive.ts';
import { keepCurrent, WITHOUT_EVENTS } from './keep-current.ts';
import { type OpenHere, openHere } from './open-here.ts';
import { openPageFolder } from './page-folder.ts';
import { barText, changeText, startText } from './watch-text.ts';

export type WatchOptions = {
  readonly out?: string;
  readonly on?: string;
  readonly events?: boolean;
  readonly open?: boolean;
};

const HOW = {
  events: 'Changes are told by the system, and all files are looked through beside that. Ctrl-C ends it.',
  looks: `The system tells of no changes here, so all files are looked through every ${WITHOUT_EVENTS / 1000} s. Ctrl-C ends it.`,
  asked: `All files are looked through every ${WITHOUT_EVENTS / 1000} s, as asked. Ctrl-C ends it.`,
} as const;

/** Resolves when the process is asked to end: an interrupt, or a terminal that closes. */
const asked = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => resolve());
  });

/** `bowlbook watch`: keeps pages and findings current while the notes change, until it is interrupted. */
export const watchJournal = async (path: string | undefined, options: WatchOptions): Promise<number> => {
  const root = normalize(path ?? '.');
  dayOf(options.on);
  notesAt([root]);
  if (!statSync(root).isDirectory())
    throw refusal(`\`${root}\` is a file, and a folder is watched.`, 'Name the folder that the notes are in.');
  const out = options.out ?? join(root, 'pages');
  const folder = openPageFolder(out, realpathSync(root));
  const arrive = options.events !== false && (await eventsArrive(folder.path, root));
  const paint = paintFor(process.stdout);
  let here: OpenHere | undefined;
  let progress: ReturnType<typeof startProgress> | undefined = startProgress();
  const kept = await keepCurrent({
    root,
    folder,
    dayOf: () => dayOf(options.on),
    events: arrive,
    told: {
      progress: (done, of) => progress?.say(barText(done, of)),
      trouble: remark,
      changed: (change) => {
        print(changeText(change, { root, at: timeText(minuteOf(undefined)), paint }));
        here?.tell(change.pages);
      },
    },
  });
  progress.done();
  progress = undefined;
  const end = asked();
  const { journal, all } = kept.state().settled;
  const { findings, allowed } = all();
  print(summaryOf(journal, findings, allowed));
  const how = arrive ? HOW.events : options.events === false ? HOW.asked : HOW.looks;
  print(startText(journal, { ...kept.first, root, index: join(out, INDEX), how }));
  if (options.open) {
    here = await openHere(kept);
    print(`Today’s visits and every page, on this machine alone: ${here.address}`);
  }
  await end;
  await Promise.all([kept.stop(), here?.stop()]);
  print('Ended; the pages stand as the notes were last seen.');
  return 0;
};
