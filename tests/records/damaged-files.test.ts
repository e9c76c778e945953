import { describe, expect, test } from 'vitest';
import { readSource, type Source } from '../../src/journal/source.ts';

const read = (text: string | Uint8Array): Source =>
  readSource('notes.bowl', typeof text === 'string' ? Buffer.from(text) : text);
const kinds = ({ entries }: Source): string[] => entries.map(({ entry }) => entry.kind);
const told = ({ entries, standing, notices }: Source): string[] => [
  ...notices.map(({ rule, line }) => `${rule} ${line + 1}`),
  ...entries.flatMap((stood, index) =>
    stood.notices.map(({ rule, line }) => `${rule} ${(standing[index]?.start ?? 0) + line + 1}`),
  ),
];
const factWords = ({ entries }: Source): string[][] => entries.map(({ entry }) => entry.facts.map(({ word }) => word));

describe('how a file is written', () => {
  const notes = 'client zoë-harrow "Zoë Harrow"\n  allergy "nickel"\n  note naïve\n';

  test('CRLF, a byte-order mark and no ending on the last line change nothing', () => {
    const plain = read(notes);
    for (const text of [notes.replaceAll('\n', '\r\n'), `\ufeff${notes}`, notes.trimEnd(), notes.replace('\n', '\r\n')])
      expect(read(text).entries).toEqual(plain.entries);
  });

  test('Windows-1252 is read as such and reported at its first letter', () => {
    const source = read(Buffer.from(notes, 'latin1'));
    expect(source.entries).toEqual(read(notes).entries);
    expect(told(source)).toEqual(['not-utf-8 1']);
    expect(source.notices[0]?.message).toContain('Windows-1252');
  });

  test('UTF-16 is read as such and reported', () => {
    const source = read(Buffer.from(`\ufeff${notes}`, 'utf16le'));
    expect(source.entries).toEqual(read(notes).entries);
    expect(told(source)).toEqual(['not-utf-8 1']);
  });

  test('a NUL byte keeps its line and no other', () => {
    const source = read('visit 2026-09-04 wren-abbott\n  bowl A 40 clay\0\n  paid 20\n');
    expect(factWords(source)).toEqual([['unread', 'paid']]);
    expect(told(source)).toEqual(['nul-byte 2']);
  });

  test('a line of more than a hundred thousand characters is kept and reported', () => {
    const source = read(`visit 2026-09-04 wren-abbott\n  note ${'a'.repeat(100_001)}\n  paid 20\n`);
    expect(factWords(source)).toEqual([['unread', 'paid']]);
    expect(told(source)).toEqual(['line-too-long 2']);
  });

  test('white space that a paste brings along separates as a space does', () => {
    const [space] = read('visit 2026-09-04 wren-abbott\nbowl A 40 clay').entries;
    for (const other of ['\t', '\u00a0', '\u200b', '\ufeff', '\v', '\u2028', '\u3000'])
      expect(read(`visit 2026-09-04 wren-abbott\nbowl${other}A 40${other}clay`).entries[0]?.entry).toEqual(
        space?.entry,
      );
  });

  test('an empty file, blank lines and comments hold no entry', () => {
    for (const text of ['', '\n\n', '# only this\n', '  # and this\n\n', '\ufeff'])
      expect(kinds(read(text))).toEqual([]);
  });
});

describe('headers', () => {
  test.for(['visti', 'vist', 'visits', 'viist', 'viit'])(
    '`%s` opens an entry of its own, and the client above keeps none of its lines',
    (typed) => {
      const source = read(
        `client wren-abbott\n  natural 6\n${typed} 2026-09-04 wren-abbott\n  bowl A 40 clay\n  allergy "nickel"\n`,
      );
      expect(kinds(source)).toEqual(['client', 'orphan']);
      expect(factWords(source)).toEqual([['natural'], ['unread', 'unread']]);
      expect(told(source)).toEqual(['misspelt-header 3']);
      expect(source.entries[1]?.notices[0]).toMatchObject({
        put: { text: 'visit' },
        message: expect.stringContaining('3 lines'),
      });
    },
  );

  test.for([
    'product build-up at nape',
    'client wants it lighter',
    'visit next week',
    'stock is low',
    'range of tones',
  ])('pasted prose `%s` opens an entry of its own, to be made a note', (prose) => {
    const source = read(`visit 2026-09-04 wren-abbott\n  paid 20\n${prose}\n  charge foils 95\n`);
    expect(kinds(source)).toEqual(['visit', 'orphan']);
    expect(told(source)).toEqual(['header-shape 3']);
    expect(source.entries[1]?.notices[0]?.put?.text).toBe(`note ${prose.split(' ')[0]}`);
  });

  test.for(['zork 12', 'left A 14', 'visitors came', 'clay 40'])('`%s` opens nothing', (line) => {
    expect(kinds(read(`visit 2026-09-04 wren-abbott\n${line}\n`))).toEqual(['visit']);
  });

  test('lines before any header belong to nobody, and are told of once', () => {
    const source = read('# top\n\n  bowl A 40 clay\n  paid 20\n\nvisit 2026-09-04 wren-abbott\n');
    expect(kinds(source)).toEqual(['orphan', 'visit']);
    expect(told(source)).toEqual(['no-entry 3']);
  });

  test('a name that has a meaning of its own is reported', () => {
    for (const line of ['client g "G"', 'client x', 'product oz "Oil" treatment', 'range from "From" demi'])
      expect(told(read(line))).toEqual(['name-taken 1']);
  });

  test('a kind in other words is reported with the nearest', () => {
    const [entry] = read('range cream "Larkfield cream" permanant').entries;
    expect(entry?.notices[0]).toMatchObject({ rule: 'header-shape', put: { text: 'permanent' } });
  });

  test.for([
    ['visit 2026-9-4 wren-abbott', '2026-09-04'],
    ['visit 4.9.2026 wren-abbott', '2026-04-09'],
    ['visit 04/09/2026 wren-abbott', '2026-04-09'],
    ['visit 2026/09/04 wren-abbott', '2026-09-04'],
    ['visit 2026-02-30 wren-abbott', '28'],
  ])('`%s` is a visit without a date, and is told how to write one', ([line = '', offer = '']) => {
    const source = read(line);
    expect(kinds(source)).toEqual(['visit']);
    expect(told(source)).toEqual(['bad-date 1']);
    expect(source.entries[0]?.notices[0]?.todo).toContain(offer);
  });
});

describe('merge conflicts', () => {
  const head = 'visit 2026-09-04 wren-abbott\n  paid 20\n';

  test('a conflict inside an entry is one stop, and the rest of the entry counts', () => {
    const source = read(
      `${head}<<<<<<< salon\n  charge cut 40\n=======\n  charge cut 45\n>>>>>>> phone\n  note after\n`,
    );
    expect(kinds(source)).toEqual(['visit']);
    expect(factWords(source)).toEqual([['paid', 'unread', 'unread', 'unread', 'unread', 'unread', 'note']]);
    expect(told(source)).toEqual(['merge-conflict 3']);
  });

  test('after a conflict that holds a header, lines belong to nobody until the next one', () => {
    const source = read(
      `${head}<<<<<<< salon\nvisit 2026-09-05 jo-lund\n>>>>>>> phone\n  bowl A 40 clay\nclient jo-lund\n`,
    );
    expect(kinds(source)).toEqual(['visit', 'orphan', 'client']);
    expect(told(source)).toEqual(['merge-conflict 3', 'no-entry 6']);
  });

  test('a conflict without an end keeps all that follows as typed', () => {
    const source = read(`${head}<<<<<<< salon\n  charge cut 40\nclient jo-lund\n`);
    expect(kinds(source)).toEqual(['visit']);
    expect(told(source)).toEqual(['merge-conflict 3']);
  });

  test('marks are marks at the margin only', () => {
    expect(told(read(`${head}  <<<<<<< salon\n`))).toEqual(['unknown-word 3']);
    expect(told(read(`${head}<<<<<<<salon\n`))).toEqual(['unknown-word 3']);
  });
});

describe('quotations', () => {
  test.for([
    ['off 15:30 A "clean, even', 'clean, even'],
    ['off 15:30 A “clean, even', 'clean, even'],
    ['off 15:30 A "clean" then "even', 'even'],
    ['charge foils 95 «cher', 'cher'],
  ])('`%s` is read up to the quotation that has no end', ([line = '', said = '']) => {
    const source = read(`visit 2026-09-04 wren-abbott\n${line}\n  paid 20`);
    expect(told(source)).toContain('open-quote 2');
    const [fact] = source.entries[0]?.entry.facts ?? [];
    expect(fact?.says?.text).toContain(said);
    expect(factWords(source)[0]).toContain('paid');
  });
});
