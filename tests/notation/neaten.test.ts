import { describe, expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import { tokensOf } from '../../src/notation/lexer.ts';
import { neatenEdits, neatenText } from '../../src/notation/neaten.ts';
import { isBlank, readLine } from '../../src/notation/read-line.ts';
import { withoutSpace } from '../../src/notation/space.ts';
import { linesOf } from '../../src/text/decode.ts';
import { plainRecords } from '../fuzz/plain-records.ts';
import { demo } from './demo.ts';
import { examples } from './examples.ts';

const HEAD = 'visit 2026-09-04 wren-abbott\n';
const line = (typed: string): string => neatenText(`${HEAD}${typed}`).slice(HEAD.length, -1);

describe('a line', () => {
  test.for([
    ['bowl A 40 clay', '  bowl A 40 clay'],
    ['\tbowl   A \t40\u00a0clay  ', '  bowl A 40 clay'],
    ['bowl A 40 clay+20vol 1:2', '  bowl A 40 clay + 20vol 1:2'],
    ['bowl A 40 clay ,80 dev-6', '  bowl A 40 clay, 80 dev-6'],
    ['bowl A 3,5 clay , 7 ,5', '  bowl A 3,5 clay, 7, 5'],
    ['on  14:35  -  14:55 A,B roots ,top', '  on 14:35 - 14:55 A, B roots, top'],
    ['on +10 A', '  on +10 A'],
    ['on  +  10 A', '  on + 10 A'],
    ['place A+B top x  6', '  place A+B top x 6'],
    ['start roots 7+ , lengths 8', '  start roots 7+, lengths 8'],
    ['next 8w  -20% , A  -20%', '  next 8w -20%, A -20%'],
    ['check 15:05 A # a look', '  check 15:05 A  # a look'],
    ['check 15:05 A      # a  look ', '  check 15:05 A  # a  look'],
    ['off 15:15 A "two  spaces "', '  off 15:15 A "two  spaces "'],
    ['off 15:15 A "no  end ', '  off 15:15 A "no  end'],
    ['note   two  spaces ,kept ', '  note two  spaces ,kept'],
    ['aim\t"two  spaces"   by io  # x', '  aim "two  spaces"   by io  # x'],
    ['note:  x', '  note:  x'],
    ['zork   12 ,13  ', 'zork   12 ,13'],
    ['   zork', '   zork'],
    ['mix   1:2 ', 'mix   1:2'],
    ['paid 20\0  card ', 'paid 20\0  card'],
    ['test metal 40 dev-6+2 ammonia', '  test metal 40 dev-6+2 ammonia'],
    ['A+B  #3', 'A+B  #3'],
  ])('`%s`', ([typed = '', neaten = '']) => {
    expect(line(typed)).toBe(neaten);
    expect(line(neaten)).toBe(neaten);
  });

  test('a lot is whatever touches, and stays so', () => {
    expect(neatenText('stock 2026-08-01\nin clay 2 packs lot K2,31  use-by 2028-01')).toBe(
      'stock 2026-08-01\n  in clay 2 packs lot K2,31 use-by 2028-01\n',
    );
  });

  test('a change that would part or join tokens is left out, the others are made', () => {
    expect(line('bowl A  40 clay,# x')).toBe('  bowl A 40 clay,# x');
  });
});

describe('a file', () => {
  test.for([
    ['headers stand at the margin', `  ${HEAD}paid 20`, `${HEAD}  paid 20\n`],
    ['no two blank lines together, none at either end', `\n\n${HEAD} \n\n\npaid 20\n\n\n`, `${HEAD}\n  paid 20\n`],
    ['a comment at the margin stays there, another goes in', `# a\n  # b\n${HEAD} # c\n`, `# a\n  # b\n${HEAD}  # c\n`],
    [
      'a header under a wrong name keeps its lines as typed',
      'vist 2026-09-04 wren \n   paid  20 \n',
      'vist 2026-09-04 wren\n   paid  20\n',
    ],
    ['lines of nobody stay as typed', ' paid   20 \n', ' paid   20\n'],
    [
      'nothing changes inside a conflict',
      `${HEAD}<<<<<<< a\n paid  20 \n\n\n=======\n>>>>>>> b\npaid 20`,
      `${HEAD}<<<<<<< a\n paid  20 \n\n\n=======\n>>>>>>> b\n  paid 20\n`,
    ],
    ['nor after one without an end', `${HEAD}<<<<<<< a\n paid  20 \n\n\n`, `${HEAD}<<<<<<< a\n paid  20 \n\n\n`],
    ['each line keeps its ending', `${HEAD}paid 20\r\nnote x\n`, `${HEAD}  paid 20\r\n  note x\n`],
    ['a last line gets the ending of the one above', `${HEAD.trim()}\r\npaid 20`, `${HEAD.trim()}\r\n  paid 20\r\n`],
    ['the byte-order mark stays', `\ufeff  ${HEAD}`, `\ufeff${HEAD}`],
    ['nothing stays nothing', '', ''],
    ['blank lines alone go', '\n \n\n', ''],
  ])('%s', ([, typed = '', neaten = '']) => expect(neatenText(typed)).toBe(neaten));

  test('a line near the longest that is read is left alone', () => {
    const long = `${HEAD}paid  20 ${'x '.repeat(30_000)}`;
    expect(neatenText(`${long}\n`)).toBe(`${long}\n`);
  });

  test('edits point to white space, and a blank line goes whole', () => {
    expect(neatenEdits(['', 'visit 2026-09-04 wren-abbott', 'paid  20 ', '', ' '])).toEqual([
      { line: 0, from: 0, to: 0, put: '', gone: true },
      { line: 2, from: 0, to: 0, put: '  ' },
      { line: 2, from: 4, to: 6, put: ' ' },
      { line: 2, from: 8, to: 9, put: '' },
      { line: 3, from: 0, to: 0, put: '', gone: true },
      { line: 4, from: 0, to: 1, put: '', gone: true },
    ]);
  });
});

describe.for([...demo, ...examples])('$name', ({ text }) => {
  const neaten = neatenText(text);
  const full = (notes: string): string[] => linesOf(notes).filter((one) => withoutSpace(one) !== '');
  const tokens = (notes: string): string[] =>
    full(notes)
      .filter((one) => !isBlank(one) && readLine(one).form !== 'free')
      .flatMap((one) => tokensOf(one).map(({ tokenType, image }) => `${tokenType.name} ${image}`));

  test('neaten twice is neaten once', () => expect(neatenText(neaten)).toBe(neaten));
  test('nothing but white space changes, and every line stays in its place', () => {
    expect(full(neaten).map(withoutSpace)).toEqual(full(text).map(withoutSpace));
  });
  test('tokens are the same', () => expect(tokens(neaten)).toEqual(tokens(text)));
  test('records and notices are the same', () => {
    const records = (notes: string): unknown => plainRecords(readSource('notes.bowl', Buffer.from(notes)));
    expect(records(neaten)).toEqual(records(text));
  });
  test('comments are the same', () => {
    const comments = (notes: string): string[] =>
      full(notes).flatMap((one) => {
        const { comment } = readLine(one).tree;
        return comment === undefined ? [] : [one.slice(comment.from, comment.to)];
      });
    expect(comments(neaten)).toEqual(comments(text));
  });
});

test('entries neatened together are entries neatened apart', () => {
  const entries = demo.flatMap(({ text }) => {
    const lines = linesOf(text);
    const source = readSource('notes.bowl', Buffer.from(text));
    return source.standing
      .filter((_, index) => source.entries[index]?.entry.kind !== 'orphan')
      .map(({ start, end }) => `${lines.slice(start, end).join('\n')}\n`);
  });
  for (let at = 0; at + 3 < entries.length; at += 3) {
    const some = entries.slice(at, at + 3);
    expect(neatenText(some.join('\n'))).toBe(some.map(neatenText).join('\n'));
  }
});
