import { describe, expect, test } from 'vitest';
import { joinSources } from '../../src/journal/journal.ts';
import { readSource } from '../../src/journal/source.ts';
import type { VisitReckoned } from '../../src/reckon/model.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { findIn, saidIn } from './compile.ts';

/** Minutes without a clock, foils out in the order they went in, and what the leaflet's minutes count from. */

const SHELF = `product dev-6 "Cream developer" developer 6%
product act "Activator" developer 1.9%
product clay "Peregrine clay" lightener
  time 20-50 min from first-on
range cream "Larkfield cream" permanent
  time 30-45 min from all-on
  tones 0 natural
range toner "Tidewater toner" toner
  time 5-15 min from all-on
  tones 1 ash
client wren-abbott "Wren Abbott"
  grey 60%
  test skin 2026-09-01 11:00 read 2026-09-03 11:30 clear
  test strand 2026-09-01 clay 20min "springs back"
visit 2026-09-04 wren-abbott
`;
const A = 'bowl A 40 clay + 80 dev-6';
const C = 'bowl C 30 cream 6/0 + 45 dev-6';
const T = 'bowl T 20 toner 9/1 + 20 act';

const notes = (...lines: string[]): string => `${SHELF}${lines.map((line) => `  ${line}`).join('\n')}\n`;
const said = (...lines: string[]): string[] => saidIn(notes(...lines));
const visitOf = (...lines: string[]): VisitReckoned => {
  const journal = joinSources([readSource('n.bowl', new TextEncoder().encode(notes(...lines)))]);
  return reckonAll(journal).get('wren-abbott')?.[0] as VisitReckoned;
};
const minutesOf = (...lines: string[]): string[] =>
  visitOf(...lines).clock.unclocked.map(
    ({ bowl, zone, minutes, last }) => `${bowl} ${zone} ${minutes?.least}${last ? ' last' : ''}`,
  );

describe('minutes without a clock', () => {
  test.each([
    ['on T roots for 8min', 'T roots 8'],
    ['on T roots 8min', 'T roots 8'],
    ['on roots T for 8', 'T roots 8'],
    ['on T lengths last 2min', 'T lengths 2 last'],
    ['on T lengths for the last 2 min', 'T lengths 2 last'],
  ])('are read: %s', (line, expected) => {
    const visit = visitOf(T, line);
    expect(minutesOf(T, line)).toEqual([expected]);
    // No time of day is made up.
    expect(visit.clock.runs).toEqual([]);
    expect(visit.clock.span).toBeUndefined();
  });

  test('stand on the `off` line as well, which goes before what was meant', () => {
    expect(minutesOf(T, 'on T roots for 8min', 'off T 11min')).toEqual(['T roots 11']);
    expect(minutesOf(T, 'on T roots, lengths', 'off T 8min', 'off T lengths 3min')).toEqual([
      'T roots 8',
      'T lengths 3',
    ]);
    expect(visitOf(T, 'on 14:40 T', 'off T 8min').clock.runs.map(({ off, told }) => [off, told])).toEqual([
      [undefined, 8],
    ]);
  });

  test('a figure that may be a time is asked about', () => {
    expect(said(T, 'on T 1435 roots').join()).toMatch(/not-read|bad-time/);
    expect(said(T, 'on').join()).toContain('bad-time');
  });

  test.each([
    ['past', 'on T roots for 20min', 'fix past-time: Bowl T roots was on for 20 min, 5 min past its time.'],
    ['short', 'on T roots for 3min', 'mind under-time: Bowl T roots was on for 3 min, 2 min short.'],
    ['neither', 'on T roots', 'fix no-off: Bowl T roots went on, with neither a time nor minutes.'],
  ])('count for the leaflet: %s', (_, line, expected) => {
    expect(said(T, line).filter((one) => /time:|no-off/.test(one))).toEqual([expected]);
  });

  test('lightener far past its time is a stop without a clock as well', () => {
    expect(said(A, 'on A top for 70min').join()).toContain('stop past-time: Bowl A top was on for 70 min, 20 min past');
  });

  test('a cover over grey that is taken off early is a fix, by the client’s own grey', () => {
    expect(said(C, 'on C roots for 20min')).toEqual([
      'fix under-time: Bowl C roots was on for 20 min, 10 min short, over grey.',
    ]);
  });

  test('five minutes short of a cover is worth a thought and no more', () => {
    expect(said(C, 'on C roots for 25min', 'result 6').join()).toContain('mind under-time');
    expect(said(C, 'on C roots for 24min', 'result 6').join()).toContain('fix under-time');
  });

  test('and for a missing result, for what is placed, and for the last minutes', () => {
    expect(said(T, 'place T roots', 'on T roots for 8min', 'charge toner 20').join()).toContain('result-missing');
    expect(said(T, 'place T roots', 'on T roots for 8min', 'on T lengths last 2min', 'result 9')).toEqual([]);
  });
});

describe('foils out in the order they went in', () => {
  const sections = (...lines: string[]): string[] =>
    visitOf(...lines).clock.runs.map(
      ({ zone, off, sections: of }) => `${zone} ${of?.firstOff}-${off}: ${of?.least} to ${of?.most}`,
    );

  test('one bowl: first to first and last to last', () => {
    // 14:00 to 14:48 is 48 min, 14:20 to 15:01 is 41.
    expect(sections(A, 'on 14:00-14:20 A top', 'off 14:48-15:01 A')).toEqual(['top 888-901: 41 to 48']);
  });

  test('several bowls come off linearly between the first on and the last on', () => {
    // On 14:00 to 14:40 and off 14:45 to 15:05: half as fast again, so 14:20 comes off at 14:55.
    expect(sections(A, 'on 14:00-14:20 A back', 'on 14:20-14:40 A top', 'off 14:45-15:05')).toEqual([
      'back 885-895: 35 to 45',
      'top 895-905: 25 to 35',
    ]);
  });

  test('the longest section counts for past-time, and one that is not long is silent', () => {
    const looks = ['check 14:20 A gold', 'check 14:40 A yellow'];
    expect(said(A, 'on 14:00-14:20 A top', ...looks, 'off 14:48-15:01 A', 'result 9')).toEqual([]);
    expect(said(A, 'on 14:00-14:20 A top', ...looks, 'off 14:58-15:05 A', 'result 9')).toEqual([
      'stop past-time: Bowl A top was on for 58 min, section by section, 8 min past its time.',
    ]);
  });

  test('of one minute on, only the first section is held against the clock', () => {
    expect(sections(A, 'on 14:00 A top', 'off 14:48-15:01 A')).toEqual(['top 888-901: 48 to 48']);
  });
});

describe('minutes that fit only the other clock', () => {
  test('are named, beside what is past its time in one finding', () => {
    expect(said(A, 'on 14:00-14:14 A top', 'check 14:30 A gold', 'off 14:50 A 36min', 'result 9')).toEqual([
      'mind minutes-other-clock: Bowl A top: 36 min is typed, which is from all on; from first on it is 50 min.',
    ]);
    const past = findIn(notes(A, 'on 14:00-14:20 A top', 'check 14:30 A gold', 'off 15:00 A 40min', 'result 9'));
    expect(past.findings.map(({ rule }) => rule)).toEqual(['past-time']);
    expect(past.findings[0]?.expected).toContain('The 40 min typed count from all on.');
  });
});

describe('a reason in the remark of its own line', () => {
  test.each(['on purpose, soft', 'so gewollt', 'exprès', 'de propósito', 'a petición de ella'])(
    'answers: %s',
    (why) => {
      expect(said(C, 'on 14:00 C roots', `off 14:20 C "${why}"`, 'result 6')).toEqual([]);
      expect(findIn(notes(C, 'on 14:00 C roots', `off 14:20 C "${why}"`)).answered.map(({ reason }) => reason)).toEqual(
        [why],
      );
    },
  );

  test.each(['not on purpose', 'nicht absichtlich', 'a minute late', 'purpose unclear'])('does not: %s', (why) => {
    expect(said(C, 'on 14:00 C roots', `off 14:20 C "${why}"`, 'result 6').join()).toContain('under-time');
  });

  test('never a stop', () => {
    expect(said(A, 'on 14:00 A', 'check 14:30 A gold', 'off 15:10 A "on purpose"', 'result 9').join()).toContain(
      'stop past-time',
    );
  });
});

describe('a toner over what was seen last', () => {
  const over = (...lines: string[]): string[] =>
    said(A, 'on 14:00 A top, nape', ...lines, 'result 9').filter((line) => line.includes('toner-over-dark'));
  const DARK = 'fix toner-over-dark: Bowl T is depth 9 (9/1), over orange at the nape.';

  test.each([
    [
      'one place of two',
      ['check 14:30 A top yellow, nape orange', 'off 14:31 A', T, 'on 14:40 T', 'off 14:48 T'],
      [DARK],
    ],
    [
      'cleared by a later look, at the basin',
      [
        'check 14:30 A top yellow, nape orange',
        'off 14:31 A',
        'check 14:38 nape yellow',
        T,
        'on 14:40 T',
        'off 14:48 T',
      ],
      [],
    ],
    [
      'by a look without a time',
      ['check 14:30 A top yellow, nape yellow', 'off 14:31 A', 'check nape orange', T, 'on 14:40 T', 'off 14:48 T'],
      [DARK],
    ],
    [
      'by a depth',
      ['check 14:30 A yellow', 'off 14:31 A', 'check 14:35 nape 6', T, 'on 14:40 T', 'off 14:48 T'],
      ['mind toner-over-dark: Bowl T is depth 9 (9/1), over depth 6 at the nape.'],
    ],
    [
      'not by a look at the toner itself',
      ['check 14:30 A yellow', 'off 14:31 A', T, 'on 14:40 T', 'check 14:45 T nape 6', 'off 14:48 T'],
      [],
    ],
    [
      'not by a look long before it came off',
      ['check 14:10 A orange', 'off 14:31 A', T, 'on 14:40 T', 'off 14:48 T'],
      [],
    ],
    ['without a clock', ['check 14:30 A top yellow, nape orange', 'off 14:31 A', T, 'on T for 8min'], [DARK]],
  ])('%s', (_, lines, expected) => {
    expect(over(...lines)).toEqual(expected);
  });

  test('by the shelf’s own line', () => {
    const toned = (shelf: string, stage: string): string[] =>
      saidIn(
        notes(
          A,
          'on 14:00 A top',
          `check 14:30 A ${stage}`,
          'off 14:31 A',
          T,
          'on 14:40 T',
          'off 14:48 T',
          'result 9',
        ).replace('  tones 1 ash', `  ${shelf}\n  tones 1 ash`),
      ).filter((line) => line.includes('toner-over-dark'));
    expect(toned('over 4', 'orange')).toEqual([]);
    expect(toned('over 4 darker', 'orange')).toEqual([]);
    expect(toned('over 8', 'gold')).toHaveLength(1);
    expect(toned('over 1 darker', 'gold')).toHaveLength(1);
  });
});

describe('weights that cannot be', () => {
  test.each([
    ['bowl A 40 clay + 80 dev-6\n  left A 121', 'stop more-left-than-mixed: Bowl A was 120 g, and 121 g are left.'],
    [
      'bowl A 20 clay + 20 dev-6\n  bowl B 50 from A + 10 dev-6',
      'stop more-left-than-mixed: Bowl A was 40 g, and 50 g are taken out.',
    ],
  ])('%s', (lines, expected) => {
    expect(said(lines).filter((line) => line.includes('more-left'))).toEqual([expected]);
  });
});

describe('sound practice', () => {
  test('a bleach wash has no leaflet’s ratio', () => {
    const wash = (bowl: string): string[] =>
      saidIn(
        `product clarify "Wash" conditioner\n${notes(bowl, 'on 10:10 A lengths', 'check 10:15 A yellow', 'off 10:31 A', 'result 9')}`.replace(
          '  time 20-50',
          '  mix 1:1.5-1:2\n  time 20-50',
        ),
      ).filter((line) => line.includes('ratio-off-mix'));
    expect(wash('bowl A 20 clay + 20 dev-6 + 30 clarify')).toEqual([]);
    expect(wash('bowl A 20 clay + 20 dev-6 + 3 clarify')).toHaveLength(1);
  });

  test('peroxide alone softens white hair before colour', () => {
    expect(
      said('bowl P 15 dev-6', C, 'on 10:10 P hairline', 'off 10:20 P', 'on 10:26 C roots', 'off 11:00 C', 'result 6'),
    ).toEqual([]);
  });

  test('lightener that is placed at a visit that is over wants its time', () => {
    const LINE =
      'fix lightener-not-on: Bowl A, lightener, is placed at top, and no line says when it went on or came off.';
    expect(said(A, 'place A top weave x8 off-scalp 1cm foil', 'result top 9')).toEqual([LINE]);
    expect(said(A, 'place A top weave x8 off-scalp 1cm foil')).toEqual([]);
    expect(said(A, 'place A top weave x8 off-scalp 1cm foil', 'left A 120 binned', 'result top 6')).toEqual([]);
  });
});
