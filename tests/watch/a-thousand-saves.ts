import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keepCurrent } from '../../src/cli/watch/keep-current.ts';
import { openPageFolder } from '../../src/cli/watch/page-folder.ts';

/**
 * Saves a file of notes a thousand times while it is watched, and prints as JSON what the heap held on the way, in bytes,
 * and how often the notes were taken in. Run with the collector at hand (`node --expose-gc`), so that only what is kept
 * counts.
 */

const SAVES = 1_000;

/** Saves between two looks at the heap. */
const STEP = 200;

/** Milliseconds after which a save that is not taken in is given up. */
const LIMIT = 60_000;

const sleep = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Every save has a finding of its own, so that one is gained and one lost each time. */
const notes = (mark: number): string =>
  `client wren "Wren"\nvisit 2026-09-04 14:00 wren\n  bowl A 40 clay + 20vol 1:2\n  note mark-${mark}-end\n  chekc ${mark}\n`;

const { gc } = globalThis;
if (gc === undefined) throw new Error('it needs --expose-gc');
const top = mkdtempSync(join(tmpdir(), 'bowlbook-saves-'));
const [root, out] = [join(top, 'notes'), join(top, 'out')];
mkdirSync(root);
const file = join(root, 'a.bowl');
const save = (mark: number): void => {
  writeFileSync(`${file}.tmp`, notes(mark));
  renameSync(`${file}.tmp`, file);
};
save(0);
let changes = 0;
const troubles: string[] = [];
const kept = await keepCurrent({
  root,
  folder: openPageFolder(out, root),
  dayOf: () => '2026-11-25',
  events: true,
  told: {
    progress: () => undefined,
    trouble: (what) => troubles.push(what),
    changed: () => {
      changes += 1;
    },
  },
});

const shows = async (mark: number): Promise<void> => {
  const end = performance.now() + LIMIT;
  while (!readFileSync(join(out, 'clients', 'wren.html'), 'utf8').includes(`mark-${mark}-end`)) {
    if (performance.now() > end) throw new Error(`save ${mark} was never taken in`);
    await sleep(5);
  }
};

const heap: number[] = [];
const start = performance.now();
for (let mark = 1; mark <= SAVES; mark += 1) {
  save(mark);
  // Some saves come in bursts, and some alone.
  if (mark % 20 === 0) await shows(mark);
  else if (mark % 3 === 0) await sleep(1);
  if (mark % STEP !== 0) continue;
  gc();
  heap.push(process.memoryUsage().heapUsed);
}
const seconds = (performance.now() - start) / 1000;
await kept.stop();
rmSync(top, { recursive: true });
process.stdout.write(`${JSON.stringify({ heap, changes, troubles, seconds })}\n`);
