import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DEMO, JOURNAL, read, useProgram } from './program.ts';

const program = useProgram();
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
    expect(err).toBe('`no/such/otto.md` cannot be written: it is not there.\n');
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

describe('new', () => {
  test('makes a journal that checks clean, and says what comes next', () => {
    const cwd = program.folder();
    const { code, out } = program.run(['new', 'journal', ...ON], { cwd });
    expect(code).toBe(0);
    expect(out).toContain('bowlbook check journal');
    expect(program.run(['check', 'journal'], { cwd })).toEqual({
      code: 0,
      out: 'No findings in 1 visit of 1 client.\n',
      err: '',
    });
    expect(program.run(['tidy', '--check', 'journal'], { cwd }).code).toBe(0);
    expect(program.run(['card', 'juno', 'journal', ...ON], { cwd }).code).toBe(0);
    const stamped = program.run(['now', 'cut', 'journal', '--at', '11:20', ...ON], { cwd });
    expect(stamped.code).toBe(0);
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
