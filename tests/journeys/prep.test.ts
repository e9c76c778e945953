import { describe, expect, test } from 'vitest';
import { DEMO, JOURNAL, read, useProgram } from './program.ts';

const program = await useProgram();

describe('prep', () => {
  test('is one sheet for a client, on the day given', () => {
    const cwd = program.folder(JOURNAL);
    const { code, out } = program.run(['prep', 'wren-abbott', '--on', '2026-10-30'], { cwd });
    expect(code).toBe(0);
    expect(out).toContain('# Wren Abbott\n\nTo prepare for 2026-10-30, Friday');
    expect(out).toContain('- **Bowl A** −20 % asked for, of 120 g = **96 g**; less than the 106 g used last time');
  });

  test('is a sheet a client for a day, and names who is near an empty one', () => {
    const { code, out } = program.run(['prep', '2026-12-12', DEMO]);
    expect(code).toBe(0);
    expect(out.match(/^# .*$/gm)).toEqual(['# Beth Tarn', '# Inês Figueiral']);
    expect(program.run(['prep', '2026-12-13', DEMO])).toMatchObject({
      code: 0,
      out: expect.stringContaining('- 2026-12-12, Saturday, 10:00: Beth Tarn'),
    });
  });

  test('-o writes a page to print', () => {
    const cwd = program.folder(JOURNAL);
    expect(program.run(['prep', '2026-10-30', '-o', 'day.html'], { cwd }).code).toBe(0);
    expect(read(cwd, 'day.html')).toMatch(/^<!doctype html>[\s\S]+<title>Wren Abbott, 2026-10-30<\/title>/);
  });

  test('refuses a day that is none, two days at once, and a client it does not know', () => {
    const cwd = program.folder(JOURNAL);
    const err = (...words: string[]): string => {
      const ran = program.run(['prep', ...words], { cwd });
      expect(ran.code).toBe(2);
      return ran.err;
    };
    expect(err('2026-02-30')).toContain('`2026-02-30` is not a date of the calendar.');
    expect(err('2026-10-30', '--on', '2026-10-31')).toContain('are two days');
    expect(err('wrenn')).toContain('No client goes by `wrenn`');
  });
});
