import { describe, expect, test } from 'vitest';
import { LESSONS } from '../../src/cli/lessons.ts';
import { useProgram } from './program.ts';

const program = await useProgram();
const COMMANDS = Object.keys(LESSONS);

describe('help', () => {
  test.each([[[]], [['--help']], [['help']]])('%j shows every command and the exit codes', (words) => {
    const { code, out, err } = program.run(words);
    expect([code, err]).toEqual([0, '']);
    for (const command of COMMANDS) expect(out).toMatch(new RegExp(`^ {2}${command}\\b`, 'm'));
    expect(out).toContain('Exit codes');
    expect(out).toContain('licensed practice');
  });

  test.each(COMMANDS)('%s --help teaches with examples and exit codes', (command) => {
    const { code, out, err } = program.run([command, '--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out.match(new RegExp(`^ {2}bowlbook ${command}`, 'gm'))?.length).toBeGreaterThanOrEqual(3);
    expect(out).toContain('Exit codes');
    expect(out.split('\n').every((line) => line.length <= 100)).toBe(true);
    expect(program.run(['help', command]).out).toBe(out);
  });

  test('--version is the version of the package', async () => {
    const { version } = await import('../../package.json');
    expect(program.run(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });
});

describe('a wrong command line is refused with exit code 2 and what to type', () => {
  test.each([
    [['chekc'], '`chekc` is not a command.\nNear: `check`.'],
    [['zzz'], '`zzz` is not a command.\n`bowlbook --help`'],
    [['tidy'], '`tidy` is called `neaten` now.\nType `bowlbook neaten`.'],
    [['help', 'explain'], '`explain` is called `why` now.'],
    [['check', '--allowed'], '`--allowed` is called `--reasons` now.'],
    [['help', 'chekc'], '`chekc` is not a command.\nNear: `check`.'],
    [['check', '--on', 'today'], '`--on today` is not a date of the calendar.'],
    [['check', '--jsno'], '`--jsno` is not an option of `check`.\nNear: `--json`.'],
    [['--zzz'], '`--zzz` is not an option.'],
    [['card'], '`card` needs its CLIENT.'],
    [['usage', '--from'], 'The option `--from <DATE>` of `usage` needs its value.'],
    [['why', 'a', 'b'], 'There is more on the command line than `why` takes.'],
    [['card', 'x', '--json', '--html'], 'do not go together.'],
    [['card', 'x', '--on', '2026-02-30'], '`--on 2026-02-30` is not a date of the calendar.'],
    [['now', 'check A', '--at', '25:00'], '`--at 25:00` is not a time of the day.'],
    [['usage', '--from', 'spring'], '`--from spring` is no day, month or year.'],
    [['usage', '--from', '2026-05', '--to', '2026-04'], 'The period ends on 2026-04-30, before it begins'],
  ])('%j', (words, said) => {
    const { code, out, err } = program.run(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(said);
    expect(err).not.toMatch(/[?]|invalid|error:/i);
  });

  test('a path that is not there is named, with near names of its folder', () => {
    const cwd = program.folder({ 'clients.bowl': '' });
    const { code, err } = program.run(['check', 'client.bowl'], { cwd });
    expect(code).toBe(2);
    expect(err).toBe('`client.bowl` cannot be read: it is not there.\nNear names in that folder: `clients.bowl`.\n');
  });

  test('a folder without notes says how to begin', () => {
    const { code, err } = program.run(['check'], { cwd: program.folder({ 'a.txt': 'x' }) });
    expect(code).toBe(2);
    expect(err).toContain('There are no notes (files ending in `.bowl`) in `.`.');
  });
});

describe('why', () => {
  test('lists every rule by family', () => {
    const { code, out } = program.run(['why']);
    expect(code).toBe(0);
    expect(out).toMatch(/^## reading: /m);
    expect(out).toContain('- `unknown-word` (fix)');
  });

  test('explains one rule, however it is written', () => {
    const { code, out } = program.run(['why', 'Unknown-Word']);
    expect(code).toBe(0);
    expect(out).toMatch(/^# unknown-word\n/);
    expect(out).toContain('Source: ');
  });

  test('says what the rule says of its bad example', () => {
    const { out } = program.run(['why', 'past-time']);
    expect(out).toContain('Bowl A top was on for 58 min from first on, 8 min past its time.');
  });

  test('offers near names, and rules that hold the word', () => {
    const near = program.run(['why', 'unknown-wrod']);
    expect(near.code).toBe(2);
    expect(near.err).toMatch(/^No rule is called `unknown-wrod`\.\nNear names: `unknown-word`/);
    expect(program.run(['why', 'skin']).err).toContain('`skin-test-missing`');
    expect(program.run(['why', 'zzzzz']).err).toContain('`bowlbook why` lists them all.');
  });
});
