import { describe, expect, test } from 'vitest';
import paceUnlikely from '../../src/rules/time/pace-unlikely.ts';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';
import { saidBy } from './one-rule.ts';

const SHELF = `
  product dev-6 "Cream developer" developer 6%
  product clay "Peregrine clay" lightener
    time 20-50 min from first-on, check every 10 min
    time 20-35 min if on-scalp
    time 20-40 min if with bond
  product bond "Mender" additive
  product sand "No time line" lightener
  product paste "Only a plain time" lightener
    time 20 min
  range neon "Kelp direct" semi
    mix none
    time 15-30 min from all-on
    time 5-20 min if pre-lightened
    time 25-45 min if grey 50%
    time 20-40 min if grey 30%
    shades teal
  range tint "No kind of clock" semi
    mix none
    time 1 h from first-on
    shades teal
  product cover "Cover" permanent
    mix none
    time 30-45 min from all-on
  product pearl "Pearl toner" demi
    mix none
    time 5-15 min`;

const client = (...lines: string[]): string => ['client wren-abbott "Wren Abbott"', ...lines].join('\n  ');
const visit = (...lines: string[]): string => ['visit 2026-09-04 wren-abbott', ...lines].join('\n  ');
const notes = (...lines: string[]): string => `${textOf(SHELF)}\n${client()}\n${visit(...lines)}\n`;

const CLAY = 'bowl A 40 clay + 80 dev-6';
const LOOKS = ['check 14:10 A orange', 'check 14:20 A gold', 'check 14:30 A yellow', 'check 14:40 A yellow'];

describe('a bowl that goes on in sections', () => {
  const NEON = 'bowl A 30 neon teal';
  const times = (...lines: string[]): string[] =>
    saidIn(notes(...lines)).filter((line) => /(?:past|under)-time/.test(line));

  test.each([
    ['lengths first, then roots', [NEON, 'on 14:00-14:10 A lengths', 'on 14:25-14:35 A roots', 'off 15:00 A']],
    ['section by section', [NEON, 'on 14:00-14:15 A back', 'on 14:15-14:30 A top', 'off 15:00 A']],
    ['ends refreshed for the last minutes', [NEON, 'on 14:00-14:10 A roots', 'on 14:30-14:33 A ends', 'off 14:40 A']],
  ])('is timed from all of it: %s', (_, lines) => {
    expect(times(...lines)).toEqual([]);
  });

  test.each([
    [
      'roots that wait for refreshed ends',
      [NEON, 'on 14:00-14:10 A roots', 'on 14:30-14:33 A ends', 'off 14:45 A'],
      'fix past-time: Bowl A roots was on for 35 min from all on, 5 min past its time.',
    ],
    [
      'all of it too long',
      [NEON, 'on 14:00-14:10 A lengths', 'on 14:25-14:35 A roots', 'off 15:08 A'],
      'fix past-time: Bowl A lengths was on for 33 min from all on, 3 min past its time.',
    ],
    [
      'what came off before the next section',
      [NEON, 'on 14:00 A back', 'off 14:35 A back', 'on 14:40 A top', 'off 15:00 A top'],
      'fix past-time: Bowl A back was on for 35 min from all on, 5 min past its time.',
    ],
    [
      'the last section too short',
      [NEON, 'on 14:00-14:10 A lengths', 'on 14:25-14:35 A roots', 'off 14:45 A'],
      'mind under-time: Bowl A roots was on for 10 min from all on, 5 min short.',
    ],
  ])('says %s', (_, lines, message) => {
    expect(times(...lines)).toEqual([message]);
  });

  test('lightener on roots counts by the line for the scalp, its lengths on the same line do not', () => {
    const lines = [CLAY, 'place A roots, lengths apply', 'on 14:00 A roots, lengths', ...LOOKS, 'off 14:42 A'];
    expect(times(...lines)).toEqual([
      'stop past-time: Bowl A roots was on for 42 min from first on, 7 min past its time.',
    ]);
  });

  test('lightener is timed place by place', () => {
    const lines = [CLAY, 'on 14:00 A lengths', 'on 14:30 A roots', ...LOOKS, 'check 14:50 A', 'off 14:55 A'];
    expect(times(...lines)).toEqual([
      'fix past-time: Bowl A lengths was on for 55 min from first on, 5 min past its time.',
    ]);
  });
});

describe('past-time', () => {
  test.each([
    ['the far end', [CLAY, 'on 14:00 A', ...LOOKS, 'off 14:50 A']],
    ['a hedged time five minutes over', [CLAY, 'on 14:00 A', ...LOOKS, 'check 14:50 A', 'off ~14:55 A']],
    ['no off', [CLAY, 'on 14:00 A', ...LOOKS]],
    ['no time line', ['bowl A 40 sand + 80 dev-6', 'on 14:00 A', 'check 14:50 A', 'off 15:50 A']],
    ['an hour that counts from first on', ['bowl A 30 tint teal', 'on 14:00-14:10 A', 'off 15:00 A']],
    ['off the scalp', [CLAY, 'place A top off-scalp 1cm', 'on 14:00 A top', ...LOOKS, 'off 14:48 A']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(notes(...lines))).not.toContain('past-time');
  });

  test.each([
    [
      'a minute over',
      [CLAY, 'on 14:00 A', ...LOOKS, 'off 14:51 A'],
      'fix past-time: Bowl A was on for 51 min from first on, 1 min past its time.',
    ],
    [
      'a hedged time far over',
      [CLAY, 'on 14:00 A', ...LOOKS, 'check 14:50 A', 'off ~14:56 A'],
      'stop past-time: Bowl A was on for 56 min from first on, 6 min past its time.',
    ],
    [
      'what is not lightener',
      ['bowl A 30 neon teal', 'on 14:00-14:10 A', 'off 14:41 A'],
      'fix past-time: Bowl A was on for 31 min from all on, 1 min past its time.',
    ],
    [
      'what is not lightener, on the scalp',
      ['bowl A 30 neon teal', 'place A on-scalp', 'on 14:00 A', 'off 14:31 A'],
      'fix past-time: Bowl A was on for 31 min from all on, 1 min past its time.',
    ],
    [
      'the scalp, named by the place of the run',
      [CLAY, 'place A top off-scalp 1cm', 'place A nape on-scalp', 'on 14:00 A nape', ...LOOKS, 'off 14:40 A'],
      'fix past-time: Bowl A nape was on for 40 min from first on, 5 min past its time.',
    ],
    [
      'with a product in the bowl',
      [CLAY, 'plus A 4 bond', 'on 14:00 A', ...LOOKS, 'off 14:45 A'],
      'fix past-time: Bowl A was on for 45 min from first on, 5 min past its time.',
    ],
    [
      'one figure for both ends',
      ['bowl A 40 paste + 80 dev-6', 'on 14:00 A', 'check 14:10 A', 'off 14:25 A'],
      'fix past-time: Bowl A was on for 25 min from first on, 5 min past its time.',
    ],
    [
      'the longest of several zones',
      [CLAY, 'on 14:00 A top', 'on 14:10 A nape', ...LOOKS, 'off 15:00 A top', 'off 15:05 A nape'],
      'stop past-time: Bowl A top was on for 60 min from first on, 10 min past its time.',
    ],
  ])('fires at %s', (_, lines, said) => {
    expect(saidIn(notes(...lines)).filter((line) => line.includes('past-time'))).toEqual([said]);
  });

  test('counts from all on where the shelf gives no kind', () => {
    const text = notes('bowl A 30 mystery', 'on 14:00-14:10 A', 'off 14:31 A');
    expect(saidIn(`product mystery "No kind given"\n  time 5-20 min\n${text}`)).toContain(
      'fix past-time: Bowl A was on for 21 min from all on, 1 min past its time.',
    );
  });

  test('takes the grey line with the highest share that is reached', () => {
    const at = (share: number): string[] =>
      rulesIn(notes(`start grey ${share}%`, 'bowl A 30 neon teal', 'on 14:00 A', 'off 14:42 A'));
    expect(at(50)).toEqual([]);
    expect(at(49)).toEqual(['past-time']);
    const [finding] = findIn(notes('start grey 30%', 'bowl A 30 neon teal', 'on 14:00 A', 'off 14:42 A')).findings;
    expect(finding?.expected).toBe('Kelp direct takes 20 to 40 min from all on (its time line, example.bowl:15).');
  });

  test('takes the line for lightened hair after an earlier lightener', () => {
    const later = `${notes(CLAY, 'on 14:00 A', ...LOOKS, 'off 14:45 A')}visit 2026-10-04 wren-abbott\nbowl A 30 neon teal\non 14:00 A\noff 14:25 A\n`;
    expect(saidIn(later)).toEqual(['fix past-time: Bowl A was on for 25 min from all on, 5 min past its time.']);
  });

  test('shows the caution of what was on, and none that is untrue of a direct dye', () => {
    const caution = (lines: string[]): string | undefined =>
      findIn(notes(...lines)).findings.find(({ rule }) => rule === 'past-time')?.caution;
    expect(caution([CLAY, 'on 14:00 A', ...LOOKS, 'off 14:51 A'])).toMatch(/^Lightener/);
    expect(caution(['bowl A 30 neon teal', 'on 14:00 A', 'off 14:41 A'])).toBeUndefined();
  });
});

describe('under-time', () => {
  const short = ['bowl A 30 neon teal', 'on 14:00 A', 'off 14:10 A'];

  test('fires at what came off early for no reason noted', () => {
    expect(saidIn(notes(...short))).toEqual(['mind under-time: Bowl A was on for 10 min from all on, 5 min short.']);
  });

  test.each([
    ['stopped', [...short, 'stopped 14:10 A "itched"']],
    ['stopped as a whole', [...short, 'stopped 14:10 "fire alarm"']],
    ['a reaction', [...short, 'reaction 14:09 A temples red']],
    ['meant to be short', ['bowl A 30 neon teal', 'on 14:00 A for 7min', 'off 14:07 A']],
    ['hedged', ['bowl A 30 neon teal', 'on ~14:00 A', 'off 14:10 A']],
    ['toner taken off by eye', ['bowl A 30 pearl', 'on 14:00 A', 'check 14:02 A 9', 'off 14:03 A']],
    ['lightener taken off by eye', [CLAY, 'on 14:00 A', 'check 14:09 A yellow', 'off 14:10 A']],
  ])('is silent when %s', (_, lines) => {
    expect(rulesIn(notes(...lines))).not.toContain('under-time');
  });

  test.each([
    ['another bowl was stopped', ['bowl B 30 tint teal', 'on 14:00 B', 'stopped 14:10 B "itched"']],
    ['another place had a reaction', ['reaction 14:09 A temples red']],
    ['a toner was not looked at', []],
  ])('still fires when %s', (_, lines) => {
    const base =
      lines.length === 0
        ? ['bowl A 30 pearl', 'on 14:00 A', 'off 14:03 A']
        : ['bowl A 30 neon teal', 'on 14:00 A nape', 'off 14:10 A'];
    expect(rulesIn(notes(...base, ...lines))).toContain('under-time');
  });

  test('is to be put right where half the hair is grey on the day', () => {
    const early = (...start: string[]): string[] =>
      saidIn(notes(...start, 'bowl A 30 cover', 'on 14:00 A', 'off 14:20 A')).filter((line) => line.includes('under'));
    const said = 'under-time: Bowl A was on for 20 min from all on, 10 min short';
    expect(early('start grey 50% temples')).toEqual([`fix ${said}, over grey.`]);
    expect(early('start grey 45% temples')).toEqual([`mind ${said}.`]);
    expect(early()).toEqual([`mind ${said}.`]);
  });

  test.each([
    ['bowl A 30 neon teal', ['on 14:00 A', 'off 14:10 A']],
    ['bowl A 30 neon teal', ['on 14:00-14:05 A roots', 'off 14:12 A roots']],
    ['bowl A 30 pearl', ['on 14:00 A', 'off 14:03 A']],
    [CLAY, ['on 14:00 A', 'off 14:10 A']],
  ])('is settled by the lines it names: %s, %j', (bowl, lines) => {
    const found = findIn(notes(bowl, ...lines)).findings.find(({ rule }) => rule === 'under-time');
    const named = [...(found?.todo ?? '').matchAll(/`([^`]+)`/gu)].map(([, line = '']) => line);
    expect(named).toHaveLength(2);
    for (const line of named) {
      const rest = line.startsWith('off') ? lines.filter((one) => !one.startsWith('off')) : lines;
      expect(rulesIn(notes(bowl, ...rest, line.replace('…', 'itched')))).not.toContain('under-time');
    }
  });

  test('says the shortest of several zones', () => {
    expect(saidIn(notes('bowl A 30 neon teal', 'on 14:00 A top', 'on 14:04 A nape', 'off 14:10 A'))).toEqual([
      'mind under-time: Bowl A nape was on for 6 min from all on, 9 min short.',
    ]);
  });
});

describe('no-check', () => {
  test.each([
    ['two minutes late', [CLAY, 'on 14:00 A', 'check 14:12 A', 'check 14:24 A', 'off 14:36 A']],
    [
      'looks without a time, one for each that is due',
      [CLAY, 'on 14:00 A', 'check A orange', 'check A gold', 'off 14:30 A'],
    ],
    [
      'a look at another place while the bowl goes on',
      [CLAY, 'on 14:00-14:20 A top, nape', 'check 14:10 A top', 'check 14:20 A', 'off 14:32 A'],
    ],
    ['not taken off yet', [CLAY, 'on 14:00 A', 'check 14:10 A']],
    [
      'a place that is on still and was looked at in time',
      [CLAY, 'on 14:00 A top', 'check 14:10 top', 'check 14:10 nape'],
    ],
    ['what does not lighten', ['bowl A 30 neon teal', 'on 14:00 A', 'off 14:20 A']],
    [
      'one look where no interval is given',
      ['bowl A 40 sand + 80 dev-6', 'on 14:00 A', 'check 14:40 A', 'off 14:45 A'],
    ],
    ['no look yet where no interval is given', ['bowl A 40 sand + 80 dev-6', 'on 14:00 A']],
  ])('is silent at %s', (_, lines) => {
    expect(rulesIn(notes(...lines))).not.toContain('no-check');
  });

  test.each([
    [
      'before the first look',
      [CLAY, 'on 14:00 A', 'check 14:13 A', 'off 14:20 A'],
      'Bowl A, clay, has no check for 13 min, 14:00 to 14:13.',
    ],
    [
      'between two looks',
      [CLAY, 'on 14:00 A', 'check 14:10 A', 'check 14:23 A', 'off 14:30 A'],
      'Bowl A, clay, has no check for 13 min, 14:10 to 14:23.',
    ],
    [
      'before it came off',
      [CLAY, 'on 14:00 A', 'check 14:10 A', 'off 14:25 A'],
      'Bowl A, clay, has no check for 15 min, 14:10 to 14:25.',
    ],
    [
      'looks typed out of order',
      [CLAY, 'on 14:00 A', 'check 14:30 A', 'check 14:10 A', 'off 14:40 A'],
      'Bowl A, clay, has no check for 20 min, 14:10 to 14:30.',
    ],
    [
      'the longest of two zones',
      [CLAY, 'on 14:00 A top', 'on 14:05 A nape', 'check 14:10 A top', 'off 14:26 A'],
      'Bowl A nape, clay, has no check for 21 min, 14:05 to 14:26.',
    ],
    [
      'the longest of two zones, put on first',
      [CLAY, 'on 14:00 A top', 'on 14:20 A nape', 'off 14:42 A'],
      'Bowl A top, clay, has no check for 42 min, 14:00 to 14:42.',
    ],
    [
      'on the scalp, by its plain line',
      [CLAY, 'place A on-scalp', 'on 14:00 A', 'off 14:20 A'],
      'Bowl A, clay, has no check for 20 min, 14:00 to 14:20.',
    ],
    [
      'no look at all where no interval is given',
      ['bowl A 40 sand + 80 dev-6', 'on 14:00 A', 'off 14:45 A'],
      'Bowl A, sand, has no check for 45 min, 14:00 to 14:45.',
    ],
  ])('fires %s', (_, lines, message) => {
    const gravity = lines.some((line) => line.includes('sand')) ? 'mind' : 'fix';
    expect(saidIn(notes(...lines)).filter((line) => !line.includes('scalp-unlisted'))).toEqual([
      `${gravity} no-check: ${message}`,
    ]);
  });
});

describe('no-check, of places that are on together', () => {
  const BOTH = [
    CLAY,
    'on 14:00-14:12 A top, nape',
    'check 14:12 A',
    'check 14:20 A top',
    'check 14:30 A',
    'off 14:40 A',
  ];
  const looked = (...lines: string[]): string[] => saidIn(notes(...lines)).filter((line) => line.includes('check'));

  test('is minded where the looks name one of them', () => {
    expect(looked(...BOTH)).toEqual([
      'mind no-check: Bowl A nape, clay, has no check for 18 min, 14:12 to 14:30; the looks name other places.',
    ]);
  });

  test('one that nobody looked through outweighs a longer one that somebody looked beside', () => {
    const [top, nape] = ['on 14:00 A top', 'on 15:00 A nape'];
    const beside = ['check 14:10 crown', 'check 14:20 crown', 'check 14:30 crown', 'off 14:40 A top'];
    const unseen = 'off 15:20 A nape';
    expect(looked(CLAY, top, ...beside, nape, unseen)).toContain(
      'fix no-check: Bowl A nape, clay, has no check for 20 min, 15:00 to 15:20.',
    );
    const [first, then] = ['on 14:00 A nape', 'on 15:00 A top'];
    const later = ['check 15:10 crown', 'check 15:20 crown', 'check 15:30 crown', 'off 15:40 A top'];
    expect(looked(CLAY, first, 'off 14:20 A nape', then, ...later)).toContain(
      'fix no-check: Bowl A nape, clay, has no check for 20 min, 14:00 to 14:20.',
    );
  });

  test('is minded while it is on still, too', () => {
    const lines = ['on 14:00 A top', 'check 14:10 crown', 'check 14:20 crown', 'check 14:30 crown', 'check 14:40 top'];
    expect(looked(CLAY, ...lines)).toContain(
      'mind no-check: Bowl A top, clay, has no check for 40 min, 14:00 to 14:40; the looks name other places.',
    );
  });

  test('stays to be put right where nobody looked at any in time, or only at another bowl', () => {
    expect(looked(...BOTH.filter((line) => !line.includes('14:20')))).toEqual([
      'fix no-check: Bowl A top, clay, has no check for 18 min, 14:12 to 14:30.',
    ]);
    const other = ['bowl B 40 clay + 80 dev-6', 'on 14:00 A top', 'on 14:00 B nape', 'check 14:10 B', 'off 14:20'];
    expect(looked(CLAY, ...other)).toEqual([
      'fix no-check: Bowl A top, clay, has no check for 20 min, 14:00 to 14:20.',
    ]);
  });

  test('the top is looked at for the T-section', () => {
    const lines = [CLAY, 'on 14:00 A t-section', 'on 14:00 A nape'];
    expect(looked(...lines, 'check 14:10 nape', 'check 14:10 top orange', 'off 14:20')).toEqual([]);
    expect(looked(...lines, 'check 14:10 nape', 'check 14:10 parting orange', 'off 14:20')).toEqual([]);
  });

  test('a place that nothing is on is said once, and the look missing beside it is only minded', () => {
    const lines = [CLAY, 'on 14:00 A crown', 'check 14:10 temples', 'check 14:20 temples', 'check 14:30 temples'];
    expect(looked(...lines, 'off 14:35')).toEqual([
      'mind no-check: Bowl A crown, clay, has no check for 35 min, 14:00 to 14:35; the looks name other places.',
      'mind check-not-on: The check looks at temples; what went on is on crown.',
    ]);
  });
});

test('each slip of the clock has its own rule', () => {
  expect(rulesIn(notes('bowl A 30 neon teal', 'on 14:00 A', 'off 14:20 A 40min'))).toEqual(['minutes-differ']);
  expect(rulesIn(notes('bowl A 30 neon teal', 'on 14:20-14:00 A', 'off 14:40 A'))).toContain('clock-unclear');
});

describe('pace-unlikely', () => {
  const paced = (...lines: string[]): string[] => saidBy(paceUnlikely, notes('bowl A 30 neon teal', ...lines));

  test.each([
    ['20 seconds a section', ['place A top weave x15', 'on 14:00-14:05 A top', 'off 14:30']],
    ['no span', ['place A top weave x40', 'on 14:00 A top', 'off 14:30']],
    ['a hedged span', ['place A top weave x40', 'on ~14:00-14:05 A top', 'off 14:30']],
    ['no count', ['place A top paint', 'on 14:00-14:01 A top', 'off 14:30']],
    ['two pairs of hands', ['place A top weave x20', 'on 14:00-14:05 A top by nia', 'off 14:30']],
    [
      'the rest of the sections in a second span',
      ['place A top weave x20', 'on 14:00-14:05 A top', 'on 14:10-14:15 A top', 'off 14:30'],
    ],
    ['a line that is not put on', ['place A top weave x20', 'on 14:00-14:01 A nape', 'off 14:30']],
  ])('is silent at %s', (_, lines) => {
    expect(paced(...lines)).toEqual([]);
  });

  test('counts both sides of a mirrored line, and all lines that go on together', () => {
    expect(paced('place A sides weave x8 mirror', 'on 14:00-14:05 A', 'off 14:30')).toEqual([
      'mind: 16 sections went on in 5 min, 18 s for each.',
    ]);
    expect(paced('place A top weave x8', 'place A nape weave x8', 'on 14:00-14:05 A top, nape', 'off 14:30')).toEqual([
      'mind: 16 sections went on in 5 min, 18 s for each.',
    ]);
  });
});
