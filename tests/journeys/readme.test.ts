import { spawnSync } from 'node:child_process';
import { appendFileSync, chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { LESSONS } from '../../src/cli/lessons.ts';
import { read, useProgram } from './program.ts';

const program = await useProgram();
const README = readFileSync('README.md', 'utf8');

const between = (from: string, to: string): string => README.slice(README.indexOf(from), README.indexOf(to));

/** The fenced blocks of the tutorial, in order. */
const BLOCKS = [...between('**1. Begin', '## The commands').matchAll(/```(sh)?\n(.*?)```/gs)].map(
  ([, kind, text = '']) => ({ kind: kind ?? 'notes', text }),
);

test('the ten minutes run clean as they are written', () => {
  const root = program.folder();
  writeFileSync(join(root, 'bowlbook'), `#!/bin/sh\nexec "${process.execPath}" "${program.entry()}" "$@"\n`);
  chmodSync(join(root, 'bowlbook'), 0o755);
  const env = { ...process.env, PATH: `${root}${delimiter}${process.env.PATH}` };
  let cwd = root;
  for (const { kind, text } of BLOCKS) {
    if (kind === 'notes' && text.startsWith('product'))
      for (const product of text.trim().split('\n\n')) expect(read(cwd, 'shelf.bowl')).toContain(product);
    else if (kind === 'notes') appendFileSync(join(cwd, 'clients', 'ada.bowl'), `\n${text}`);
    else
      for (const line of text.trim().split('\n')) {
        // The tutorial's day, so that the test runs on any.
        const dated = /^bowlbook (new|check|card)/.test(line) ? `${line} --on 2026-11-25` : line;
        if (line.startsWith('cd ')) cwd = join(cwd, line.slice(3));
        else expect([line, spawnSync(dated, { shell: true, cwd, env }).status]).toEqual([line, 0]);
      }
  }
  expect(program.run(['check', '--on', '2026-11-25'], { cwd }).out).toBe('No findings in 2 visits of 2 clients.\n');
  expect(read(cwd, 'ada.html')).toContain('Ada Quill');
});

test('the table names every command', () => {
  const named = [...between('## The commands', '## The notation').matchAll(/^\| `(\w+)/gm)].map(([, name]) => name);
  expect(named.toSorted()).toEqual(Object.keys(LESSONS).toSorted());
});
