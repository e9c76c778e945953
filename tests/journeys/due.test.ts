import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { DEMO, JOURNAL, read, useProgram } from './program.ts';

const program = await useProgram();
const ON = ['--on', '2026-11-25'];

describe('due', () => {
  test('says who is overdue by her `next`', () => {
    const { code, out, err } = program.run(['due', ...ON], { cwd: program.folder(JOURNAL) });
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('| Wren Abbott | 2026-10-30 | 3 weeks and 5 days | `next` | 2026-09-04 | roots, A -20%');
  });

  test('--weeks says how far ahead', () => {
    const rows = (weeks: string): number => program.run(['due', DEMO, '--weeks', weeks, ...ON]).out.split('\n').length;
    expect(rows('12')).toBeGreaterThan(rows('1'));
    const { code, err } = program.run(['due', '--weeks', 'four']);
    expect([code, err]).toEqual([
      2,
      '`--weeks four` is no number of weeks from 1 to 104.\nWrite it as in `--weeks 6`.\n',
    ]);
  });

  test('--ics is a calendar that a parser reads, the same bytes each time', () => {
    const cwd = program.folder();
    const { out, code } = program.run(['due', DEMO, '--ics', '-o', 'due.ics', ...ON], { cwd });
    expect([code, out]).toEqual([0, '']);
    const written = read(cwd, 'due.ics');
    const events = new ICAL.Component(ICAL.parse(written)).getAllSubcomponents('vevent');
    expect(events.length).toBeGreaterThan(20);
    expect(written.split('\r\n').every((line) => !line.includes('\n'))).toBe(true);
    expect(program.run(['due', DEMO, '--ics', ...ON]).out).toBe(written);
  });

  test('--html is a page, --json plain data, --csv a table; two forms at once are refused', () => {
    expect(program.run(['due', DEMO, '--html', ...ON]).out).toMatch(/^<!doctype html>/i);
    const { due, on, until } = JSON.parse(program.run(['due', DEMO, '--json', ...ON]).out);
    expect([on, until]).toEqual(['2026-11-25', '2026-12-23']);
    expect(due.find(({ client }: { client: string }) => client === 'tamsin-orme')).toMatchObject({
      by: 'booked',
      first: '2026-12-19',
      time: '14:00',
      noted: ['foils'],
    });
    expect(program.run(['due', DEMO, '--csv', ...ON]).out).toContain('tamsin-orme,Tamsin Orme,due,booked');
    expect(program.run(['due', DEMO, '--ics', '--json']).code).toBe(2);
  });
});

describe('hindsight mix', () => {
  test('sets the forecast beside the same as last time, and claims no more than the figures bear', () => {
    const { code, out, err } = program.run(['hindsight', 'mix', DEMO]);
    expect([code, err]).toEqual([0, '']);
    for (const way of ['forecast', 'same as last time'])
      expect(out).toMatch(new RegExp(`^  ${way} +\\d+ g +\\d+\\.\\d g +\\d+\\.\\d\\d GBP +\\d+ +\\d+ g$`, 'm'));
    expect(out).toMatch(
      /^Left over: [^\n]+ chance explains\.\nRan short: [^\n]+ chance explains; \d+ of \d+ bowls by the forecast, \d+ by the same as last time\.\n\n/,
    );
    expect(out).toMatch(/bowls left out that have no `left` line/);
  });

  test('gives every bowl as JSON, and goes by all other visits with --others', () => {
    const { basis, cases } = JSON.parse(program.run(['hindsight', 'mix', DEMO, '--others', '--json']).out);
    expect(basis).toBe('others');
    expect(cases.length).toBeGreaterThan(100);
    expect(Object.keys(cases[0]).sort()).toEqual(
      ['client', 'date', 'bowl', 'product', 'needed', 'forecast', 'lastTime', 'currency', 'minorUnitsAGram'].sort(),
    );
  });

  test('says so where the notes hold nothing to go by', () => {
    const { code, out } = program.run(['hindsight', 'mix'], { cwd: program.folder(JOURNAL) });
    expect(code).toBe(0);
    expect(out).toContain('0 bowls left out that have no `left` line; 1 with no bowl like it before.');
    expect(out).not.toContain('NaN');
  });
});
