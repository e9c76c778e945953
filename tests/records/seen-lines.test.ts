import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  [
    'start roots 6, lengths 8 warm, grey 30% temples',
    {
      seen: [
        { zones: ['roots'], depth: '6' },
        { zones: ['lengths'], words: ['warm'], depth: '8' },
        { zones: ['temples'], grey: '30%' },
      ],
    },
  ],
  [
    'start roots 6½ ends 9-10',
    {
      seen: [
        { zones: ['roots'], depth: '6.5' },
        { zones: ['ends'], depth: '9-10' },
      ],
    },
  ],
  [
    'start roots 5/6 and lengths 7+',
    {
      seen: [
        { zones: ['roots'], depth: '5-6' },
        { zones: ['lengths'], depth: '7+' },
      ],
    },
  ],
  ['start natural 6', { seen: [{ words: ['natural'], depth: '6' }] }],
  ['want lengths 9 violet', { seen: [{ zones: ['lengths'], words: ['violet'], depth: '9' }] }],
  ['want 9 cool beige', { seen: [{ words: ['cool', 'beige'], depth: '9' }] }],
  ['want lighter at front', { seen: [{ zones: ['front'], words: ['lighter', 'at'] }] }],
  [
    'result lengths 9 violet, roots 6',
    {
      seen: [
        { zones: ['lengths'], words: ['violet'], depth: '9' },
        { zones: ['roots'], depth: '6' },
      ],
    },
  ],
  ['result even', { seen: [{ words: ['even'] }] }],
  [
    'result grey 100% covered, band 7 orange',
    {
      seen: [
        { words: ['covered'], grey: '100%' },
        { zones: ['band'], words: ['orange'], depth: '7' },
      ],
    },
  ],
  ['regrowth 2cm', { length: '2cm' }],
  ['regrowth roots ~20 mm', { length: '~20mm', zones: ['roots'] }],
  ['regrowth 1.5-2 cm', { length: '1.5-2cm' }],
  ['start nat 6 roots', { seen: [{ zones: ['roots'], words: ['nat'], depth: '6' }] }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));
