import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DEMO, JOURNAL, read, useProgram } from './program.ts';

const program = await useProgram();
const ON = ['--on', '2026-11-25'];

describe('card', () => {
  test('is Markdown on standard output, the same on every run', () => {
    const first = program.run(['card', 'wren-abbott', DEMO, ...ON]);
    expect([first.code, first.err]).toEqual([0, '']);
    expect(first.out).toMatch(/^# Wren Abbott/);
    expect(program.run(['card', DEMO, ...ON].toSpliced(1, 0, 'Wren Abbott'))).toEqual(first);
  });

  test('--html is a whole page; -o writes it and nothing else', () => {
    const cwd = program.folder(JOURNAL);
    const page = program.run(['card', 'otto', '--html', ...ON], { cwd });
    expect(page.out).toMatch(/^<!doctype html>/i);
    const written = program.run(['card', 'otto', '--html', '-o', 'otto.html', ...ON], { cwd });
    expect(written).toEqual({ code: 0, out: '', err: 'Written to otto.html.\n' });
    expect(read(cwd, 'otto.html')).toBe(page.out);
    expect(readdirSync(cwd).sort()).toEqual(['clients.bowl', 'otto.html', 'salon.bowl', 'shelf.bowl']);
  });

  test('-o with the ending of a page is a page', () => {
    const cwd = program.folder(JOURNAL);
    program.run(['card', 'otto', '-o', 'otto.html', ...ON], { cwd });
    program.run(['card', 'otto', '-o', 'otto.md', ...ON], { cwd });
    expect(read(cwd, 'otto.html')).toMatch(/^<!doctype html>/i);
    expect(read(cwd, 'otto.md')).toMatch(/^# Otto Lund/);
    program.run(['usage', '-o', 'usage.htm', ...ON], { cwd });
    program.run(['shelf', '-o', 'shelf.html', ...ON], { cwd });
    for (const page of ['usage.htm', 'shelf.html']) expect(read(cwd, page)).toMatch(/^<!doctype html>/i);
  });

  test('--summary is the first page, --last the newest visits', () => {
    const summary = program.run(['card', 'wren-abbott', DEMO, '--summary', ...ON]).out;
    expect(summary).toContain('## Last colour');
    expect(summary).not.toContain('## Visits');
    const one = program.run(['card', 'wren-abbott', DEMO, '--last', '1', ...ON]).out;
    expect(one.startsWith(summary)).toBe(true);
    expect(one.match(/^### /gm)).toHaveLength(1);
    expect(one).toMatch(/\n10 earlier visits are left out here\.\n$/);
    expect(program.run(['card', 'wren', DEMO, '--last', 'two'])).toMatchObject({ code: 2 });
  });

  test('the first page has minutes, lift and the grams that `next` asks for', () => {
    const { out } = program.run(['card', 'wren-abbott', DEMO, '--summary', ...ON]);
    expect(out).toContain('- **Went on** A · hairline, 14:35–15:15, 40 min from first on, 20 from all on\n');
    expect(out).toContain('- **Lift** A hairline: orange at 10 min');
    expect(out).toContain('- **Worked out** A at 80 %: 32 g clay + 64 g dev-6 = 96 g\n');
  });

  test('a skin test past its time stands among the alerts', () => {
    const { out } = program.run(['card', 'ines-carvalho', DEMO, '--summary', ...ON]);
    expect(out).toContain('- **Skin test** none holds on 2026-11-25 for cream (past its time since 2026-05-29), gloss');
    expect(out).not.toContain('The notes have no `reaction` line');
  });

  test('--json holds what was worked out, exactly', () => {
    const { code, out } = program.run(['card', 'wren-abbott', '--json'], { cwd: program.folder(JOURNAL) });
    expect(code).toBe(0);
    const { client, visits } = JSON.parse(out);
    expect(client).toBe('wren-abbott');
    expect(visits[0]).toMatchObject({
      path: 'clients.bowl',
      date: '2026-09-04',
      bowls: [{ name: 'A', total: { value: 120, exact: '120' }, ready: { value: 4, exact: '4' } }],
      runs: [{ bowl: 'A', zone: 'hairline', firstOn: '14:20', allOn: '14:28', off: '14:50', minutesFromFirstOn: 30 }],
    });
  });

  test('a file that cannot be written is named, and no half of it is left', () => {
    const cwd = program.folder(JOURNAL);
    const { code, err } = program.run(['card', 'otto', '-o', 'no/such/otto.md'], { cwd });
    expect(code).toBe(2);
    expect(err).toBe(
      '`no/such/otto.md` cannot be written: the folder `no/such` is not there.\nMake the folder first.\n',
    );
    expect(readdirSync(cwd)).not.toContain('no');
  });
});

describe('usage', () => {
  test('reports a period, the year of the day without one', () => {
    const { code, out } = program.run(['usage', DEMO, ...ON]);
    expect(code).toBe(0);
    expect(out).toContain('2026-01-01');
    expect(out).toContain('2026-12-31');
    expect(program.run(['usage', DEMO, '--from', '2026', '--to', '2026-12']).out).toBe(out);
    expect(program.run(['usage', '--from', '2025-03', '--to', '2025-03-31', DEMO]).out).toContain('2025-03-01');
  });

  test('--html is a page, --json the figures', () => {
    const cwd = program.folder(JOURNAL);
    expect(program.run(['usage', '--html', ...ON], { cwd }).out).toMatch(/^<!doctype html>/i);
    const { from, to, usage } = JSON.parse(program.run(['usage', '--json', ...ON], { cwd }).out);
    expect([from, to]).toEqual(['2026-01-01', '2026-12-31']);
    expect(JSON.stringify(usage)).toContain('"exact"');
  });
});

describe('clients', () => {
  test('lists every client with her last visit, what is due, and the alerts of her card', () => {
    const { code, out, err } = program.run(['clients', DEMO, ...ON]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('2026-11-25, Wednesday · 42 clients · Harbour Row');
    expect(out).toContain('| wren-abbott | Wren Abbott | 11 | 2026-09-04 | 2026-10-30 | 1 |\n');
    expect(out).toContain('| ines-carvalho | Inês Carvalho | 5 | 2026-05-29 | 2026-10-29 | 1 |\n');
    // A slip in a visit's header makes a name without an entry.
    expect(out).toMatch(/^\| tamsin-orne \| no `client` entry \|/m);
  });

  test('--json is plain data, -o FILE.html a page', () => {
    const cwd = program.folder(JOURNAL);
    const { clients } = JSON.parse(program.run(['clients', '--json', ...ON], { cwd }).out);
    expect(clients.map(({ name }: { name: string }) => name)).toEqual(['otto-lund', 'wren-abbott', 'wren-tarn']);
    expect(clients[1]).toMatchObject({ last: '2026-09-04', due: { first: '2026-10-30', last: '2026-10-30' } });
    program.run(['clients', '-o', 'clients.html', ...ON], { cwd });
    expect(read(cwd, 'clients.html')).toMatch(/^<!doctype html>/i);
  });
});

describe('new', () => {
  test('makes a journal that checks clean, and says what comes next', () => {
    const cwd = program.folder();
    const { code, out } = program.run(['new', 'journal', ...ON], { cwd });
    expect(code).toBe(0);
    expect(out).toContain('  cd journal\n  bowlbook check\n  bowlbook card juno\n  bowlbook mix "40 cream 6/1 + 6%"\n');
    const inside = { cwd: join(cwd, 'journal') };
    expect(program.run(['mix', '40 cream 6/1 + 6%'], inside)).toMatchObject({ code: 0, err: '' });
    expect(program.run(['check', 'journal'], { cwd })).toEqual({
      code: 0,
      out: 'No findings in 1 visit of 1 client.\n',
      err: '',
    });
    expect(program.run(['neaten', '--check', 'journal'], { cwd }).code).toBe(0);
    expect(program.run(['card', 'juno', 'journal', ...ON], { cwd }).code).toBe(0);
    // The visit it comes with is paid, so nothing is added to it unasked.
    expect(program.run(['now', 'cut', 'journal', '--at', '11:20', ...ON], { cwd }).code).toBe(2);
  });

  test('refuses a folder that holds anything, and a file', () => {
    const cwd = program.folder({ 'full/a.txt': 'kept', 'file.txt': 'kept' });
    expect(program.run(['new', 'full'], { cwd })).toMatchObject({
      code: 2,
      err: expect.stringContaining('it holds `a.txt`'),
    });
    expect(program.run(['new', 'file.txt'], { cwd }).code).toBe(2);
    expect(readdirSync(join(cwd, 'full'))).toEqual(['a.txt']);
    expect(read(cwd, 'file.txt')).toBe('kept');
  });

  test('takes an empty folder', () => {
    const cwd = program.folder();
    expect(program.run(['new', '.', ...ON], { cwd }).code).toBe(0);
    expect(program.run(['check'], { cwd }).code).toBe(0);
  });
});
