import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { useProgram } from '../journeys/program.ts';

const program = await useProgram();

/** A copy of the built program. */
const copied = (): { readonly entry: string; readonly script: string } => {
  const folder = program.folder();
  cpSync(dirname(program.entry()), folder, { recursive: true });
  const name = readdirSync(folder).find((file) => /^program-[0-9a-f]+\.js$/.test(file)) ?? '';
  return { entry: join(folder, 'bowlbook.js'), script: join(folder, name) };
};

/** Whether this Node takes the compiled code beside a script. */
const isTaken = (script: string): boolean => {
  const asks = `
    const { readFileSync } = require('node:fs');
    const [, script] = process.argv;
    const cachedData = readFileSync(script + '.compiled');
    console.log(!new (require('node:vm').Script)(readFileSync(script, 'utf8'), { cachedData }).cachedDataRejected);`;
  return spawnSync(process.execPath, ['-e', asks, script], { encoding: 'utf8' }).stdout === 'true\n';
};

// What is not plain ASCII is there too: the program is one text, read as what it was written.
const mixed = (entry: string): string =>
  spawnSync(process.execPath, [entry, 'mix', '40 clay + 20vol 1:1½ “soft”'], { encoding: 'utf8' }).stdout;

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
    expect(before).toMatch(/60 g {2}6 % developer.*1:1\.5/su);
    expect(mixed(entry)).toBe(before);
  });
});
