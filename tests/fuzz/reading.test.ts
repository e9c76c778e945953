import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSource, type Source, type Standing } from '../../src/journal/source.ts';
import { tokensOf } from '../../src/notation/lexer.ts';
import { isBlank, readFresh, readLine } from '../../src/notation/read-line.ts';
import { withoutSpace } from '../../src/notation/space.ts';
import { Entry } from '../../src/records/schema/entry.ts';
import { linesOf } from '../../src/text/decode.ts';
import { fromOf, toOf } from '../../src/text/span.ts';
import { demo, demoLines } from '../notation/demo.ts';
import { examples } from '../notation/examples.ts';
import { budget, LIMIT } from './budget.ts';
import { noteLine, slippedNotes } from './notes.ts';
import { expectSame } from './same.ts';

const read = (text: string | Uint8Array): Source =>
  readSource('notes.bowl', typeof text === 'string' ? Buffer.from(text) : text);
const shapes = (line: string): string[] =>
  tokensOf(line).map(({ tokenType, startOffset, image }) => `${tokenType.name} ${startOffset} ${image.length}`);

/** Every character lies in one token, or is white space between two. */
const covers = (line: string): void => {
  let end = 0;
  for (const { startOffset, image } of tokensOf(line)) {
    expectSame(withoutSpace(line.slice(end, startOffset)), '');
    expectSame(line.slice(startOffset, startOffset + image.length), image);
    end = startOffset + image.length;
  }
  expectSame(withoutSpace(line.slice(end)), '');
};

/** A line and the same line with every digit folded have tokens of the same kinds at the same places. */
const isDigitBlind = (line: string): void => expectSame(shapes(line.replace(/\d/g, '0')), shapes(line));

/** What the table gives is what reading the line anew gives, whichever digits came first. */
const isSameFromTable = (line: string): void => {
  readLine(line.replace(/\d/g, '7'));
  expectSame(readLine(line), readFresh(line));
};

/** Every line is a header, a fact, blank or a comment, and belongs to one entry; spans lie on their lines. */
const losesNothing = ({ lines, entries, standing }: Source): void => {
  const seen = new Map<number, number>();
  for (const [index, { entry, notices }] of entries.entries()) {
    const { start: line, end } = standing[index] as Standing;
    const header = entry.kind !== 'orphan' || entry.header !== undefined;
    if (header) seen.set(line, 1);
    for (const fact of entry.facts) seen.set(line + fact.line, (seen.get(line + fact.line) ?? 0) + 1);
    expect(entry.facts.every((fact) => line + fact.line < end)).toBe(true);
    for (const notice of notices) {
      const text = lines[line + notice.line] ?? '';
      const [from, to] = [fromOf(notice.at), toOf(notice.at)];
      expect(from < to && to <= text.length, `${notice.rule} at ${from}-${to} of ${text}`).toBe(true);
    }
  }
  expectSame(
    lines.filter((text, index) => !isBlank(text) && !seen.has(index)),
    [],
  );
};

const matchesSchema = ({ entries }: Source): void => {
  for (const { entry } of entries) expectSame(Entry.parse(entry), entry);
};

const every = (line: string): void => {
  covers(line);
  isDigitBlind(line);
  isSameFromTable(line);
};

test('every line of the demo journal: tokens cover it, digits do not matter, the table is true', {
  timeout: LIMIT,
}, () => {
  for (const line of demoLines) every(line);
});

test('any line: tokens cover it, digits do not matter, the table is true', { timeout: LIMIT }, () => {
  fc.assert(fc.property(noteLine, every), budget(6000));
});

test('the demo journal and the examples lose no line and match the schema', { timeout: LIMIT }, () => {
  for (const { text } of [...demo, ...examples]) {
    losesNothing(read(text));
    matchesSchema(read(text));
  }
});

test('slipped notes lose no line and match the schema', { timeout: LIMIT }, () => {
  fc.assert(
    fc.property(slippedNotes, (text) => {
      const source = read(text);
      losesNothing(source);
      matchesSchema(source);
      expect(source.lines).toEqual(
        linesOf(
          Buffer.from(text)
            .toString('utf8')
            .replace(/^\ufeff/, ''),
        ),
      );
    }),
    budget(1000),
  );
});

test('a line under any header matches the schema', { timeout: LIMIT }, () => {
  const heads = [
    'visit 2026-09-04 w-a',
    'client w-a',
    'salon hr',
    'range cream demi',
    'product clay lightener',
    'stock 2026-08-01',
  ];
  fc.assert(
    fc.property(fc.constantFrom(...heads), noteLine, (head, line) => {
      const source = read(`${head}\n${line}`);
      losesNothing(source);
      matchesSchema(source);
    }),
    budget(6000),
  );
});

test('every beginning of every example is read, and so are a few hundred of the demo journal', {
  timeout: LIMIT,
}, () => {
  for (const { text } of examples) for (let end = 0; end <= text.length; end++) losesNothing(read(text.slice(0, end)));
  const cuts = demo.flatMap(({ text }) => [...text.matchAll(/\n/g)].map(({ index }) => text.slice(0, index)));
  const cut = fc.oneof(
    fc.constantFrom(...cuts),
    fc.tuple(fc.constantFrom(...demo), fc.nat()).map(([{ text }, end]) => text.slice(0, end % text.length)),
  );
  fc.assert(
    fc.property(cut, (text) => losesNothing(read(text))),
    budget(300),
  );
});

test('bytes of any kind are read', { timeout: LIMIT }, () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      const source = read(bytes);
      losesNothing(source);
      matchesSchema(source);
    }),
    budget(1000),
  );
});
