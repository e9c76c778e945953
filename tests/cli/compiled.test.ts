import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import { useProgram } from '../journeys/program.ts';

const program = useProgram();

/** A copy of the built program. */
const copied = (): { readonly entry: string; readonly script: string } => {
  const folder = program.folder();
  cpSync(dirname(inject('entry')), folder, { recursive: true });
  const name = readdirSync(folder).find((file) => /^program-[0-9a-f]+\.js$/.test(file)) ?? '';
  return { entry: join(folder, 'bowlbook.js'), script: join(folder, name) };
};

/** Whether this Node takes compiled code for a script, under the flags that the program sets. */
const isTaken = (script: string): boolean => {
  const asks = `
    require('node:v8').setFlagsFromString('--heap-growing-percent=30');
    const { readFileSync } = require('node:fs');
    const [, script] = process.argv;
    const cachedData = readFileSync(script + '.compiled');
    console.log(!new (require('node:vm').Script)(readFileSync(script, 'latin1'), { cachedData }).cachedDataRejected);`;
  return spawnSync(process.execPath, ['-e', asks, script], { encoding: 'utf8' }).stdout === 'true\n';
};

const mixed = (entry: string): string =>
  spawnSync(process.execPath, [entry, 'mix', '40 clay + 20vol 1:2'], { encoding: 'utf8' }).stdout;

describe('the compiled code beside the program', () => {
  test('is taken by the Node that made it', () => {
    const { script } = copied();
    expect(isTaken(script)).toBe(true);
  });

  test.each<[string, (file: string) => void]>([
    ['gone', (file) => rmSync(file)],
    ['cut short', (file) => truncateSync(file, 5_000)],
    ['empty', (file) => truncateSync(file, 0)],
    ['other bytes', (file) => writeFileSync(file, Buffer.alloc(50_000, 'x'))],
  ])('%s, is not taken, and the program does its work', (_name, spoil) => {
    const { entry, script } = copied();
    const before = mixed(entry);
    spoil(`${script}.compiled`);
    expect(isTaken(script)).toBe(false);
    expect(before).toContain('120 g');
    expect(mixed(entry)).toBe(before);
  });
});
