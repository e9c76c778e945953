import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['hold lightener to 2027-01 "ends gummy"', { what: 'lightener', until: '2027-01', says: 'ends gummy' }],
  ['hold oxidative for 4 weeks', { what: 'oxidative', length: '4w' }],
  ['hold all', { what: 'all' }],
  ['hold cream from 2026-09-01 to 2026-12-01', { what: 'cream', from: '2026-09-01', until: '2026-12-01' }],
  ['because ratio-off-mix "runny on purpose"', { rule: 'ratio-off-mix', says: 'runny on purpose' }],
  ['because no-check "alone"', { rule: 'no-check', says: 'alone' }],
  ['because overlap "asked for it" by io', { rule: 'overlap', by: 'io', says: 'asked for it' }],
  ['declined lightener "under 16"', { what: ['lightener'], says: 'under 16' }],
  ['declined', {}],
  ['declined strand test', { what: ['strand', 'test'] }],
  ['fit 2 packs withybed "8 honey"', { amount: '2pack', product: 'withybed', says: '8 honey' }],
  ['fit withybed 8/3 2 packs', { product: 'withybed', shade: '8/3', amount: '2pack' }],
  ['fit withybed', { product: 'withybed' }],
  ['redo 2026-08-30', { date: '2026-08-30' }],
  ['redo 2026-08-30 "patchy crown"', { date: '2026-08-30', says: 'patchy crown' }],
  [
    'about 2026-05-02 ends "went mauve after two washes"',
    { date: '2026-05-02', zones: ['ends'], says: 'went mauve after two washes' },
  ],
  ['about 2026-05-02 "fine"', { date: '2026-05-02', says: 'fine' }],
  ['about 2026-05-02 roots, ends', { date: '2026-05-02', zones: ['roots', 'ends'] }],
  ['call 2026-11-05 10:00 "redness gone"', { date: '2026-11-05', time: '10:00|22:00', says: 'redness gone' }],
  ['call 10.00', { time: '10:00|22:00' }],
  ['call 2026-11-05', { date: '2026-11-05' }],
  ['next 6w', { wait: '6w' }],
  [
    'next 6-8w roots, A -20%',
    {
      changes: [
        { words: ['roots'], text: 'roots' },
        { text: 'A -20%', bowl: 'a', percent: -20 },
      ],
      wait: '6-8w',
    },
  ],
  ['next in 6 weeks', { wait: '6w' }],
  ['next 6 - 8 wks', { wait: '6-8w' }],
  ['next from 2026-12-02', { from: true, date: '2026-12-02' }],
  [
    'next 2026-12-19 14:00 foils',
    { changes: [{ words: ['foils'], text: 'foils' }], date: '2026-12-19', time: '14:00' },
  ],
  [
    'next ~6w a little cooler',
    { changes: [{ words: ['a', 'little', 'cooler'], text: 'a little cooler' }], wait: '~6w' },
  ],
  ['zone band "left, 8 cm down"', { zone: 'band', where: 'left, 8 cm down', says: 'left, 8 cm down' }],
  ['zone band left, top', { zone: 'band', zones: ['left', 'top'] }],
  ['zone half-head top, crown, sides', { zone: 'half-head', zones: ['top', 'crown', 'sides'] }],
  ['next roots 6w', { changes: [{ words: ['roots'], text: 'roots' }], wait: '6w' }],
  [
    'next 6w: a little cooler',
    { changes: [{ words: ['a', 'little', 'cooler'], text: 'a little cooler' }], wait: '6w' },
  ],
  [
    'next b2 cooler, A again',
    {
      changes: [
        { words: ['cooler'], text: 'b2 cooler', bowl: 'b2' },
        { words: ['again'], text: 'A again', bowl: 'a' },
      ],
    },
  ],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));
