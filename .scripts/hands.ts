// Lets many runs write one file at once: npm run hands -- [--seconds 60] [--writers 2,10,50] [--seed 1]. Runs are killed at
// random, an editor saves by a rename, the disk is full half of the time. Exit code 1 when a line is lost or stands twice.
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { randomFrom } from './bench/random.ts';
import { tryHands } from './hands/many-hands.ts';

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    writers: { type: 'string', default: '2,10,50' },
    seed: { type: 'string', default: '1' },
    entry: { type: 'string', default: resolve('dist', 'bowlbook.js') },
  },
});

const WAYS = [{}, { kill: true }, { editor: true }, { kill: true, editor: true, full: true }] as const;

let lost = 0;
for (const writers of values.writers.split(',').map(Number))
  for (const way of WAYS) {
    const names = ['plain', ...Object.keys(way)].slice(Object.keys(way).length > 0 ? 1 : 0).join(', ');
    const outcome = await tryHands({
      ...way,
      entry: values.entry,
      writers,
      seconds: Number(values.seconds) / WAYS.length,
      chance: randomFrom(Number(values.seed)),
    });
    if (outcome === undefined) {
      process.stdout.write(`${writers} writers, ${names}: no small disk can be mounted here\n`);
      continue;
    }
    const { said, refused, killed, saved, missing, twice, strange, unsaved, reasons } = outcome;
    lost += missing.length + twice.length + strange.length;
    process.stdout.write(
      `${writers} writers, ${names}: ${said} written, ${refused} refused, ${killed} killed, ${saved} saved by the editor; ` +
        `${missing.length} missing, ${twice.length} twice, ${strange.length} strange, ${unsaved.length} of the editor's gone\n`,
    );
    for (const [why, times] of reasons) process.stdout.write(`    ${times} × ${why}\n`);
  }
process.exitCode = lost > 0 ? 1 : 0;
