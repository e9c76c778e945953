import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/text/dates.ts';
import { JOURNAL, SALON, SHELF, useProgram } from './program.ts';

const program = await useProgram();

/** Visits of two heads, one quick and one slow, eight weeks apart. */
const VISITS = ['quick', 'slow']
  .flatMap((name, head) =>
    Array.from({ length: 5 }, (_, visit) => {
      const yellow = 34 + 12 * head + (visit % 2);
      return [
        `visit ${addDays('2026-01-06', 56 * visit + head)} 10:00 ${name}-one`,
        '  bowl A 30 clay + 60 dev-6',
        '  on 10:00 A top',
        '  check 10:10 A orange',
        `  check 10:${yellow - 10} A gold`,
        `  check 10:${yellow} A yellow`,
        `  off 10:${yellow} A`,
        '',
      ].join('\n');
    }),
  )
  .join('');

const NOTES = { 'salon.bowl': SALON, 'shelf.bowl': SHELF, 'visits.bowl': VISITS };

describe('hindsight lift', () => {
  test('sets the estimate beside two naive guesses, and claims no more than the figures bear', () => {
    const { code, out, err } = program.run(['hindsight', 'lift'], { cwd: program.folder(NOTES) });
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('each visit left out, and estimated from the visits before it.');
    expect(out).toMatch(/^8 places on 8 visits, where there is a last time:$/m);
    for (const guess of ['estimate', 'same as last time', "middle of the product's time line"])
      expect(out).toMatch(
        new RegExp(`^  ${guess} +\\d+\\.\\d min +(\\d+\\.\\d min (long|short)|neither) +\\d+ %$`, 'm'),
      );
    expect(out).toMatch(/(more|no more) than chance explains/);
    expect(out).toContain(
      '10 places looked at, 0 of them taken off before the stage; 1 with nothing to estimate from; 0 left out',
    );
    expect(out).toContain('Judge by the hair, not the clock.');
  });

  test('estimates from all other visits with --others', () => {
    const { out } = program.run(['hindsight', 'lift', '--others'], { cwd: program.folder(NOTES) });
    expect(out).toContain('estimated from all other visits.');
    expect(out).toContain('0 with nothing to estimate from');
  });

  test('gives every place and guess as JSON', () => {
    const { code, out } = program.run(['hindsight', 'lift', '--json'], { cwd: program.folder(NOTES) });
    expect(code).toBe(0);
    const { basis, untold, cases } = JSON.parse(out);
    expect([basis, untold, cases.length]).toEqual(['before', 0, 10]);
    expect(cases[2]).toMatchObject({
      client: 'quick-one',
      date: '2026-03-03',
      bowl: 'A',
      zone: 'top',
      product: 'clay',
      stage: 'yellow',
      minutes: 35,
      lastTime: 34,
      lineMiddle: 35,
    });
  });

  test('says so where the notes hold nothing to go by', () => {
    const { code, out } = program.run(['hindsight', 'lift'], { cwd: program.folder(JOURNAL) });
    expect(code).toBe(0);
    expect(out).toContain(
      '1 place looked at, 0 of them taken off before the stage; 1 with nothing to estimate from; 0 left out',
    );
    expect(out).not.toContain('NaN');
  });

  test('refuses another subject and a path that is not there', () => {
    const other = program.run(['hindsight', 'lfit']);
    expect([other.code, other.out]).toEqual([2, '']);
    expect(other.err).toBe('`lfit` is nothing that can be tested back.\nWrite `hindsight lift`.\n');
    expect(program.run(['hindsight', 'lift', 'nowhere']).code).toBe(2);
  });
});
