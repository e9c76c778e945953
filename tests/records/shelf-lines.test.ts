import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['mix 1:1.5', { ratio: '1:1.5' }],
  ['mix 1:1.5-1:2', { ratio: '1:1.5-2' }],
  ['mix none', {}],
  ['uses cream-dev', { products: ['cream-dev'] }],
  ['uses cream-dev, dev-6', { products: ['cream-dev', 'dev-6'] }],
  ['uses cream-dev dev-6', { products: ['cream-dev', 'dev-6'] }],
  ['strength 3% 6% 9% 12%', { strengths: ['3%', '6%', '9%', '12%'] }],
  ['strength up to 9%', { upTo: '9%' }],
  ['strength 10vol, 20vol', { strengths: ['10vol', '20vol'] }],
  ['time 30-45 min from all-on', { minutes: '30-45min', from: 'all-on' }],
  [
    'time 20 - 50 min from first-on, check every 10 min',
    { minutes: '20-50min', from: 'first-on', checkEvery: '10min' },
  ],
  ['time 35-45 min if 50% grey', { minutes: '35-45min', when: { if: 'grey', percent: 50 } }],
  ['time 20min if on scalp', { minutes: '20min', when: { if: 'on-scalp' } }],
  ['time 20min if with bond', { minutes: '20min', when: { if: 'with', product: 'bond' } }],
  [
    'lift 3% 0-1, 6% 1-2',
    {
      claims: [
        { strength: '3%', low: 0, high: 1 },
        { strength: '6%', low: 1, high: 2 },
      ],
    },
  ],
  ['lift 9% 3', { claims: [{ strength: '9%', low: 3, high: 3 }] }],
  ['lift 20vol 1-2', { claims: [{ strength: '20vol', low: 1, high: 2 }] }],
  [
    'tones 0 natural, 1 ash',
    {
      tones: [
        { digit: '0', tone: 'natural' },
        { digit: '1', tone: 'ash' },
      ],
    },
  ],
  [
    'tones 0 = natural, V violet',
    {
      tones: [
        { digit: '0', tone: 'natural' },
        { digit: 'V', tone: 'violet' },
      ],
    },
  ],
  ['tones 43 copper-gold', { tones: [{ digit: '43', tone: 'copper-gold' }] }],
  ['shades clear, pastel', { shades: ['clear', 'pastel'] }],
  ['shades clear', { shades: ['clear'] }],
  ['shades clear pastel', { shades: ['clear', 'pastel'] }],
  ['pack 60 g 6.80', { amount: '60g', price: 6.8 }],
  ['pack 60g £7,10 from 2027-01-01', { amount: '60g', price: 7.1, from: '2027-01-01' }],
  ['pack 100 g 1.250', { amount: '100g', price: 1.25 }],
  ['pack 1 l', { amount: '1l' }],
  ['reorder at 3 packs', { at: '3pack' }],
  ['reorder 500 g', { at: '500g' }],
  ['reorder at 1', { at: '1' }],
  ['density 1.01', { density: 1.01 }],
  ['density 1,01 g/ml', { density: 1.01 }],
  ['density 0.985', { density: 0.985 }],
  ['keeps 12mo', { keeps: '12mo' }],
  ['keeps 12 months', { keeps: '12mo' }],
  ['keeps 4w', { keeps: '4w' }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said, 'range'));
