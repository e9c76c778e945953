import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, readdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CLIENTS, JOURNAL, read, useProgram } from './program.ts';

const program = await useProgram();
const CLUMSY = CLIENTS.replaceAll('\n  ', '\n\t ').replace('bowl A 40', 'bowl  A   40').concat('\n\n\n');

describe('neaten', () => {
  test('--check names what would change and writes nothing: exit 1', () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': CLUMSY });
    expect(program.run(['neaten', '--check'], { cwd })).toEqual({
      code: 1,
      out: 'clients.bowl\n',
      err: '1 of 3 files would change, in white space only.\n',
    });
    expect(read(cwd, 'clients.bowl')).toBe(CLUMSY);
  });

  test('writes, and a second time there is nothing to do', () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': CLUMSY });
    expect(program.run(['neaten'], { cwd })).toMatchObject({ code: 0, out: 'clients.bowl\n' });
    expect(read(cwd, 'clients.bowl')).toBe(CLIENTS);
    expect(program.run(['neaten', '--check', '.'], { cwd })).toMatchObject({ code: 0, out: '' });
  });

  test('keeps CRLF and the byte-order mark', () => {
    const typed = `\ufeff${CLUMSY.replaceAll('\n', '\r\n')}`;
    const cwd = program.folder({ 'clients.bowl': typed });
    program.run(['neaten', 'clients.bowl'], { cwd });
    expect(read(cwd, 'clients.bowl')).toBe(`\ufeff${CLIENTS.replaceAll('\n', '\r\n')}`);
  });

  test('leaves a file that is not UTF-8 as it is, says so and does the rest: exit 2', () => {
    const cwd = program.folder({ 'a.bowl': Buffer.from('note  caf\xe9\n', 'latin1'), 'clients.bowl': CLUMSY });
    const { code, out, err } = program.run(['neaten'], { cwd });
    expect([code, out]).toEqual([2, 'clients.bowl\n']);
    expect(err).toContain('`a.bowl` is not UTF-8');
  });

  test('leaves out what is kept from writing, says so and does the rest: exit 2', () => {
    const cwd = program.folder({ 'a.bowl': CLUMSY, 'b.bowl': CLUMSY, 'c.bowl': CLUMSY, 'sound.bowl': CLIENTS });
    const outside = program.folder({ 'theirs.bowl': CLUMSY });
    for (const name of ['a.bowl', 'sound.bowl']) chmodSync(join(cwd, name), 0o444);
    symlinkSync(join(outside, 'theirs.bowl'), join(cwd, 'linked.bowl'));
    const check = program.run(['neaten', '--check'], { cwd });
    expect([check.code, check.out]).toEqual([2, 'b.bowl\nc.bowl\n']);
    const { code, out, err } = program.run(['neaten'], { cwd });
    expect([code, out]).toEqual([2, 'b.bowl\nc.bowl\n']);
    for (const said of [check.err, err]) {
      expect(said).toContain('`a.bowl` is read-only');
      expect(said).toContain('`linked.bowl` leads through a link');
      expect(said).not.toContain('sound.bowl');
    }
    expect([read(cwd, 'b.bowl'), read(cwd, 'a.bowl'), read(outside, 'theirs.bowl')]).toEqual([CLIENTS, CLUMSY, CLUMSY]);
  });

  test('writes nothing behind a folder that is a link out of the current one', () => {
    const outside = program.folder({ 'theirs.bowl': CLUMSY });
    const cwd = program.folder({ 'a.bowl': CLUMSY });
    for (const name of ['clients', 'today.bowl']) {
      symlinkSync(outside, join(cwd, name));
      const { code, err } = program.run(['neaten', name], { cwd });
      expect([code, read(outside, 'theirs.bowl')]).toEqual([2, CLUMSY]);
      expect(err).toContain('leads through a link');
    }
    // A link that is named from elsewhere is the user's own way to her notes.
    expect(program.run(['neaten', join(cwd, 'clients')], { cwd: program.folder({}) }).code).toBe(0);
    expect(read(outside, 'theirs.bowl')).toBe(CLIENTS);
  });

  test('an interrupt leaves every file old or new, never half, and nothing beside them', async () => {
    const names = Array.from({ length: 400 }, (_, index) => `client-${index}.bowl`);
    const cwd = program.folder(Object.fromEntries(names.map((name) => [name, CLUMSY])));
    const running = spawn(process.execPath, [program.entry(), 'neaten'], { cwd, stdio: ['ignore', 'pipe', 'ignore'] });
    await once(running.stdout, 'data');
    running.kill('SIGINT');
    const [code] = await once(running, 'exit');
    expect(readdirSync(cwd).sort()).toEqual(names.toSorted());
    const kinds = new Set(names.map((name) => [CLUMSY, CLIENTS].indexOf(read(cwd, name))));
    expect(kinds).not.toContain(-1);
    // A machine that delivers the signal late may have let it finish.
    expect(code).toBe(kinds.has(0) ? 130 : 0);
  });
});
