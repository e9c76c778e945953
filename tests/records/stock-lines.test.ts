import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  [
    'in clay 2 packs 24.00 lot K2231 use-by 2028-01',
    { product: 'clay', amount: '2pack', lot: 'K2231', useBy: '2028-01', price: 24 },
  ],
  ['in cream 7.43 4 packs £27.20 each', { product: 'cream', amount: '4pack', shade: '7/43', price: 27.2 }],
  ['in 2 packs clay', { product: 'clay', amount: '2pack' }],
  ['in gloss 10V 60 g', { product: 'gloss', shade: '10V', amount: '60g' }],
  ['in toner clear 2 packs', { product: 'toner', shade: 'clear', amount: '2pack' }],
  ['count dev-6 640 g', { product: 'dev-6', amount: '640g' }],
  ['count cream 7/43 3 packs', { product: 'cream', shade: '7/43', amount: '3pack' }],
  ['count dev-6 640', { product: 'dev-6', amount: '640' }],
  ['out dev-9 200 g "past its date"', { product: 'dev-9', amount: '200g', says: 'past its date' }],
  ['out cream 7-43 1 pack', { product: 'cream', amount: '1pack', shade: '7/43' }],
  ['out dev-9 200', { product: 'dev-9', amount: '200' }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said, 'stock'));
