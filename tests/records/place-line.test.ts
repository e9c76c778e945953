import { expect, test } from 'vitest';
import { expectSaid, spotsOf } from './one-line.ts';

const lines: readonly (readonly [line: string, ...said: object[]])[] = [
  [
    'place A hairline slice x2 gap 0 mirror off-scalp 1cm foil',
    {
      bowls: ['a'],
      zones: ['hairline'],
      mirror: true,
      technique: 'slice',
      sections: 2,
      gap: '0',
      scalp: 'off',
      clear: '1cm',
      cover: 'foil',
    },
  ],
  [
    'place A+B back weave x28 turn A B A',
    { bowls: ['a', 'b'], zones: ['back'], technique: 'weave', sections: 28, turn: ['a', 'b', 'a'] },
  ],
  [
    'place A, B back left fine weaves x 6 foils',
    { bowls: ['a', 'b'], zones: ['back left'], technique: 'fine-weave', sections: 6, cover: 'foil' },
  ],
  ['place A half head on scalp', { bowls: ['a'], zones: ['half-head'], scalp: 'on' }],
  ['place roots A 1cm off scalp', { bowls: ['a'], zones: ['roots'], clear: '1cm', scalp: 'off' }],
  ['place A T-section, nape babylight', { bowls: ['a'], zones: ['t-section', 'nape'], technique: 'babylight' }],
  ['place A band paint open', { bowls: ['a'], zones: ['band'], technique: 'paint', cover: 'open' }],
  [
    'place A top weave x6, crown x4 gap 10 mm',
    { bowls: ['a'], zones: ['top', 'crown'], technique: 'weave', sections: 10, gap: '10mm' },
  ],
  ['leave crown "stands up"', { zones: ['crown'], says: 'stands up' }],
  ['leave fringe, nape', { zones: ['fringe', 'nape'] }],
  ['leave fringe & back left', { zones: ['fringe', 'back left'] }],
  ['place A: top + sides', { bowls: ['a'], zones: ['top', 'sides'] }],
  ['place A left side', { bowls: ['a'], zones: ['left sides'] }],
  ['place A partings x4', { bowls: ['a'], zones: ['parting'], sections: 4 }],
];

test.for(lines)('%s', ([line, ...said]) => expectSaid(line, said));

test.each(['10p', '10g', '5min'])('a gap of %s is told of', (width) => {
  expect(spotsOf(`place A top weave x6 gap ${width}`)).toEqual([`not-read: ${width}`]);
});
