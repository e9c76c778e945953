import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import { tokensOf } from '../../src/notation/lexer.ts';
import { neatenEdits, neatenText } from '../../src/notation/neaten.ts';
import { isBlank, readLine } from '../../src/notation/read-line.ts';
import { withoutSpace } from '../../src/notation/space.ts';
import { linesOf } from '../../src/text/decode.ts';
import { budget, LIMIT } from './budget.ts';
import { noteLine, slippedNotes } from './notes.ts';
import { plainRecords } from './plain-records.ts';
import { expectSame } from './same.ts';

const recordsOf = (text: string): unknown => plainRecords(readSource('notes.bowl', Buffer.from(text)));
const full = (text: string): string[] => linesOf(text).filter((line) => withoutSpace(line) !== '');

/** What neatening promises of any text whatever. */
const holds = (text: string): void => {
  const neaten = neatenText(text);
  expect(neatenText(neaten)).toBe(neaten);
  expect(withoutSpace(neaten)).toBe(withoutSpace(text));
  expectSame(full(neaten).map(withoutSpace), full(text).map(withoutSpace));
  expectSame(recordsOf(neaten), recordsOf(text));
};

test('neatening slipped notes twice is neatening them once, and what they say stays', { timeout: LIMIT }, () => {
  fc.assert(fc.property(slippedNotes, holds), budget(1500));
});

test('neatening any line under any header keeps its tokens and its record', { timeout: LIMIT }, () => {
  const header = fc.constantFrom(
    ...['visit 2026-09-04 wren-abbott', 'client wren-abbott', 'salon harbour', 'range cream "C" permanent'],
    ...['product clay "P" lightener', 'stock 2026-08-01', 'clinet wren-abbott'],
  );
  fc.assert(
    fc.property(header, noteLine, (head, line) => {
      const lines = [head, line];
      holds(lines.join('\n'));
      if (isBlank(line) || readLine(line).form === 'free') return;
      const neatened = linesOf(neatenText(lines.join('\n')))[1] ?? '';
      const words = (text: string): string[] =>
        tokensOf(text).map(({ tokenType, image }) => `${tokenType.name} ${image}`);
      expectSame(words(neatened), words(line));
    }),
    budget(6000),
  );
});

test('line endings and the byte-order mark stay, and change nothing else', { timeout: LIMIT }, () => {
  fc.assert(
    fc.property(slippedNotes, (text) => {
      const plain = `${text.replaceAll('\r', '').replace(/^\ufeff+/, '')}\n`;
      const neaten = neatenText(plain);
      expect(neatenText(plain.replaceAll('\n', '\r\n'))).toBe(neaten.replaceAll('\n', '\r\n'));
      expect(neatenText(`\ufeff${plain}`)).toBe(`\ufeff${neaten}`);
    }),
    budget(500),
  );
});

test('edits touch white space alone, in order, and never overlap', { timeout: LIMIT }, () => {
  fc.assert(
    fc.property(slippedNotes, (text) => {
      const lines = linesOf(text);
      let before = { line: -1, to: 0 };
      for (const { line, from, to, put } of neatenEdits(lines)) {
        expect(withoutSpace((lines[line] ?? '').slice(from, to) + put)).toBe('');
        expect(line > before.line || from >= before.to).toBe(true);
        before = { line, to };
      }
    }),
    budget(500),
  );
});
