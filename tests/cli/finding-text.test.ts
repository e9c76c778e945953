import { describe, expect, test } from 'vitest';
import { cautionsOnce } from '../../src/cli/finding-text.ts';
import type { Finding } from '../../src/text/finding.ts';

const finding = (caution?: string, client?: string): Finding => ({
  rule: 'no-check',
  key: 'no-check | visit wren 2026-09-04 | on A | ',
  severity: 'fix',
  place: { file: 'a.bowl', line: 0, at: 0 },
  message: 'Bowl A has no check.',
  ...(caution !== undefined && { caution }),
  ...(client !== undefined && { client }),
});

describe('a caution is told in full', () => {
  const shown = (cautions: readonly (string | undefined)[], clients: readonly string[] = []): unknown[] => {
    const once = cautionsOnce();
    return cautions.map((caution, index) => once(finding(caution, clients[index])).caution);
  };

  test('but where the last one told is the same and stands a few findings back', () => {
    expect(shown(['burns', undefined, 'burns', 'stings', 'burns'])).toEqual([
      'burns',
      undefined,
      'as above.',
      'stings',
      'burns',
    ]);
    expect(shown(['burns', 'burns', 'burns', 'burns', 'burns'])).toEqual([
      'burns',
      'as above.',
      'as above.',
      'as above.',
      'burns',
    ]);
  });

  test('for each client anew', () => {
    expect(shown(['burns', 'burns', 'burns'], ['wren-abbott', 'wren-abbott', 'ada-quill'])).toEqual([
      'burns',
      'as above.',
      'burns',
    ]);
  });
});
