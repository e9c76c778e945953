import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['charge foils 95.00', { item: 'foils', amount: 95 }],
  ['charge 95 foils', { item: 'foils', amount: 95 }],
  ['charge foils £95, cut 40', { item: 'foils', amount: 95 }, { item: 'cut', amount: 40 }],
  ['charge total 82', { item: 'total', total: true, amount: 82 }],
  ['charge discount 20%', { item: 'discount', discount: 20 }],
  ['charge 40 "fringe trim"', { amount: 40, says: 'fringe trim' }],
  ['charge cut & blow-dry 40,50', { item: 'cut blow-dry', amount: 40.5 }],
  ['deposit 100 for 2026-12-12', { amount: 100, for: '2026-12-12' }],
  ['deposit used £50', { used: true, amount: 50 }],
  ['deposit returned 50', { returned: true, amount: 50 }],
  ['paid 210 card', { how: ['card'], amount: 210 }],
  ['paid 100 card, 20 cash', { how: ['card'], amount: 100 }, { how: ['cash'], amount: 20 }],
  ['paid cash 50', { how: ['cash'], amount: 50 }],
  [
    'split jo 50%, nia 50%',
    {
      shares: [
        { by: 'jo', percent: 50 },
        { by: 'nia', percent: 50 },
      ],
    },
  ],
  ['split jo 60', { shares: [{ by: 'jo', percent: 60 }] }],
  [
    'split io 33.3%, nia 66.7%',
    {
      shares: [
        { by: 'io', percent: 33.3 },
        { by: 'nia', percent: 66.7 },
      ],
    },
  ],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));
