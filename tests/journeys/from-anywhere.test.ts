import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEMO, JOURNAL, useProgram } from './program.ts';

const program = await useProgram();
const on = ['--on', '2026-11-25'];

/** A page without the words of the command that are of the place it was asked from. */
const pageFrom = (cwd: string, ...words: string[]): string => program.run([...words, ...on], { cwd }).out;

test('card, prep and due say the same from any folder of the demo, and of any path in it', () => {
  const whole = ['card', 'prep'].map((word) => pageFrom(DEMO, word, 'wren-abbott'));
  expect(whole[0]).toContain('holds until');
  for (const folder of ['clients', 'days/2026', 'shelf'])
    expect(['card', 'prep'].map((word) => pageFrom(join(DEMO, folder), word, 'wren-abbott'))).toEqual(whole);
  expect(pageFrom(DEMO, 'card', 'wren-abbott', 'clients/wren-abbott.bowl')).toBe(whole[0]);
  expect(pageFrom(join(DEMO, 'shelf'), 'due')).toBe(pageFrom(DEMO, 'due'));
});

test('which journal was taken is said, on standard error, where it is not the folder asked for', () => {
  expect(program.run(['card', 'wren-abbott', ...on], { cwd: join(DEMO, 'clients') }).err).toBe(
    'Judged with the journal in `..`.\n',
  );
  expect(program.run(['card', 'wren-abbott', ...on], { cwd: DEMO }).err).toBe('');
});

test('a path chooses what is shown and is judged with everything', () => {
  const all = JSON.parse(program.run(['check', '--json', ...on], { cwd: DEMO }).out) as { path: string }[];
  const some = JSON.parse(program.run(['check', '--json', ...on, 'clients'], { cwd: DEMO }).out) as { path: string }[];
  expect(some.length).toBeGreaterThan(3);
  expect(some).toEqual(all.filter(({ path }) => path.startsWith('clients')));
});

test('`now` takes the visit of the journal it is in, `neaten` only what is named', () => {
  const folder = program.folder({
    ...JOURNAL,
    'clients/wren.bowl': 'client  wren-fold "Wren Fold"\nvisit 2026-09-05 10:00 wren-fold\n  aim  shine\n',
    'salon.bowl': `${JOURNAL['salon.bowl']}\n\n\n`,
  });
  const cwd = join(folder, 'clients');
  const ran = program.run(
    ['now', 'note all is well', '--at', '10:05', '--on', '2026-09-04', '--client', 'wren-abbott'],
    { cwd },
  );
  expect([ran.code, ran.out]).toEqual([0, expect.stringContaining('../clients.bowl:')]);
  expect(program.run(['neaten', '--check'], { cwd }).out).toContain('wren.bowl');
  expect(program.run(['neaten', '--check'], { cwd }).out).not.toContain('salon.bowl');
});
