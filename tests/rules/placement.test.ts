import { describe, expect, test } from 'vitest';
import outsideHours from '../../src/rules/order/outside-hours.ts';
import bowlUnplaced from '../../src/rules/placement/bowl-unplaced.ts';
import checkNotOn from '../../src/rules/placement/check-not-on.ts';
import mirrorOnMidline from '../../src/rules/placement/mirror-on-midline.ts';
import onNotPlaced from '../../src/rules/placement/on-not-placed.ts';
import placedNotOn from '../../src/rules/placement/placed-not-on.ts';
import turnMismatch from '../../src/rules/placement/turn-mismatch.ts';
import leftAndPlaced from '../../src/rules/placement/zone-left-and-placed.ts';
import heatOnLightener from '../../src/rules/time/heat-on-lightener.ts';
import { foundBy, notesOf, saidBy, visitOf } from './one-rule.ts';

type Case = readonly [string, readonly string[]];

const [A, B, CLAY] = ['bowl A 30 neon teal', 'bowl B 30 neon coral', 'bowl A 40 clay + 80 dev-6'];

describe.each([
  {
    rule: leftAndPlaced,
    silent: [
      ['at another zone', [A, 'place A top', 'leave crown']],
      ['where a part was left', [A, 'place A crown', 'leave crown "round the whorl"']],
      ['where the place is wider', [A, 'place A full-head', 'leave crown']],
      ['where the place is the other half', [A, 'place A left back', 'leave right back']],
      ['where what goes over it does not lighten', [CLAY, B, 'place A top', 'place B all, nape', 'leave nape']],
    ],
    fires: [
      [['leave crown', A, 'on 14:00 A crown'], 'fix: Bowl A goes on crown, and the note leaves crown out.'],
      [
        ['leave crown "stands up"', A, 'place A crown left'],
        'fix: Bowl A goes on crown left, and the note leaves crown out.',
      ],
      [['leave nape', A, 'on 14:00 nape'], 'fix: A bowl goes on nape, and the note leaves nape out.'],
      [
        ['leave nape', CLAY, B, 'place B nape', 'place A nape'],
        'fix: Bowl A goes on nape, and the note leaves nape out.',
      ],
    ],
  },
  {
    rule: onNotPlaced,
    silent: [
      ['where it is placed', [A, 'place A top, nape', 'on 14:00 A nape']],
      ['without a place line', [A, 'on 14:00 A nape']],
      ['without a zone', [A, 'place A top', 'on 14:00 A']],
      ['without a bowl', [A, B, 'place A top', 'on 14:00 nape']],
      ['for ends of what is placed', [A, 'place A lengths', 'on 14:00 A ends']],
    ],
    fires: [
      [
        [A, 'place A top, crown', 'on 14:00 A nape, brow'],
        'mind: Bowl A goes on nape, and is placed at top and crown.',
      ],
    ],
  },
  {
    rule: placedNotOn,
    silent: [
      ['where it went on', [A, 'place A top, nape', 'on 14:00 A top, nape']],
      ['where no zone is said', [A, 'place A top, beard', 'on 14:00 A']],
      ['while nothing is on', [A, 'place A top']],
      ['where the name of the zone is a slip', [A, 'place A top', 'on 14:00 A nape']],
      ['where more of it went on', [A, 'more A 30', 'place A top, nape', 'on 14:00 A top', 'on 14:20 A2 nape']],
    ],
    fires: [
      [
        [A, 'place A top', 'place A nape', 'place A crown', 'on 14:00 A top'],
        'mind: Bowl A is placed at nape, and no `on` line of it says when.',
      ],
      [
        [A, B, 'place A+B top, nape', 'on 14:00 B top'],
        'mind: Bowl A and B is placed at nape, and no `on` line of it says when.',
      ],
      [
        [A, B, 'place A top, nape', 'on 14:00 top'],
        'mind: Bowl A is placed at nape, and no `on` line of it says when.',
      ],
      [
        [A, 'more A 30', 'place A top, nape', 'place A2 crown', 'on 14:00 A top', 'on 14:20 A2 nape'],
        'mind: Bowl A is placed at nape, and no `on` line of it says when.',
      ],
    ],
  },
  {
    rule: turnMismatch,
    silent: [
      ['where they are the same', [A, B, 'place A+B back weave x28 turn A B A']],
      ['without a turn', [A, B, 'place A+B back weave x28']],
    ],
    fires: [
      [[A, B, 'place A+B back weave x28 turn A A'], 'fix: Bowls A and B are placed, and bowls A take turns.'],
      [[A, B, 'place A back weave x28 turn A B'], 'fix: Bowls A are placed, and bowls A and B take turns.'],
    ],
  },
  {
    rule: mirrorOnMidline,
    silent: [
      ['where there is another side', [A, 'place A temples slice x4 mirror']],
      ['beside such a zone', [A, 'place A parting, temples slice x4 mirror']],
      ['without the word', [A, 'place A parting slice x4']],
      ['without a zone', [A, 'place A slice x4 mirror']],
    ],
    fires: [
      [[A, 'place A parting slice x4 mirror'], 'mind: `mirror` stands at parting, which has no other side.'],
      [[A, 'place A back left slice x4 mirror'], 'mind: `mirror` stands at back left, which is one side already.'],
    ],
  },
  {
    rule: bowlUnplaced,
    silent: [
      ['while nothing has a time', [A, B]],
      ['where a run names no bowl', [A, B, 'on 14:00 nape', 'on 14:10 A top']],
      ['where it was left', [A, B, 'on 14:00 A', 'left B 30']],
      ['where it is placed', [A, B, 'on 14:00 A', 'place B nape']],
      ['where it went home', [A, B, 'on 14:00 A', 'home B']],
      ['where more was made of it', [A, B, 'on 14:00 A', 'more B 20']],
      ['where some was taken', [A, B, 'bowl C 10 from B + 10 neon teal', 'on 14:00 A', 'on 14:10 C']],
    ],
    fires: [[[A, B, 'on 14:00 A'], 'mind: Bowl B is mixed, and no line says where or when it went on.']],
  },
  {
    rule: checkNotOn,
    silent: [
      ['where it went on', [A, 'on 14:00 A top', 'check 14:10 top 7, ends 8']],
      ['where the whole head may be meant', [A, 'on 14:00 A', 'check 14:10 brow 7']],
      ['while nothing is on', [A, 'check 14:10 nape 7']],
      ['where it is placed', [A, 'place A nape', 'on 14:00 A top', 'check 14:10 nape 7']],
      ['without a zone', [A, 'on 14:00 A top', 'check 14:10 A 7']],
    ],
    fires: [
      [[A, 'on 14:00 A top', 'check 14:10 top 7, nape 6'], 'mind: The check looks at nape; what went on is on top.'],
    ],
  },
  {
    rule: heatOnLightener,
    silent: [
      ['off the scalp', [CLAY, 'place A top off-scalp 1cm', 'on 14:00 A top', 'heat 14:05-14:15 A', 'off 14:30 A']],
      ['at colour', [A, 'place A roots on-scalp', 'on 14:00 A', 'heat 14:05-14:15 A', 'off 14:30 A']],
      ['without heat', [CLAY, 'place A roots on-scalp', 'on 14:00 A', 'off 14:30 A']],
      ['where the bowl is not mixed', ['on 14:00 A', 'heat 14:05-14:15 A', 'off 14:30 A']],
    ],
    fires: [
      [
        [CLAY, 'place A roots on-scalp', 'on 14:00 A', 'heat 14:05-14:15 A', 'off 14:30 A'],
        'fix: Heat goes on bowl A, clay, on the scalp.',
      ],
    ],
  },
] satisfies readonly {
  rule: Parameters<typeof saidBy>[0];
  silent: readonly Case[];
  fires: readonly (readonly [readonly string[], string])[];
}[])('$rule.name', ({ rule, silent, fires }) => {
  test.each(silent as readonly Case[])('is silent %s', (_, lines) => {
    expect(saidBy(rule, notesOf([], visitOf(...lines)))).toEqual([]);
  });

  test.each(fires as readonly (readonly [readonly string[], string])[])('fires at %s', (lines, said) => {
    expect(saidBy(rule, notesOf([], visitOf(...lines)))).toEqual([said]);
  });
});

describe('outside-hours', () => {
  const salon = ['salon harbour "Harbour Row"', '  hours 9:00-19:00'];
  const said = (...lines: readonly string[]): string[] =>
    foundBy(outsideHours, notesOf([], visitOf(A, ...lines), salon)).map(({ message, label }) => `${message} ${label}`);

  test('an hour early or late is no slip', () => {
    expect(said('on 08:00 A', 'off 20:00 A')).toEqual([]);
    expect(said('on 14:00 A')).toEqual([]);
  });

  test('one that is further out is told, once a visit', () => {
    expect(said('on 02:00 A', 'off 02:20 A')).toEqual(['02:00 is outside the hours, 09:00 to 19:00. before opening']);
    expect(said('on 18:00 A', 'off 20:20 A')).toEqual(['20:20 is outside the hours, 09:00 to 19:00. after closing']);
  });

  test('a salon without hours has no outside', () => {
    const lines = visitOf(A, 'on 02:00 A', 'off 02:20 A');
    expect(saidBy(outsideHours, notesOf([], lines))).toEqual([]);
    expect(saidBy(outsideHours, notesOf([], lines, salon.slice(0, 1)))).toEqual([]);
  });
});
