import { describe, expect, it } from 'vitest';
import { DEMO, useProgram } from './program.ts';

const program = await useProgram();

/** Two machines as far apart as settings go: time zone, date line, language, decimal comma, order of letters. */
const MACHINES: readonly Record<string, string>[] = [
  { TZ: 'Pacific/Kiritimati', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' },
  { TZ: 'America/Adak', LC_ALL: 'C', LANG: 'sv_SE.UTF-8' },
];

const COMMANDS: readonly (readonly string[])[] = [
  ['card', 'wren-abbott', DEMO, '--on', '2026-11-25'],
  ['card', 'wren-abbott', DEMO, '--on', '2026-11-25', '--html', '--money'],
  ['card', 'wren-abbott', DEMO, '--on', '2026-11-25', '--json'],
  ['check', DEMO, '--on', '2026-11-25', '--json'],
  ['usage', DEMO, '--on', '2026-11-25', '--html'],
  ['money', DEMO, '--on', '2026-11-25', '--html'],
];

describe('the same notes', () => {
  for (const words of COMMANDS) {
    it(`give the same bytes on two machines: ${words.filter((word) => word !== DEMO).join(' ')}`, () => {
      const [here, there] = MACHINES.map((env) => program.run(words, { env }));
      expect(here?.err).toBe('');
      expect(here?.out.length).toBeGreaterThan(1000);
      expect(there?.code).toBe(here?.code);
      expect(there?.out === here?.out).toBe(true);
    });
  }
});
