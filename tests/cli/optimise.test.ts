import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FLAGS, LARGE } from '../../src/cli/optimise.ts';
import { DEMO, useProgram } from '../journeys/program.ts';

const program = await useProgram();

const own = FLAGS.get(/^\d+\.\d+/.exec(process.versions.v8)?.[0] ?? '');

const nameOf = (flag: string): string => flag.slice(0, flag.indexOf('='));

test.skipIf(own === undefined)('this engine knows the flags, and begins with those it is put back to', () => {
  const { stdout } = spawnSync(process.execPath, ['--v8-options'], { encoding: 'utf8' });
  const defaults = stdout.split('\n').flatMap((line) => /default: (--\S+=\S+)$/.exec(line)?.[1] ?? []);
  expect(defaults).toEqual(expect.arrayContaining([...(own?.soon ?? [])]));
});

test('a version has the same flags later and soon', () => {
  expect(FLAGS.size).toBeGreaterThan(0);
  for (const { later, soon } of FLAGS.values()) expect(later.map(nameOf)).toEqual(soon.map(nameOf));
});

/** What the flags are at the end of a run, asked of the engine by what it makes of a script: it holds them as a number. */
const flagsAfter = (...words: string[]): string => {
  const end = `import { Script } from 'node:vm';
    process.on('exit', () => {
      const made = new Script('1').createCachedData();
      process.stderr.write('flags ' + made.subarray(12, 16).toString('hex'));
    });`;
  const { stderr, status } = spawnSync(process.execPath, [program.entry(), ...words], {
    encoding: 'utf8',
    env: { ...process.env, NODE_OPTIONS: `--import "data:text/javascript,${encodeURIComponent(end)}"` },
  });
  expect(status, stderr).toBeLessThan(2);
  return /^flags (\w+)$/m.exec(stderr)?.[1] ?? stderr;
};

test.skipIf(own === undefined)('a small journal is run with the flags set, a large one is not', () => {
  const folder = program.folder({ 'notes.bowl': 'client ivy "Ivy Moor"\n' });
  const small = flagsAfter('check', folder);
  writeFileSync(join(folder, 'notes.bowl'), `client ivy "Ivy Moor"\n${'  # once more\n'.repeat(LARGE / 14)}`);
  const large = flagsAfter('check', folder);
  expect(flagsAfter('check', DEMO)).toBe(small);
  expect(large).not.toBe(small);
});
