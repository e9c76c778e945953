import { test } from 'vitest';
import { expectSaid } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  ['on 14:35-14:55 A hairline, top', { period: '14:35-14:55', bowls: ['a'], zones: ['hairline', 'top'] }],
  ['on 14.35 - 14.55 A roots for 7min', { period: '14:35-14:55', bowls: ['a'], zones: ['roots'], minutes: '7min' }],
  ['on A 14:35 roots', { period: '14:35', bowls: ['a'], zones: ['roots'] }],
  ['on 14:35 to 14:55 roots A 20min', { period: '14:35-14:55', bowls: ['a'], zones: ['roots'], minutes: '20min' }],
  ['on 2.38pm A+B', { period: '14:38', bowls: ['a', 'b'] }],
  ['on 2.38 A', { period: '02:38|14:38', bowls: ['a'] }],
  ['on +10 A roots', { period: '+10', bowls: ['a'], zones: ['roots'] }],
  ['on ~14:35 A roots for 7', { period: '~14:35', bowls: ['a'], zones: ['roots'], minutes: '7min' }],
  ['on 23:50-00:20 A all', { period: '23:50-00:20', bowls: ['a'], zones: ['all'] }],
  [
    'check 14:55 hairline gold, top orange',
    {
      seen: [
        { zones: ['hairline'], stage: 'gold' },
        { zones: ['top'], stage: 'orange' },
      ],
      period: '14:55',
    },
  ],
  ['check +10 A hairline orange', { bowls: ['a'], seen: [{ zones: ['hairline'], stage: 'orange' }], period: '+10' }],
  ['check A, B roots yellow?', { bowls: ['a', 'b'], seen: [{ zones: ['roots'], stage: '~yellow' }] }],
  [
    'check 15:05 roots, lengths pale yellow',
    { seen: [{ zones: ['roots', 'lengths'], stage: 'pale-yellow' }], period: '15:05' },
  ],
  [
    'check 9:30 A left orange, top gold, B right yellow',
    {
      bowls: ['a'],
      seen: [
        { zones: ['left'], stage: 'orange' },
        { zones: ['top'], stage: 'gold' },
      ],
      period: '09:30|21:30',
    },
    { bowls: ['b'], seen: [{ zones: ['right'], stage: 'yellow' }], period: '09:30|21:30' },
  ],
  [
    'check 9:30 A left orange, a bit red',
    {
      bowls: ['a'],
      seen: [
        { zones: ['left'], stage: 'orange' },
        { words: ['a', 'bit'], stage: 'red' },
      ],
      period: '09:30|21:30',
    },
  ],
  ['check 15:05 orange to yellow', { seen: ['orange to yellow'], period: '15:05' }],
  ['check roots 7+ still warm', { seen: [{ zones: ['roots'], words: ['still', 'warm'], depth: '7+' }] }],
  [
    'check 15:05 grey 80% covered, band gold',
    {
      seen: [
        { words: ['covered'], grey: '80%' },
        { zones: ['band'], stage: 'gold' },
      ],
      period: '15:05',
    },
  ],
  ['check 15.05 - roots ok', { seen: [{ zones: ['roots'], words: ['ok'] }], period: '15:05' }],
  ['off 15:15 A hairline', { bowls: ['a'], zones: ['hairline'], time: '15:15' }],
  ['off A 15:15 40min', { bowls: ['a'], time: '15:15', claim: '40min' }],
  ['off at 3.15pm A', { bowls: ['a'], time: '15:15' }],
  ['off +40 A top, crown', { bowls: ['a'], zones: ['top', 'crown'], time: '+40' }],
  ['off 15:15', { time: '15:15' }],
  ['heat 14:00-14:20 A', { bowls: ['a'], period: '14:00-14:20' }],
  ['heat 20min', { minutes: '20min' }],
  ['heat lamp 14:00 for 15 min', { words: ['lamp'], period: '14:00', minutes: '15min' }],
  ['wash 15 clarify', { words: ['clarify'], amount: '15' }],
  ['wash 15:30 clarify "twice"', { words: ['clarify'], period: '15:30', says: 'twice' }],
  ['wash 10:15-10:20 A', { bowls: ['a'], period: '10:15|22:15-10:20|22:20' }],
  ['rinse 15:20', { period: '15:20' }],
  ['rinse', {}],
  ['rinse 15:20 nape cold', { zones: ['nape'], words: ['cold'], period: '15:20' }],
  ['dry', {}],
  ['dry 15:40 rough', { words: ['rough'], period: '15:40' }],
  ['dry 10min', { minutes: '10min' }],
  ['cut 15:40-16:10', { period: '15:40-16:10' }],
  ['cut dry', { words: ['dry'] }],
  ['cut 15:40 fringe', { zones: ['fringe'], period: '15:40' }],
  ['reaction +18 A temple burning', { bowls: ['a'], zones: ['temples'], words: ['burning'], time: '+18' }],
  ['reaction 14:53 nape "tingling"', { zones: ['nape'], time: '14:53', says: 'tingling' }],
  ['reaction burning', { words: ['burning'] }],
  ['stopped 13:24 A "rinsed at once"', { bowls: ['a'], time: '13:24', says: 'rinsed at once' }],
  ['stopped', {}],
  ['stopped +20 A nape', { bowls: ['a'], zones: ['nape'], time: '+20' }],
  ['on 14:35h A', { period: '14:35', bowls: ['a'] }],
  ['on 14:35: bowl A roots', { period: '14:35', bowls: ['a'], zones: ['roots'] }],
  ['on 14:35 A & B roots and ends', { period: '14:35', bowls: ['a', 'b'], zones: ['roots', 'ends'] }],
  [
    'check 15:05 A: roots yellow ends orange',
    {
      bowls: ['a'],
      seen: [
        { zones: ['roots'], stage: 'yellow' },
        { zones: ['ends'], stage: 'orange' },
      ],
      period: '15:05',
    },
  ],
  ['check @ 15:05 very pale yellow', { seen: [{ words: ['very'], stage: 'pale-yellow' }], period: '15:05' }],
  ['check 15:05 a bit brassy', { seen: [{ words: ['a', 'bit', 'brassy'] }], period: '15:05' }],
  ['off 15:15 A, B, T', { bowls: ['a', 'b', 't'], time: '15:15' }],
  ['wash basin 15:30', { words: ['basin'], period: '15:30' }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));
