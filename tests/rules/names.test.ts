import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product clay "Peregrine clay" lightener
  range neon "Kelp direct" semi
    mix none
    shades teal`;

const notes = (...lines: string[]): string =>
  [textOf(SHELF), 'client wren-abbott "Wren Abbott"', 'visit 2026-09-04 wren-abbott', ...lines, ''].join('\n');

describe('unknown-name', () => {
  test.each([
    ['a product tested', 'test strand caly 20min yellow', 'No product of the journal is named `caly`.'],
    ['a product held', 'hold lightner', 'No product of the journal is named `lightner`.'],
    ['a product fitted', 'fit 2 packs withybed', 'No product of the journal is named `withybed`.'],
  ])('finds %s', (_, line, message) => {
    expect(saidIn(notes(line))).toEqual([`fix unknown-name: ${message}`]);
  });

  test.each([
    ['a kind tested', 'test strand lightener 20min yellow'],
    ['a kind held', 'hold lightener'],
    ['everything held', 'hold all'],
    ['oxidative colour held', 'hold oxidative'],
    ['goods without a name', 'fit 2 packs "of hers"'],
  ])('leaves %s alone', (_, line) => {
    expect(rulesIn(notes(line))).not.toContain('unknown-name');
  });

  test('finds what the shelf and the stock name', () => {
    const text = `
      product clay "Peregrine clay" lightener
        uses dev-9
        time 20 min if with bondd
        time 30 min if grey 50%
        time 30 min
      product bond "Mender" additive
      stock 2026-08-01
        in caly 2 packs
        count clya 40 g
        out yalc 20 g`;
    expect(saidIn(text).map((line) => /`(.*)`/.exec(line)?.[1])).toEqual(['dev-9', 'bondd', 'caly', 'clya', 'yalc']);
  });

  test('offers near names, and an entry', () => {
    const [near] = findIn(notes('hold caly')).findings;
    expect(near?.todo).toBe('Write `clay`, or an entry `product caly`.');
    expect(near?.mend?.edits.map(({ put }) => put)).toEqual(['clay']);
    const [far] = findIn(notes('hold quartz')).findings;
    expect(far?.todo).toBe('Write an entry `product quartz`.');
    expect(far?.mend).toBeUndefined();
  });

  test('is one finding a name and visit, whose mend puts right every place', () => {
    const { findings } = findIn(notes('hold caly', 'bowl A 30 caly', 'bowl B 40 quartz + 5 quartz'));
    expect(findings.map(({ message }) => message)).toEqual([
      'No product of the journal is named `caly`.',
      '`quartz` is not on the shelf.',
    ]);
    expect(findings[0]?.mend?.edits.map(({ place }) => place.line)).toEqual([6, 7]);
  });

  test('finds a client without an entry once a visit', () => {
    const text = `client wren-abbott "Wren Abbott"
visit 2026-09-04 wren-abott
visit 2026-10-04 wren-abott
`;
    const { findings } = findIn(text);
    expect(findings.map(({ message, place }) => [message, place.line])).toEqual([
      ['No client of the journal is named `wren-abott`.', 1],
      ['No client of the journal is named `wren-abott`.', 2],
    ]);
    expect(findings[0]?.todo).toBe('Write `wren-abbott`, or an entry `client wren-abott`.');
  });

  test('finds stylists and salons once any is described', () => {
    const visit = (...entries: string[]): string =>
      [
        ...entries,
        'client wren-abbott "Wren Abbott"',
        'visit 2026-09-04 wren-abbott by jo at harbor',
        'note cut by her',
        'cut by jo',
        'rinse by ni',
        '',
      ].join('\n');
    expect(rulesIn(visit())).toEqual([]);
    expect(saidIn(visit('stylist io "Io"', 'salon harbour "Harbour Row"'))).toEqual([
      'fix unknown-name: No stylist of the journal is named `jo`.',
      'fix unknown-name: No salon of the journal is named `harbor`.',
      'fix unknown-name: No stylist of the journal is named `ni`.',
    ]);
    expect(rulesIn('salon harbour "Harbour Row"\nstock 2026-08-01 at harbor\nnote counted')).toEqual(['unknown-name']);
    expect(rulesIn('salon harbour "Harbour Row"\nstock 2026-08-01 at harbour\nnote counted')).toEqual([]);
  });

  test('finds names in a client’s own entry', () => {
    expect(rulesIn('product clay "Peregrine clay" lightener\nclient wren-abbott "Wren Abbott"\nhold quartz\n')).toEqual(
      ['unknown-name'],
    );
    // Where nothing at all is on a shelf, that is said once and no name is called unknown.
    expect(rulesIn('client wren-abbott "Wren Abbott"\nhold quartz\n')).toEqual([]);
  });
});

test('a bowl is made of what is on the shelf, or told so without a near name', () => {
  const [finding] = findIn(notes('bowl A 30 quartz')).findings;
  expect([finding?.rule, finding?.mend]).toEqual(['unknown-name', undefined]);
});

describe('unknown-zone', () => {
  const BOWL = 'bowl A 30 neon teal';
  test.each([
    ['the notation’s', 'place A back left'],
    ['in the singular', 'place A temple'],
    ['along the hair', 'leave ends'],
  ])('knows a place that is %s', (_, line) => {
    expect(rulesIn(notes(BOWL, line))).toEqual([]);
  });

  test('knows the salon’s, the client’s and the visit’s own places', () => {
    const text = `salon harbour "Harbour Row"\nzone fan top, crown\n${notes(BOWL, 'zone band "left, 8 cm down"', 'place A fan', 'place A band', 'place A cowlick')}client wren-abbott\nzone cowlick "front left"\n`;
    expect(rulesIn(text)).toEqual([]);
  });

  test.each([
    ['place A quarterdeck'],
    ['on 14:00 A quarterdeck'],
    ['place A quarterdeck weave'],
    ['result quarterdeck 7'],
    ['start quarterdeck 7'],
    ['regrowth 2cm quarterdeck'],
  ])('finds an unknown one in %s', (line) => {
    expect(saidIn(notes(BOWL, line))).toContain(
      'mind unknown-zone: `quarterdeck` is no place that the notation, the salon or this client names.',
    );
  });

  test('finds it once a visit, and offers to describe it', () => {
    const { findings } = findIn(notes(BOWL, 'place A quarterdeck', 'leave quarterdeck'));
    const zones = findings.filter(({ rule }) => rule === 'unknown-zone');
    expect(zones.map(({ todo }) => todo)).toEqual(['Write `zone quarterdeck "where it is"` under the client.']);
  });
});

describe('reason-unknown', () => {
  test('says the name of now for one of earlier years', () => {
    const [finding] = findIn('client wren-abbott "Wren Abbott"\nbecause allow-unused "so"\n').findings;
    expect([finding?.rule, finding?.mend?.edits.map(({ put }) => put)]).toEqual(['reason-unknown', ['reason-unused']]);
  });

  test('finds a name that is near to none, under the client as under a visit', () => {
    const [finding] = findIn('client wren-abbott "Wren Abbott"\nbecause everything "why not"\n').findings;
    expect([finding?.rule, finding?.todo]).toEqual([
      'reason-unknown',
      'Write the rule’s name as a finding shows it; `bowlbook why` lists them.',
    ]);
  });
});

describe('name-twice', () => {
  test.each([
    ['salon', 'salon harbour "Harbour Row"\nsalon harbour "Harbour Yard"'],
    ['stylist', 'stylist io "Io"\nstylist io "Iona"'],
    ['client', 'client wren-abbott "Wren Abbott"\nclient wren-abbott "Wrenna Abbott"'],
    ['range', 'range neon "Kelp direct" semi\nrange neon "Kelp other" semi'],
  ])('finds a %s', (kind, text) => {
    const [finding] = findIn(text).findings;
    expect(finding?.message).toContain(`is already the name of the ${kind} at example.bowl:1`);
  });

  test('lets a client’s second entry add to the first', () => {
    expect(rulesIn('client wren-abbott "Wren Abbott"\nnatural 6\nclient wren-abbott\ngrey 10%')).toEqual([]);
  });
});

describe.each(['redo', 'about'])('%s-unfound', (word) => {
  const visits = (...lines: string[]): string =>
    ['client wren-abbott "Wren Abbott"', ...lines.map((line) => line.replace('WORD', word)), ''].join('\n');
  const V = (day: string): string => `visit ${day} wren-abbott`;

  test.each([
    ['a visit of that day', [V('2026-05-02'), V('2026-09-04'), 'WORD 2026-05-02']],
    ['another visit of the same day', [`${V('2026-09-04')}`, 'cut', V('2026-09-04'), 'WORD 2026-09-04']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(visits(...lines))).toEqual([]);
  });

  test('names the nearest visits before it', () => {
    const days = ['2026-01-02', '2026-03-02', '2026-05-02', '2026-06-02'].map(V);
    const { findings } = findIn(visits(...days, V('2026-09-04'), 'WORD 2026-05-03', V('2026-10-04')));
    expect(findings.map(({ message, todo, severity }) => [severity, message, todo])).toEqual([
      ['fix', 'Wren Abbott has no visit on 2026-05-03.', 'The nearest: 2026-05-02, 2026-06-02 and 2026-03-02.'],
    ]);
  });

  test('of two as near, names the earlier first', () => {
    const { findings } = findIn(visits(V('2026-05-02'), V('2026-05-04'), V('2026-09-04'), 'WORD 2026-05-03'));
    expect(findings[0]?.todo).toBe('The nearest: 2026-05-02 and 2026-05-04.');
  });

  test('knows its own day, and has nothing to offer for a first visit', () => {
    const { findings } = findIn(visits(V('2026-09-04'), 'WORD 2026-09-04'));
    expect(findings.map(({ message, todo }) => [message, todo])).toEqual([
      [`2026-09-04 is the day of this visit, and the \`${word}\` line is about another.`, 'Correct the date.'],
    ]);
  });

  test('is only worth a thought before the notes of the client begin', () => {
    const [found] = findIn(visits(V('2026-05-02'), V('2026-09-04'), 'WORD 2024-05-02')).findings;
    expect(found?.severity).toBe('mind');
  });
});

describe('split-unknown-stylist', () => {
  const visit = (stylists: string, header: string, ...lines: string[]): string =>
    [stylists, 'client wren-abbott "Wren Abbott"', header, ...lines, ''].join('\n');
  const HEADER = 'visit 2026-09-04 wren-abbott';

  test('is silent where no stylist is described', () => {
    expect(rulesIn(visit('', HEADER, 'split jo 50%, nia 50%'))).toEqual([]);
  });

  test('is silent where the name is found as a hand', () => {
    expect(rulesIn(visit('stylist io "Io"', `${HEADER} by jo`, 'split jo 50%, io 50%'))).toEqual(['unknown-name']);
  });

  test('offers an entry where no name is near', () => {
    const [found] = findIn(visit('stylist io "Io"', HEADER, 'split quartz 50%, io 50%')).findings;
    expect(found?.todo).toBe('Write an entry `stylist quartz`.');
  });
});
