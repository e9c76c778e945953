import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  [
    'test skin 2026-09-01 11:00 cream, gloss read 2026-09-03 11:30 clear',
    {
      test: 'skin',
      made: true,
      products: ['cream', 'gloss'],
      read: true,
      result: [{ words: ['clear'] }],
      date: '2026-09-01',
      time: '11:00|23:00',
      readDate: '2026-09-03',
      readTime: '11:30|23:30',
    },
  ],
  [
    'test skin cream 2026-09-01 11.00',
    { test: 'skin', made: true, products: ['cream'], date: '2026-09-01', time: '11:00|23:00' },
  ],
  [
    'test skin read 2026-09-03 11:30 reaction',
    { test: 'skin', read: true, result: [{ words: ['reaction'] }], readDate: '2026-09-03', readTime: '11:30|23:30' },
  ],
  ['test skin not needed "same range"', { test: 'skin', notNeeded: true, says: 'same range' }],
  [
    'test skin cream brow read clear',
    { test: 'skin', made: true, products: ['cream', 'brow'], read: true, result: [{ words: ['clear'] }] },
  ],
  [
    'test strand clay 20min pale yellow',
    { test: 'strand', made: true, products: ['clay'], result: ['pale-yellow'], minutes: '20min' },
  ],
  [
    'test strand 10 clay + 20 20vol nape gummy',
    {
      test: 'strand',
      made: true,
      zones: ['nape'],
      result: [{ zones: ['nape'], words: ['gummy'] }],
      mix: [
        { product: 'clay', amount: '10' },
        { strength: '20vol', amount: '20' },
      ],
    },
  ],
  [
    'test metal 11:05 40 dev-6 + 2 ammonia bubbles',
    {
      test: 'metal',
      made: true,
      result: [{ words: ['bubbles'] }],
      time: '11:05|23:05',
      mix: [
        { product: 'dev-6', amount: '40' },
        { product: 'ammonia', amount: '2' },
      ],
    },
  ],
  [
    'test metal 40 clay lot K-22/31 + 2 ammonia bubbles',
    {
      test: 'metal',
      made: true,
      result: [{ words: ['bubbles'] }],
      mix: [
        { product: 'clay', amount: '40', lot: 'K-22/31' },
        { product: 'ammonia', amount: '2' },
      ],
    },
  ],
  ['test stretch springs-back', { test: 'stretch', made: true, result: [{ words: ['springs-back'] }] }],
  [
    'test porosity high ends',
    { test: 'porosity', made: true, zones: ['ends'], result: [{ zones: ['ends'], words: ['high'] }] },
  ],
  ['test skin patch done 2026-09-01 cream', { test: 'skin', made: true, products: ['cream'], date: '2026-09-01' }],
  ['test strand ok', { test: 'strand', made: true, result: [{ words: ['ok'] }] }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));

test('a product of a test may name its lot, each of several its own', () => {
  for (const line of ['test skin cream lot K1, gloss lot K-2/3', 'test skin cream lot K1 + gloss lot K-2/3'])
    expectSaid(line, [
      {
        test: 'skin',
        made: true,
        mix: [
          { product: 'cream', lot: 'K1' },
          { product: 'gloss', lot: 'K-2/3' },
        ],
      },
    ]);
  expectSaid('test skin cream, gloss lot K1', [
    { test: 'skin', made: true, products: ['cream'], mix: [{ product: 'gloss', lot: 'K1' }] },
  ]);
});
