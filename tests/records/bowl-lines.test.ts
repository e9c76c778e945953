import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  [
    'bowl A 40 clay + 20vol 1:2',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '40' },
        { strength: '20vol', ratio: '1:2' },
      ],
    },
  ],
  [
    'bowl A 7/0 30 cream + 6% 1:1',
    {
      bowl: 'a',
      parts: [
        { shade: '7/0', product: 'cream', amount: '30' },
        { strength: '6%', ratio: '1:1' },
      ],
    },
  ],
  [
    'bowl A 30 7/0 cream + 6% 1:1',
    {
      bowl: 'a',
      parts: [
        { shade: '7/0', product: 'cream', amount: '30' },
        { strength: '6%', ratio: '1:1' },
      ],
    },
  ],
  [
    'bowl A cream 30 7/0, 30 dev-6',
    {
      bowl: 'a',
      parts: [
        { product: 'cream', shade: '7/0', amount: '30' },
        { product: 'dev-6', amount: '30' },
      ],
    },
  ],
  [
    'bowl a: 40g clay,80g 20vol,2g bond',
    {
      bowl: 'a',
      parts: [
        { amount: '40g', product: 'clay' },
        { strength: '20vol', amount: '80g' },
        { amount: '2g', product: 'bond' },
      ],
    },
  ],
  [
    'BOWL A 20vol 80+clay 40',
    {
      bowl: 'a',
      parts: [
        { strength: '20vol', amount: '80' },
        { product: 'clay', amount: '40' },
      ],
    },
  ],
  [
    'bowl A = 40 clay + 80 dev 6%',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '40' },
        { product: 'dev', strength: '6%', amount: '80' },
      ],
    },
  ],
  [
    'bowl A 6.1 15 cream + 15 3%',
    {
      bowl: 'a',
      parts: [
        { product: 'cream', shade: '6/1', amount: '15' },
        { strength: '3%', amount: '15' },
      ],
    },
  ],
  [
    'bowl A 10V 30 gloss + 30 gloss-dev',
    {
      bowl: 'a',
      parts: [
        { product: 'gloss', shade: '10V', amount: '30' },
        { product: 'gloss-dev', amount: '30' },
      ],
    },
  ],
  ['bowl A 30 6G gloss', { bowl: 'a', parts: [{ product: 'gloss', shade: '6G', amount: '30' }] }],
  ['bowl A 6G 30 gloss', { bowl: 'a', parts: [{ product: 'gloss', shade: '6G', amount: '30' }] }],
  ['bowl A 6G gloss', { bowl: 'a', parts: [{ amount: '6g', product: 'gloss' }] }],
  ['bowl A 30g cream 7-43', { bowl: 'a', parts: [{ product: 'cream', shade: '7/43', amount: '30g' }] }],
  ['bowl A 30g cream 7,43', { bowl: 'a', parts: [{ product: 'cream', shade: '7/43', amount: '30g' }] }],
  [
    'bowl A 15 7/3 + 15 7/1 + 30 6%',
    {
      bowl: 'a',
      parts: [
        { shade: '7/3', amount: '15' },
        { shade: '7/1', amount: '15' },
        { strength: '6%', amount: '30' },
      ],
    },
  ],
  ['bowl A 20 toner clear', { bowl: 'a', parts: [{ product: 'toner', second: 'clear', amount: '20' }] }],
  [
    'bowl A 40 clay + 20vol 1:1½',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '40' },
        { strength: '20vol', ratio: '1:1.5' },
      ],
    },
  ],
  [
    'bowl A 40 clay + 20vol 1 : 1,5',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '40' },
        { strength: '20vol', ratio: '1:1.5' },
      ],
    },
  ],
  [
    'bowl A ~22 clay + 22? 20vol',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '~22' },
        { strength: '20vol', amount: '~22' },
      ],
    },
  ],
  [
    'bowl A ½ tube cream 7/0',
    { bowl: 'a', parts: [{ product: 'tube', second: 'cream', shade: '7/0', amount: '0.5' }] },
  ],
  ['bowl A 1½ scoop clay', { bowl: 'a', parts: [{ product: 'scoop', second: 'clay', amount: '1.5' }] }],
  ['bowl A clay 1 scoop', { bowl: 'a', parts: [{ product: 'clay', amount: '1scoop' }] }],
  [
    'bowl A 40 gr clay + 80 mls 20 volume',
    {
      bowl: 'a',
      parts: [
        { amount: '40g', product: 'clay' },
        { amount: '80ml', strength: '20vol' },
      ],
    },
  ],
  ['bowl A 40,5 clay', { bowl: 'a', parts: [{ product: 'clay', amount: '40.5' }] }],
  [
    'bowl A 1p clay + 2 parts 20vol = 120',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '1p' },
        { amount: '2p', strength: '20vol' },
      ],
      claim: '120',
    },
  ],
  [
    'bowl B 90 g of 2p cream 7/0 + 1p cream 7.43 + 6%',
    {
      bowl: 'b',
      parts: [
        { product: 'cream', shade: '7/0', amount: '2p' },
        { product: 'cream', shade: '7/43', amount: '1p' },
        '6%',
      ],
      total: '90g',
    },
  ],
  [
    'bowl A 40 clay lot K22/31-A + 20vol 1:2',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', lot: 'K22/31-A', amount: '40' },
        { strength: '20vol', ratio: '1:2' },
      ],
    },
  ],
  [
    'bowl C 40 from A + 10 3%',
    {
      bowl: 'c',
      parts: [
        { out: 'a', amount: '40' },
        { strength: '3%', amount: '10' },
      ],
    },
  ],
  [
    'bowl A 30 clay + 7.5% from dev-6 dev-9 1:2',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '30' },
        { strength: '7.5%', blend: ['dev-6', 'dev-9'], ratio: '1:2' },
      ],
    },
  ],
  [
    'bowl A 3 drops bond + 10 ml water',
    {
      bowl: 'a',
      parts: [
        { amount: '3drop', product: 'bond' },
        { amount: '10ml', product: 'water' },
      ],
    },
  ],
  [
    'bowl A 40 clay "thick" + 80 20vol by nia',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '40' },
        { strength: '20vol', amount: '80' },
      ],
      by: 'nia',
      says: 'thick',
    },
  ],
  ['bowl A2 40 clay # the second tub', { bowl: 'a2', parts: [{ product: 'clay', amount: '40' }] }],
  ['plus A 3 bond', { bowl: 'a', parts: [{ product: 'bond', amount: '3' }] }],
  ['plus A bond 3g', { bowl: 'a', parts: [{ product: 'bond', amount: '3g' }] }],
  [
    'plus b2 3 bond + 1 drop oil',
    {
      bowl: 'b2',
      parts: [
        { product: 'bond', amount: '3' },
        { amount: '1drop', product: 'oil' },
      ],
    },
  ],
  [
    'weighed A 41 clay, 82 dev-6',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '41' },
        { product: 'dev-6', amount: '82' },
      ],
    },
  ],
  [
    'weighed A 41 clay + 82 20vol',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '41' },
        { strength: '20vol', amount: '82' },
      ],
    },
  ],
  ['weighed a clay 41', { bowl: 'a', parts: [{ product: 'clay', amount: '41' }] }],
  ['again A from 2026-07-10 A 80%', { bowl: 'a', from: { date: '2026-07-10', bowl: 'a' }, share: '80%' }],
  ['again b2 from b1 50%', { bowl: 'b2', from: { bowl: 'b1' }, share: '50%' }],
  [
    'again A from wren-abbott 2026-07-10 B',
    { bowl: 'a', from: { client: 'wren-abbott', date: '2026-07-10', bowl: 'b' } },
  ],
  ['again A 2026-07-10', { bowl: 'a', from: { date: '2026-07-10' } }],
  ['more A 60 at 10:55', { bowl: 'a', amount: '60', time: '10:55|22:55' }],
  ['more A 60g 10.55', { bowl: 'a', amount: '60g', time: '10:55|22:55' }],
  ['more A', { bowl: 'a' }],
  ['left A 14 binned', { left: [{ bowl: 'a', amount: '14' }], fate: 'binned' }],
  [
    'left A 14g, T 3 kept',
    {
      left: [
        { bowl: 'a', amount: '14g' },
        { bowl: 't', amount: '3' },
      ],
      fate: 'kept',
    },
  ],
  ['left 14 A', { left: [{ bowl: 'a', amount: '14' }] }],
  [
    'left A 14 B 3',
    {
      left: [
        { bowl: 'a', amount: '14' },
        { bowl: 'b', amount: '3' },
      ],
    },
  ],
  ['left A ~14 given', { left: [{ bowl: 'a', amount: '~14' }], fate: 'given' }],
  [
    'home M 12 + 180 conditioner',
    {
      bowl: 'm',
      parts: [
        { amount: '12', out: 'm' },
        { product: 'conditioner', amount: '180' },
      ],
    },
  ],
  ['home 250 shampoo', { parts: [{ product: 'shampoo', amount: '250' }] }],
  ['home shampoo, mask', { parts: ['shampoo', 'mask'] }],
  [
    'bowl A, 40 clay + 80 20vol (1:2)',
    {
      bowl: 'a',
      parts: [
        { product: 'clay', amount: '40' },
        { strength: '20vol', ratio: '1:2', amount: '80' },
      ],
    },
  ],
  ['bowl A 20 cream 6-RV + 6%', { bowl: 'a', parts: [{ product: 'cream', shade: '6/RV', amount: '20' }, '6%'] }],
  ['bowl A 20 cream 55.46', { bowl: 'a', parts: [{ product: 'cream', shade: '55/46', amount: '20' }] }],
  ['bowl A cream 7.43 30,5', { bowl: 'a', parts: [{ product: 'cream', shade: '7/43', amount: '30.5' }] }],
  ['bowl A 5 cream 0/00', { bowl: 'a', parts: [{ product: 'cream', shade: '0/00', amount: '5' }] }],
  ['bowl A 40 clay,', { bowl: 'a', parts: [{ product: 'clay', amount: '40' }] }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));
