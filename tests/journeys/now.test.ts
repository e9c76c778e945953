import { chmodSync, lstatSync, readdirSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CLIENTS, JOURNAL, read, useProgram } from './program.ts';

const program = await useProgram();

const OPEN = `visit 2026-11-25 14:00 wren-abbott by io
  bowl A 40 clay + 20vol 1:2
  on 14:20-14:30 A hairline
`;
const LATER = `
visit 2026-11-25 16:00 otto-lund by io
  aim shorter
`;
const at = (time: string): string[] => ['--on', '2026-11-25', '--at', time];

describe('now', () => {
  test('stamps the time, adds the line to the open visit and says where', () => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN + LATER });
    const { code, out, err } = program.run(['now', 'check A hairline gold', ...at('14:40')], { cwd });
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe('today.bowl:4  check 14:40 A hairline gold  (Wren Abbott, 14:00, at today.bowl:1:1)\n');
    expect(read(cwd, 'today.bowl')).toBe(`${OPEN}  check 14:40 A hairline gold\n${LATER}`);
  });

  test('leaves a time that is typed, and lines that take none', () => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN });
    program.run(['now', 'check +10 A orange', ...at('14:40')], { cwd });
    program.run(['now', 'off 14.52 A', ...at('14:55')], { cwd });
    program.run(['now', 'left A 12 binned', ...at('15:00')], { cwd });
    expect(read(cwd, 'today.bowl')).toBe(`${OPEN}  check +10 A orange\n  off 14.52 A\n  left A 12 binned\n`);
  });

  test('once all is off it takes what comes after the colour, and nothing of the clock', () => {
    const done = `${OPEN}  off 14:50 A\n`;
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': done + LATER });
    expect(program.run(['now', 'rinse', ...at('15:00')], { cwd }).code).toBe(0);
    expect(read(cwd, 'today.bowl')).toBe(`${done}  rinse 15:00\n${LATER}`);
    const { code, err } = program.run(['now', 'check A gold', ...at('15:00')], { cwd });
    expect(code).toBe(2);
    expect(err).toBe(
      'No visit of 2026-11-25 is under way: Wren Abbott, 14:00, at today.bowl:1:1; Otto Lund, 16:00, at today.bowl:7:1.\n' +
        'Say whose it is: `--client wren-abbott` or `--client otto-lund`.\n',
    );
    expect(program.run(['now', 'start roots 7', ...at('16:10')], { cwd }).out).toContain('(Otto Lund, 16:00');
    expect(program.run(['now', 'cut', ...at('16:10')], { cwd }).err).toContain('2 visits of 2026-11-25 can be meant');
  });

  test.each(['result lengths 9', 'paid 95'])('a visit with `%s` is finished, and only --client adds to it', (last) => {
    const done = `${OPEN}  off 14:50 A\n  ${last}\n`;
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': done });
    const { code, err } = program.run(['now', 'rinse', ...at('15:00')], { cwd });
    expect([code, read(cwd, 'today.bowl')]).toEqual([2, done]);
    expect(err).toContain('No visit of 2026-11-25 is under way: Wren Abbott, 14:00');
    program.run(['now', 'rinse', '--client', 'wren-abbott', ...at('15:00')], { cwd });
    expect(read(cwd, 'today.bowl')).toBe(`${done}  rinse 15:00\n`);
  });

  test('something that goes on after a result is under way again', () => {
    const again = `${OPEN}  off 14:50 A\n  result lengths 9\n  bowl T 30 clay + 20vol 1:2\n  on 15:00 T\n`;
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': again });
    expect(program.run(['now', 'off T', ...at('15:10')], { cwd }).code).toBe(0);
  });

  test('two that have begun with nothing on are never guessed between', () => {
    const two = 'visit 2026-11-25 14:00 wren-abbott\n\nvisit 2026-11-25 14:10 otto-lund\n';
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': two });
    const { code, err } = program.run(['now', 'on A', ...at('14:40')], { cwd });
    expect([code, read(cwd, 'today.bowl')]).toEqual([2, two]);
    expect(err).toContain('2 visits of 2026-11-25 can be meant');
    expect(err).toContain('`--client wren-abbott` or `--client otto-lund`');
  });

  test('what the rules say of the new line is shown, and the line is written', () => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN });
    const { code, err } = program.run(['now', 'left A 900 binned', ...at('14:40')], { cwd });
    expect(code).toBe(0);
    expect(err).toMatch(/^\ntoday\.bowl:4:\d+ stop more-left-than-mixed/);
    expect(read(cwd, 'today.bowl')).toBe(`${OPEN}  left A 900 binned\n`);
  });

  test('two clients with something on are never guessed between', () => {
    const two = `${OPEN}\nvisit 2026-11-25 14:10 otto-lund\n  bowl B 30 clay + 20vol 1:2\n  on 14:25 B\n`;
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': two });
    const { code, err } = program.run(['now', 'check yellow', ...at('14:40')], { cwd });
    expect(code).toBe(2);
    expect(err).toContain('2 visits of 2026-11-25 have something on: Wren Abbott, 14:00, at today.bowl:1:1; Otto Lund');
    expect(err).toContain('`--client wren-abbott` or `--client otto-lund`');
    expect(read(cwd, 'today.bowl')).toBe(two);
    expect(program.run(['now', 'check yellow', '--client', 'otto', ...at('14:40')], { cwd }).code).toBe(0);
    expect(read(cwd, 'today.bowl')).toBe(`${two}  check 14:40 yellow\n`);
  });

  test('a line that does not read cleanly is shown, and nothing is written', () => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN });
    const { code, out, err } = program.run(['now', 'chekc A gold', ...at('14:40')], { cwd });
    expect([code, out]).toEqual([1, '']);
    expect(err).toBe(`1:1 fix unknown-word  \`chekc\` is not a word of the notation.
  Write \`check\`, or \`note\` before the line to keep it as text.
     1  chekc A gold
        ^^^^^ near: check

Nothing is written.
`);
    expect(read(cwd, 'today.bowl')).toBe(OPEN);
  });

  test.each([
    ['visit 2026-11-25 otto-lund', '`visit` opens an entry'],
    ['14:40 gold', 'begins with no word'],
    ['check A\noff A', 'more than one line'],
    ['# gold', 'begins with no word'],
  ])('%j is refused', (line, said) => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN });
    expect(program.run(['now', line, ...at('14:40')], { cwd })).toMatchObject({
      code: 2,
      err: expect.stringContaining(said),
    });
    expect(read(cwd, 'today.bowl')).toBe(OPEN);
  });

  test('a day without a visit says how to open one', () => {
    const { code, err } = program.run(['now', 'check A', '--on', '2026-11-26'], { cwd: program.folder(JOURNAL) });
    expect(code).toBe(2);
    expect(err).toContain('No visit is dated 2026-11-26 in these notes.');
  });

  test('words without quotes are told from paths', () => {
    const { code, err } = program.run(['now', 'check', 'A', 'gold'], { cwd: program.folder(JOURNAL) });
    expect(code).toBe(2);
    expect(err).toContain('Put the whole line in quotes');
  });

  test('keeps the file’s line endings, byte-order mark, indentation, mode and what stands after the visit', () => {
    const typed = `\ufeff${OPEN.replaceAll('\n  ', '\n\t')}\n# next client below\n`.replaceAll('\n', '\r\n');
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': typed });
    chmodSync(join(cwd, 'today.bowl'), 0o640);
    expect(program.run(['now', 'off A', ...at('14:50')], { cwd }).code).toBe(0);
    expect(read(cwd, 'today.bowl')).toBe(typed.replace('hairline\r\n', 'hairline\r\n\toff 14:50 A\r\n'));
    expect(statSync(join(cwd, 'today.bowl')).mode & 0o777).toBe(0o640);
  });

  test('a last line without an ending gets one', () => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN.trimEnd() });
    program.run(['now', 'off A', ...at('14:50')], { cwd });
    expect(read(cwd, 'today.bowl')).toBe(`${OPEN}  off 14:50 A\n`);
  });

  test('writes through a link and leaves nothing beside the file', () => {
    const cwd = program.folder({ ...JOURNAL, 'real/today.txt': OPEN });
    symlinkSync('real/today.txt', join(cwd, 'today.bowl'));
    expect(program.run(['now', 'off A', ...at('14:50')], { cwd }).code).toBe(0);
    expect(lstatSync(join(cwd, 'today.bowl')).isSymbolicLink()).toBe(true);
    expect(read(cwd, 'real', 'today.txt')).toBe(`${OPEN}  off 14:50 A\n`);
    expect(readdirSync(join(cwd, 'real'))).toEqual(['today.txt']);
  });

  test('a file that is not UTF-8 is left alone', () => {
    const bytes = Buffer.concat([Buffer.from(OPEN), Buffer.from('  note caf\xe9\n', 'latin1')]);
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': bytes });
    expect(program.run(['now', 'off A', ...at('14:50')], { cwd })).toMatchObject({
      code: 2,
      err: expect.stringContaining('is not UTF-8'),
    });
  });

  test('notes of other days stand as they were', () => {
    const cwd = program.folder({ ...JOURNAL, 'today.bowl': OPEN });
    program.run(['now', 'off A', ...at('14:50')], { cwd });
    expect(read(cwd, 'clients.bowl')).toBe(CLIENTS);
  });
});
