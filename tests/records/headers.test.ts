import { expect, test } from 'vitest';
import { readSource } from '../../src/journal/source.ts';
import { sliceOf } from '../../src/text/span.ts';
import { headOf } from './one-line.ts';

const lines: readonly (readonly [line: string, head: object])[] = [
  ['salon harbour "Harbour Row"', { kind: 'salon', name: 'harbour', full: 'Harbour Row' }],
  ['salon harbour', { kind: 'salon', name: 'harbour' }],
  ['SALON Harbour', { kind: 'salon', name: 'harbour' }],
  ['stylist io "Io" at harbour', { kind: 'stylist', name: 'io', full: 'Io', salon: 'harbour' }],
  ['stylist io', { kind: 'stylist', name: 'io' }],
  ['stylist io at harbour', { kind: 'stylist', name: 'io', salon: 'harbour' }],
  [
    'range cream "Larkfield cream" permanent',
    { kind: 'range', name: 'cream', full: 'Larkfield cream', kindWord: 'permanent', type: 'permanent' },
  ],
  ['range cream permanent', { kind: 'range', name: 'cream', kindWord: 'permanent', type: 'permanent' }],
  ['range gloss "Gloss" demi', { kind: 'range', name: 'gloss', full: 'Gloss', kindWord: 'demi', type: 'demi' }],
  [
    'product clay "Peregrine clay" lightener',
    { kind: 'product', name: 'clay', full: 'Peregrine clay', kindWord: 'lightener', type: 'lightener' },
  ],
  [
    'product dev-6 "Cream developer" developer 6%',
    {
      kind: 'product',
      name: 'dev-6',
      full: 'Cream developer',
      kindWord: 'developer',
      type: 'developer',
      strength: '6%',
    },
  ],
  [
    'product dev 20vol developer',
    { kind: 'product', name: 'dev', kindWord: 'developer', type: 'developer', strength: '20vol' },
  ],
  [
    'product bond "Bond" additive in ratio',
    { kind: 'product', name: 'bond', full: 'Bond', inRatio: true, kindWord: 'additive', type: 'additive' },
  ],
  ['stock 2026-08-01 at harbour', { kind: 'stock', date: '2026-08-01', salon: 'harbour' }],
  ['stock 2026-08-01 18:30', { kind: 'stock', date: '2026-08-01', time: '18:30' }],
  ['stock 2026-08-01 "after the sale"', { kind: 'stock', says: 'after the sale', date: '2026-08-01' }],
  ['client wren-abbott "Wren Abbott"', { kind: 'client', name: 'wren-abbott', full: 'Wren Abbott' }],
  ['client wren-abbott', { kind: 'client', name: 'wren-abbott' }],
  ['client: zoë “Zoë”', { kind: 'client', name: 'zoë', full: 'Zoë' }],
  [
    'visit 2026-09-04 14:00 wren-abbott by io at harbour',
    { kind: 'visit', date: '2026-09-04', time: '14:00', client: 'wren-abbott', by: 'io', salon: 'harbour' },
  ],
  ['visit wren-abbott 2026-09-04 at 2pm', { kind: 'visit', client: 'wren-abbott', date: '2026-09-04', time: '14:00' }],
  [
    'Visit: 2026-09-04 14.00 wren-abbott "in a hurry"',
    { kind: 'visit', says: 'in a hurry', date: '2026-09-04', time: '14:00', client: 'wren-abbott' },
  ],
];

test.for(lines)('%s', ([line, head]) => expect(headOf(line)).toEqual(head));

test.each(['stock 2026-08-01 2026-08-02', 'visit 2026-08-01 2026-08-02 wren'])(
  'a second date is told of: %s',
  (line) => {
    const [stood] = readSource('notes.bowl', Buffer.from(line)).entries;
    expect(headOf(line)).toMatchObject({ date: '2026-08-01' });
    expect(stood?.notices.map(({ rule, at }) => [rule, sliceOf(line, at)])).toEqual([['not-read', '2026-08-02']]);
  },
);
