import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['measure scoop 10 g', { measure: 'scoop', amount: '10g' }],
  ['measure scoop = 10g', { measure: 'scoop', amount: '10g' }],
  ['measure spoon ~5 g', { measure: 'spoon', amount: '~5g' }],
  ['scalp to 6%', { upTo: '6%' }],
  ['scalp never', {}],
  ['scalp up to 20vol', { upTo: '20vol' }],
  ['dose 1-2 per 10', { low: 1, high: 2, per: 10 }],
  ['dose 1 per 10 g', { low: 1, high: 1, per: 10 }],
  ['dose 0.5 per 30', { low: 0.5, high: 0.5, per: 30 }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said, 'product'));
