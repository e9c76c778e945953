import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import { tokensOf } from '../../src/notation/lexer.ts';
import { isBlank, readLine } from '../../src/notation/read-line.ts';
import { withoutSpace } from '../../src/notation/space.ts';
import { tidyEdits, tidyText } from '../../src/notation/tidy.ts';
import { linesOf } from '../../src/text/decode.ts';
import { budget, LIMIT } from './budget.ts';
import { noteLine, slippedNotes } from './notes.ts';
import { plainRecords } from './plain-records.ts';
import { expectSame } from './same.ts';

const recordsOf = (text: string): unknown => plainRecords(readSource('notes.bowl', Buffer.from(text)));
const full = (text: string): string[] => linesOf(text).filter((line) => withoutSpace(line) !== '');

/** What tidying promises of any text whatever. */
const holds = (text: string): void => {
  const tidy = tidyText(text);
  expect(tidyText(tidy)).toBe(tidy);
  expect(withoutSpace(tidy)).toBe(withoutSpace(text));
  expectSame(full(tidy).map(withoutSpace), full(text).map(withoutSpace));
  expectSame(recordsOf(tidy), recordsOf(text));
};

test('tidying slipped notes twice is tidying them once, and what they say stays', { timeout: LIMIT }, () => {
  fc.assert(fc.property(slippedNotes, holds), budget(1500));
});

test('tidying any line under any header keeps its tokens and its record', { timeout: LIMIT }, () => {
  const header = fc.constantFrom(
    ...['visit 2026-09-04 wren-abbott', 'client wren-abbott', 'salon harbour', 'range cream "C" permanent'],
    ...['product clay "P" lightener', 'stock 2026-08-01', 'clinet wren-abbott'],
  );
  fc.assert(
    fc.property(header, noteLine, (head, line) => {
      const lines = [head, line];
      holds(lines.join('\n'));
      if (isBlank(line) || readLine(line).form === 'free') return;
      const tidied = linesOf(tidyText(lines.join('\n')))[1] ?? '';
      const words = (text: string): string[] =>
        tokensOf(text).map(({ tokenType, image }) => `${tokenType.name} ${image}`);
      expectSame(words(tidied), words(line));
    }),
    budget(6000),
  );
});

test('line endings and the byte-order mark stay, and change nothing else', { timeout: LIMIT }, () => {
  fc.assert(
    fc.property(slippedNotes, (text) => {
      const plain = `${text.replaceAll('\r', '').replace(/^\ufeff+/, '')}\n`;
      const tidy = tidyText(plain);
      expect(tidyText(plain.replaceAll('\n', '\r\n'))).toBe(tidy.replaceAll('\n', '\r\n'));
      expect(tidyText(`\ufeff${plain}`)).toBe(`\ufeff${tidy}`);
    }),
    budget(500),
  );
});

test('edits touch white space alone, in order, and never overlap', { timeout: LIMIT }, () => {
  fc.assert(
    fc.property(slippedNotes, (text) => {
      const lines = linesOf(text);
      let before = { line: -1, to: 0 };
      for (const { line, from, to, put } of tidyEdits(lines)) {
        expect(withoutSpace((lines[line] ?? '').slice(from, to) + put)).toBe('');
        expect(line > before.line || from >= before.to).toBe(true);
        before = { line, to };
      }
    }),
    budget(500),
  );
});
