import { expect, test } from 'vitest';
import { JOURNAL, useProgram } from './program.ts';

const program = await useProgram();

/** The last visit, on 2026-09-04, ends with each of these lines; then the first day awaited, and how it is said. */
const WAITS = [
  ['next 8w', '2026-10-30', '2026-10-30', '2026-10-30, Friday'],
  ['next 6-8w', '2026-10-16', '2026-10-16 to 2026-10-30', '2026-10-16, Friday, to 2026-10-30, Friday'],
  ['next from 2026-10-20', '2026-10-20', 'from 2026-10-20', 'from 2026-10-20, Tuesday'],
  ['next 2026-10-17 14:00 foils', '2026-10-17', '2026-10-17 14:00', '2026-10-17, Saturday, 14:00'],
] as const;

test.each(WAITS)(
  '%s: `due`, `order`, `card`, `prep` and `rebook` await her on the same days',
  (next, first, days, said) => {
    const clients = JOURNAL['clients.bowl'].replace(/next .*/, next);
    expect(clients).toContain(next);
    const cwd = program.folder({ ...JOURNAL, 'clients.bowl': clients });
    const run = (...words: string[]): string => program.run(words, { cwd }).out;
    const on = ['--on', '2026-09-20'];
    expect(run('due', '--weeks', '12', ...on)).toContain(`| Wren Abbott | ${days} |`);
    expect(run('order', '--weeks', '12', ...on)).toContain(`| Wren Abbott | ${days} |`);
    expect(run('card', 'wren-abbott', ...on)).toContain(`**Due** ${said}\n`);
    expect(run('prep', 'wren-abbott', '--on', first)).toContain(`**Due** ${said}\n`);
    expect(run('rebook', 'wren-abbott')).toMatch(new RegExp(`^visit ${first} `));
  },
);
