import { expect, test } from 'vitest';
import { cautionsOnce } from '../../src/cli/finding-text.ts';
import type { Finding } from '../../src/text/finding.ts';

const finding = (caution?: string): Finding => ({
  rule: 'no-check',
  severity: 'fix',
  place: { file: 'a.bowl', line: 0, at: 0 },
  message: 'Bowl A has no check.',
  ...(caution !== undefined && { caution }),
});

test('a caution is told in full once a report, then as standing above', () => {
  const shown = (cautions: readonly (string | undefined)[]): unknown[] => {
    const once = cautionsOnce();
    return cautions.map((caution) => once(finding(caution)).caution);
  };
  expect(shown(['burns', undefined, 'stings', 'burns', 'stings'])).toEqual([
    'burns',
    undefined,
    'stings',
    'as above.',
    'as above.',
  ]);
  expect(shown(['burns'])).toEqual(['burns']);
});
