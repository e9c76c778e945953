import fc from 'fast-check';
import { expect, test } from 'vitest';
import { insertLines } from '../../src/cli/insert-lines.ts';

const inserted = (text: string, after: number, ...lines: string[]): string =>
  insertLines(Buffer.from(text, 'utf8'), after, lines).toString('utf8');

test.each([
  ['a\nb\n', 0, 'a\nX\nb\n'],
  ['a\nb\n', 1, 'a\nb\nX\n'],
  ['a\nb', 1, 'a\nb\nX\n'],
  ['a\r\nb', 1, 'a\r\nb\r\nX\r\n'],
  ['a\r\nb\r\n', 0, 'a\r\nX\r\nb\r\n'],
  ['\ufeffa\n', 0, '\ufeffa\nX\n'],
  ['', -1, 'X\n'],
  ['a\n', -1, 'X\na\n'],
])('%j after line %i', (text, after, expected) => {
  expect(inserted(text, after, 'X')).toBe(expected);
});

test('every byte that was there is still there, in order', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 60 }), fc.integer({ min: -1, max: 8 }), (bytes, after) => {
      const was = Buffer.from(bytes);
      const now = insertLines(was, after, ['zoë', '']);
      let next = 0;
      for (const byte of now) if (byte === was[next]) next += 1;
      expect(next).toBe(was.length);
      expect(now.includes('zoë')).toBe(true);
    }),
    { seed: 3 },
  );
});
