import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const visit: readonly (readonly [line: string, ...said: object[]])[] = [
  ['next 2027-03', { month: '2027-03' }],
  [
    'bowl A 30 clay + 60 7.5% from dev-6, dev-9',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '30' },
        { strength: '7.5%', blend: ['dev-6', 'dev-9'], amount: '60' },
      ],
    },
  ],
  [
    'bowl A 30 clay + 6% 1:2?',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '30' },
        { strength: '6%', ratio: '~1:2' },
      ],
    },
  ],
  ['check hairline orange to yellow?', { seen: [{ zones: ['hairline'], stage: '~orange to yellow' }] }],
];

test.for(visit)('%s', ([line, ...said]) => expectSaid(line, said));
