import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['money GBP', { currency: 'gbp' }],
  ['money gbp', { currency: 'gbp' }],
  ['money EUR "since 2025"', { currency: 'eur', says: 'since 2025' }],
  ['scale 1 g', { step: '1g' }],
  ['scale 0.1', { step: '0.1' }],
  ['scale ½ g', { step: '0.5g' }],
  ['hours 9:00-19:00', { from: '09:00|21:00', to: '19:00' }],
  ['hours 9-19', { from: '09:00|21:00', to: '19:00' }],
  ['hours 9am to 7pm', { from: '09:00', to: '19:00' }],
  ['growth 0.35 mm/d', { rate: 0.35 }],
  ['growth 1 cm / month', { rate: 0.32854209445585214 }],
  ['growth 7mm/w', { rate: 1 }],
  ['policy law eu', { topic: 'law', words: ['eu'] }],
  ['policy skin-test 48h every 26w', { topic: 'skin-test', words: ['every'], durations: ['48h', '26w'] }],
  ['policy skin test void after reaction', { topic: 'skin-test', words: ['void', 'after', 'reaction'] }],
  ['policy under 16 temporary only', { topic: 'under', words: ['temporary', 'only'], numbers: [16] }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said, 'salon'));
