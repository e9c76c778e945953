import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { randomFrom } from '../../.scripts/bench/random.ts';
import { tryHands } from '../../.scripts/hands/many-hands.ts';
import { run } from '../../src/cli/program.ts';
import { inTurn } from '../../src/cli/write/queue.ts';
import { JOURNAL, useProgram } from '../journeys/program.ts';
import { watchDisk } from './preload/disk.mjs';

const program = await useProgram();

test('thirty runs at once are all written, each once, in the order of the times they stamp', async () => {
  const folder = program.folder({ ...JOURNAL, 'today.bowl': 'visit 2026-11-25 0:00 wren-abbott by io\n  on 0:01 A\n' });
  const words = ['now', 'check A gold', folder, '--on', '2026-11-25', '--client', 'wren-abbott'];
  const codes = await Promise.all(
    Array.from({ length: 30 }, () => {
      const child = spawn(process.execPath, [program.entry(), ...words], { stdio: 'ignore' });
      return new Promise((done) => child.on('close', done));
    }),
  );
  expect(codes).toEqual(codes.map(() => 0));
  const times = [...readFileSync(join(folder, 'today.bowl'), 'utf8').matchAll(/^ {2}check (\d+:\d+) A gold$/gm)].map(
    ([, time = '']) => time.padStart(5, '0'),
  );
  expect(times).toHaveLength(30);
  // A day that turned meanwhile begins anew.
  if ((times[0] ?? '') <= (times.at(-1) ?? '')) expect(times).toEqual([...times].sort());
  expect(readdirSync(folder).filter((name) => name.endsWith('.new'))).toEqual([]);
});

test.each([
  { writers: 4, kill: true },
  { writers: 3, kill: true, editor: true },
  { writers: 2, full: true },
])('no line that was said to be written is missing, none stands twice: %o', async (way) => {
  const outcome = await tryHands({ ...way, entry: program.entry(), seconds: 3, chance: randomFrom(7) });
  if (outcome === undefined) return;
  const { said, killed, refused, missing, twice, strange } = outcome;
  expect(said + killed + refused).toBeGreaterThan(1);
  expect({ missing, twice, strange }).toEqual({ missing: [], twice: [], strange: [] });
});

test('what killed runs left in the queue holds up nobody, and a living run is waited for', () => {
  const folder = realpathSync(program.folder({ 'a.bowl': '' }));
  const target = join(folder, 'a.bowl');
  const order: string[] = [];
  inTurn(target, target, () => {
    const [own = ''] = readdirSync(folder).filter((name) => name.includes('.turn-'));
    expect(own).toMatch(/^\.a\.bowl\.turn-1-/);
    // A run of a process that is no more, before this one in the queue and after it.
    for (const number of [0, 7]) {
      const dead = own.replace(/turn-\d+/, `turn-${number}`).replace(/-\d+\.new$/, '-999999999.new');
      writeFileSync(join(folder, dead), '');
    }
  });
  inTurn(target, target, ({ isHeld }) => order.push(`${isHeld()}`));
  expect([order, readdirSync(folder)]).toEqual([['true'], ['a.bowl']]);
});

test('an editor that puts its version over the new one at once is noticed, and the command fails', async () => {
  const OPEN = 'visit 2026-11-25 14:00 wren-abbott by io\n  bowl A 40 clay + 20vol 1:2\n';
  const folder = realpathSync(program.folder({ ...JOURNAL, 'today.bowl': OPEN }));
  const path = join(folder, 'today.bowl');
  const restore = watchDisk(folder, ({ name, path: at }) => {
    // The folder is seen to the disk right after the rename.
    if (name === 'fsyncSync' && at === folder) writeFileSync(path, `${OPEN}# theirs\n`);
    return undefined;
  });
  const running = run(['now', 'note ours', folder, '--on', '2026-11-25', '--at', '14:40']).finally(restore);
  await expect(running).rejects.toThrow('was saved by another program in the moment it was written');
  expect(readFileSync(path, 'utf8')).toBe(`${OPEN}# theirs\n`);
});
