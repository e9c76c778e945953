import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CLIENTS, DEMO, JOURNAL, useProgram } from './program.ts';

const program = await useProgram();
const MISTYPED = CLIENTS.replace('40 clay', '40 caly').replace('aim', 'iam');

describe('check', () => {
  test('sound notes: exit 0 and one line', () => {
    const { code, out, err } = program.run(['check'], { cwd: program.folder(JOURNAL) });
    expect(out.split('\n').at(-2)).toBe('No findings in 1 visit of 3 clients.');
    expect([code, err]).toEqual([0, '']);
  });

  test('a finding has its place, severity, rule, message, what to do, and the line with carets', () => {
    const { code, out } = program.run(['check'], { cwd: program.folder({ ...JOURNAL, 'clients.bowl': MISTYPED }) });
    expect(code).toBe(1);
    expect(out).toContain(`clients.bowl:9:3 fix unknown-word  \`iam\` is not a word of the notation.
  Write \`aim\`, or \`note\` before the line to keep it as text.
     9    iam brighter at the front
          ^^^ near: aim
`);
    expect(out).toMatch(/^clients\.bowl:11:13 fix unknown-name {2}/m);
    expect(out).toMatch(/\n\n2 findings: 2 fix in 1 visit of 3 clients\.\n$/);
  });

  test('without a shelf that is said, and no product is called unknown', () => {
    const cwd = program.folder({ 'clients.bowl': `${CLIENTS}  test strand clay 20min yellow\n` });
    expect(program.run(['check'], { cwd })).toEqual({
      code: 0,
      out: 'No salon and no shelf was found with these notes: no policy says how long a test holds, and nothing says which products ask for a test, nor how they are mixed and timed. No test is said to hold here. Add the files of salon and shelf to the paths, or put the notes into one folder.\n\nNo findings in 1 visit of 3 clients.\n',
      err: '',
    });
  });

  test('second places are shown from the current folder', () => {
    const thin = CLIENTS.replace('20vol 1:2', '20vol 1:3');
    const cwd = program.folder({ 'a/clients.bowl': thin, 'a/shelf.bowl': JOURNAL['shelf.bowl'] });
    const { out } = program.run(['check', '--only', 'ratio-off-mix', join(cwd, 'a')], { cwd });
    expect(out).toMatch(/^ +in a\/shelf\.bowl:2:\d+$/m);
  });

  test('options stand before or after the path, and paths may be files or folders', () => {
    const cwd = program.folder({
      'a/clients.bowl': MISTYPED,
      'a/shelf.bowl': JOURNAL['shelf.bowl'],
      'salon.bowl': JOURNAL['salon.bowl'],
    });
    const before = program.run(['check', '--only', 'unknown-word', 'a', 'salon.bowl'], { cwd });
    const after = program.run(['check', './a/', 'salon.bowl', 'a/clients.bowl', '--only=unknown-word'], { cwd });
    expect(before.out).toMatch(/^a\/clients\.bowl:9:3 fix unknown-word/);
    expect(after).toEqual(before);
  });

  test('--only names rules and severities; the exit code goes by them', () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MISTYPED });
    expect(program.run(['check', '--only', 'stop,mind'], { cwd })).toMatchObject({
      code: 0,
      out: 'No findings in 1 visit of 3 clients.\n',
    });
    const two = program.run(['check', '--only', 'unknown-word', '--only', 'unknown-name'], { cwd });
    expect(two.out).toContain('2 findings: 2 fix');
    const wrong = program.run(['check', '--only', 'unknown-nmae'], { cwd });
    expect(wrong).toMatchObject({ code: 2, out: '' });
    expect(wrong.err).toContain('Near names: `unknown-name`');
  });

  test('--json holds every finding as plain data, counted from 1', () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': MISTYPED });
    const { code, out } = program.run(['check', '--json'], { cwd });
    expect(code).toBe(1);
    const findings = JSON.parse(out);
    expect(findings).toHaveLength(2);
    expect(findings[0]).toEqual({
      path: 'clients.bowl',
      line: 9,
      column: 3,
      endColumn: 6,
      severity: 'fix',
      rule: 'unknown-word',
      key: 'unknown-word | visit wren-abbott 2026-09-04 14:00 | unread | iam',
      message: '`iam` is not a word of the notation.',
      todo: 'Write `aim`, or `note` before the line to keep it as text.',
      mend: {
        title: 'write aim',
        sure: 'likely',
        edits: [{ path: 'clients.bowl', line: 9, column: 3, endColumn: 6, put: 'aim' }],
      },
      client: 'wren-abbott',
    });
    expect(JSON.parse(program.run(['check', '--json'], { cwd: program.folder(JOURNAL) }).out)).toEqual([]);
  });

  test('an explained finding no longer counts, and --reasons shows it with the reason', () => {
    const explained = `${CLIENTS.replace('40 clay', '15 clay').replace('1:2\n', '1:3\n')}  because ratio-off-mix "thin, for a slow hand"\n`;
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': explained });
    const { code, out } = program.run(['check'], { cwd });
    expect(code).toBe(0);
    expect(out).toBe('No findings in 1 visit of 3 clients. 1 explained by a `because` line.\n');
    const told = program.run(['check', '--reasons'], { cwd });
    expect(told.code).toBe(0);
    expect(told.out).toContain('fix ratio-off-mix');
    expect(told.out).toContain('  Reason given: thin, for a slow hand\n');
  });

  test('the same rule again and again in one file is counted, unless --all', () => {
    const many = `${CLIENTS}${'  zzqx\n'.repeat(20)}`;
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': many });
    const { out } = program.run(['check'], { cwd });
    expect(out.match(/fix unknown-word/g)).toHaveLength(15);
    expect(out).toContain('clients.bowl  unknown-word, and 5 more like it (--all shows them)');
    expect(out).toContain('20 findings: 20 fix');
    expect(program.run(['check', '--all'], { cwd }).out.match(/fix unknown-word/g)).toHaveLength(20);
  });

  test('a file that cannot be read is named, the rest is checked, exit 2', () => {
    const cwd = program.folder({ ...JOURNAL, 'locked.bowl': 'note x' });
    chmodSync(join(cwd, 'locked.bowl'), 0);
    // The superuser reads everything; a name that leads nowhere is met by anyone.
    const words = process.getuid?.() === 0 ? ['check', 'clients.bowl', 'gone.bowl'] : ['check'];
    expect(program.run(words, { cwd })).toMatchObject({ code: 2, err: expect.stringContaining('cannot be read') });
  });

  test('control characters in the notes never reach the terminal', () => {
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': `${CLIENTS}  \x1b]0;owned\x07zzqx\n` });
    const { out } = program.run(['check'], { cwd });
    expect([...out].filter((letter) => letter < ' ' && letter !== '\n')).toEqual([]);
  });

  test('whoever stops reading is no trouble', () => {
    const { status, stderr } = spawnSync(
      'sh',
      ['-c', `"${process.execPath}" "${program.entry()}" check --json "${DEMO}" | head -c 10`],
      {
        encoding: 'utf8',
      },
    );
    expect([status, stderr]).toEqual([0, '']);
  });
});

describe('colour', () => {
  const run = (words: readonly string[], env: Record<string, string>): string =>
    program.run(['check', ...words], { cwd: program.folder({ ...JOURNAL, 'clients.bowl': MISTYPED }), env }).out;

  test('there is none without a terminal; FORCE_COLOR asks for it; the text is the same', () => {
    const plain = run([], {});
    const painted = run([], { FORCE_COLOR: '1' });
    expect(plain).not.toContain('\x1b');
    expect(painted).toContain('\x1b[33mfix\x1b[39m');
    expect(painted.replaceAll(/\p{Cc}\[\d+m/gu, '')).toBe(plain);
  });

  test('NO_COLOR and --no-colour forbid it', () => {
    expect(run([], { FORCE_COLOR: '1', NO_COLOR: '1' })).not.toContain('\x1b');
    expect(run(['--no-colour'], { FORCE_COLOR: '1' })).not.toContain('\x1b');
    expect(run(['--no-color'], { FORCE_COLOR: '1' })).not.toContain('\x1b');
    expect(run([], { FORCE_COLOR: '0' })).not.toContain('\x1b');
  });
});
