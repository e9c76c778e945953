import { describe, expect, test } from 'vitest';
import { findIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  salon harbour "Harbour Row"
    hours 9:00-19:00
  product dev-6 "Cream developer" developer 6%
    density 1.01
  product dev-9 "Cream developer" developer 9%
  range cream "Larkfield cream" permanent
    strength 3% 6% 9%
  product clay "Peregrine clay" lightener
    strength to 9%
  range neon "Kelp direct" semi
    mix none
    shades teal
  client marlo-fenwick "Marlo Fenwick"
  client tove "Tove Amberley"`;

const notes = (...lines: string[]): string => `${textOf(SHELF)}\n${lines.join('\n')}\n`;
const visit = (...lines: string[]): string => notes('visit 2026-09-04 marlo-fenwick', ...lines);
const of = (rule: string, text: string) => findIn(text).findings.filter((finding) => finding.rule === rule);

describe('a visit that names a client in full', () => {
  test.each([
    ['Marlo Fenwick', 'marlo-fenwick', 'Marlo Fenwick'],
    ['MARLO FENWICK', 'marlo-fenwick', 'Marlo Fenwick'],
    ['tove-amberley', 'tove', 'Tove Amberley'],
  ])('%s', (typed, key, full) => {
    const found = findIn(notes(`visit 2026-09-04 ${typed}`)).findings;
    expect(found.map(({ rule, todo }) => [rule, todo])).toEqual([['unknown-name', `Write \`${key}\` (${full}).`]]);
    expect(found[0]?.mend?.edits.map(({ put }) => put)).toEqual([key]);
  });

  test('is hers where the first word is her short name', () => {
    expect(saidIn(notes('visit 2026-09-04 Tove Amberley'))).toEqual([]);
  });

  test('with a word that is no name says so once', () => {
    expect(saidIn(notes('visit 2026-09-04 tove colour'))).toEqual([
      'fix unknown-name: `colour` follows the client `tove`, and a visit is of one client.',
    ]);
    expect(saidIn(notes('visit 2026-09-04 jane doe'))).toEqual([
      'fix unknown-name: No client of the journal is named `jane-doe`.',
    ]);
  });
});

describe('a header that lacks something', () => {
  test.each([
    [
      'client Ines Marl',
      'A client needs a short name first; until it is mended this line belongs to nobody.',
      'client ines-marl "Ines Marl"',
    ],
    [
      'client "Ines Marl"',
      'A client needs a short name first; until it is mended this line belongs to nobody.',
      'client ines-marl "Ines Marl"',
    ],
    [
      'visit tove',
      'A visit needs its day, and the line gives none; until it is mended this line belongs to nobody.',
      'visit 2026-09-04 tove',
    ],
  ])('%s', (line, message, write) => {
    const [found] = of('header-shape', notes(line));
    expect(found?.message).toBe(message);
    expect(found?.todo).toContain(`Write \`${write}\``);
  });

  test('prose is made a note', () => {
    const [found] = of('header-shape', notes('client wants it lighter'));
    expect(found?.mend?.edits.map(({ put }) => put)).toEqual(['note client']);
  });
});

describe('a strength that no developer has', () => {
  test.each([
    [
      '40 clay + 60 40vol',
      'No developer on the shelf is 12 %; there are 6 % and 9 %; `clay` takes up to 9 %.',
      'Write the strength that was used.',
    ],
    [
      '40 cream 7/0 + 60 12%',
      'No developer on the shelf is 12 %; there are 6 % and 9 %; `cream` takes 3 %, 6 % or 9 %.',
      'Write the strength that was used.',
    ],
    [
      '40 cream 7/0 + 60 3%',
      'No developer on the shelf is 3 %; there are 6 % and 9 %; `cream` takes 3 %, 6 % or 9 %.',
      'Put it on the shelf, as in `product dev-3 developer 3%`.',
    ],
    ['40 clay + 40 20%', '20 % is stronger than any developer; `20vol` is 6 %.', 'Write `20vol`.'],
    [
      '40 clay + 40 15%',
      '15 % is stronger than any developer; there are 6 % and 9 %.',
      'Write the strength that was used.',
    ],
    [
      '40 clay + 60ml 40vol',
      'No developer on the shelf is 12 %; there are 6 % and 9 %; `clay` takes up to 9 %.',
      'Write the strength that was used.',
    ],
  ])('bowl A %s', (mix, message, todo) => {
    const found = findIn(visit(`bowl A ${mix}`)).findings.filter(({ rule }) =>
      /strength|developer|unweigh|over-limit/.test(rule),
    );
    expect(found.map((one) => [one.message, one.todo])).toEqual([[message, todo]]);
  });

  test('is stopped besides where the mixture is over the limit', () => {
    expect(of('ready-over-limit', visit('bowl A 30 clay + 60 20%')).map(({ severity }) => severity)).toEqual(['stop']);
  });
});

describe('one cause, one finding', () => {
  test.each([
    ['bowl A 30 clay 60 dev-6', 'no-name'],
    ['bowl A 1/2 tube cream 7/0 + 30 dev-6', 'amount-unweighable'],
    ['bowl A 1 scoop clay + 30 dev-6', 'amount-unweighable'],
  ])('%s', (line, rule) => {
    const mixing = findIn(visit(line)).findings.filter(
      ({ rule: name }) => !/skin-test|no-off|bowl-unplaced|on-scalp|scalp/.test(name),
    );
    expect(mixing.map((one) => one.rule)).toEqual([rule]);
  });

  test('a volume of a bare strength takes the density of the developer it means', () => {
    for (const strength of ['6%', '20vol'])
      expect(of('amount-unweighable', visit(`bowl A 60 clay + 90ml ${strength}`))).toEqual([]);
    expect(of('amount-unweighable', visit('bowl A 60 clay + 90ml 9%'))[0]?.message).toBe(
      'The note says ml of `dev-9`, and no line gives its density.',
    );
  });
});

describe('near-word', () => {
  test.each([
    ['organe', 'check 10:00 lengths organe', 'orange'],
    ['vilet', 'result lengths 9 vilet', 'violet'],
    ['peral', 'want lengths 9 peral', 'pearl'],
    ['yelow', 'start lengths 9 yelow', 'yellow'],
    ['goldem, nearer to golden than to gold', 'start lengths 9 goldem', 'golden'],
  ])('minds %s', (_, line, meant) => {
    expect(of('near-word', visit(line)).map(({ severity, todo }) => [severity, todo])).toEqual([
      ['mind', `Write \`${meant}\`.`],
    ]);
  });

  test('names every place of a slip, and mends them all', () => {
    const [found, ...more] = of('near-word', visit('start lengths 9 yelow', 'result lengths 9 yelow'));
    expect([found?.also?.length, found?.mend?.edits.length, more.length]).toEqual([1, 2, 0]);
  });

  test.each(['good', 'black', 'bright', 'warm', 'slightly cooler', 'even', 'golden', 'light'])(
    'leaves `%s` alone',
    (word) => {
      expect(of('near-word', visit(`result lengths 9 ${word}`))).toEqual([]);
    },
  );
});

test('long dashes in dates are read as plain ones', () => {
  const text = notes('visit 2026–09–04 tove', 'hold lightener to 2027–01', 'next 2026—12—19');
  expect(saidIn(text)).toEqual([]);
});

test('a month alone is read as that month, and found where it is over', () => {
  expect(saidIn(visit('next 2026-12'))).toEqual([]);
  expect(of('next-in-past', visit('next 2025-03')).map(({ message }) => message)).toEqual([
    'The next visit is by 2025-03-31, and this one is on 2026-09-04.',
  ]);
});

test.each(['razor nick at the nape', 'broken skin behind the ear', 'graze', 'weeping spot', 'sunburn on the parting'])(
  'a caution of the day stops what comes to the scalp: %s',
  (words) => {
    const said = visit(`caution ${words}`, 'bowl A 20 cream 7/0 + 30 dev-6', 'place A roots on-scalp');
    expect(of('sore-scalp', said).map(({ severity }) => severity)).toEqual(['stop']);
    const before = notes(
      'visit 2026-09-01 marlo-fenwick',
      `caution ${words}`,
      'visit 2026-09-04 marlo-fenwick',
      'bowl A 20 cream 7/0 + 30 dev-6',
      'place A roots on-scalp',
    );
    expect(of('sore-scalp', before)).toEqual([]);
  },
);
