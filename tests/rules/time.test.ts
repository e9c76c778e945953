import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

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
  product pearl "Pearl toner" demi
    mix none
    time 5-15 min`;

const client = (...lines: string[]): string => ['client wren-abbott "Wren Abbott"', ...lines].join('\n  ');
const visit = (...lines: string[]): string => ['visit 2026-09-04 wren-abbott', ...lines].join('\n  ');
const notes = (...lines: string[]): string => `${textOf(SHELF)}\n${client()}\n${visit(...lines)}\n`;

const CLAY = 'bowl A 40 clay + 80 dev-6';
const LOOKS = ['check 14:10 A orange', 'check 14:20 A gold', 'check 14:30 A yellow', 'check 14:40 A yellow'];

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
      'stop past-time: Bowl A was on for 51 min from first on, 1 min past its time.',
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
      'stop past-time: Bowl A was on for 31 min from all on, 1 min past its time.',
    ],
    [
      'the scalp, named by the place of the run',
      [CLAY, 'place A top off-scalp 1cm', 'place A nape on-scalp', 'on 14:00 A nape', ...LOOKS, 'off 14:40 A'],
      'stop past-time: Bowl A nape was on for 40 min from first on, 5 min past its time.',
    ],
    [
      'with a product in the bowl',
      [CLAY, 'plus A 4 bond', 'on 14:00 A', ...LOOKS, 'off 14:45 A'],
      'stop past-time: Bowl A was on for 45 min from first on, 5 min past its time.',
    ],
    [
      'one figure for both ends',
      ['bowl A 40 paste + 80 dev-6', 'on 14:00 A', 'check 14:10 A', 'off 14:25 A'],
      'stop past-time: Bowl A was on for 25 min from first on, 5 min past its time.',
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

  test('shows the caution of what was on', () => {
    const caution = (lines: string[]): string | undefined =>
      findIn(notes(...lines)).findings.find(({ rule }) => rule === 'past-time')?.caution;
    expect(caution([CLAY, 'on 14:00 A', ...LOOKS, 'off 14:51 A'])).toMatch(/^Lightener/);
    expect(caution(['bowl A 30 neon teal', 'on 14:00 A', 'off 14:41 A'])).toMatch(/^Hydrogen peroxide/);
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

  test('says the shortest of several zones', () => {
    expect(saidIn(notes('bowl A 30 neon teal', 'on 14:00 A top', 'on 14:04 A nape', 'off 14:10 A'))).toEqual([
      'mind under-time: Bowl A nape was on for 6 min from all on, 9 min short.',
    ]);
  });
});

describe('no-check', () => {
  test.each([
    ['two minutes late', [CLAY, 'on 14:00 A', 'check 14:12 A', 'check 14:24 A', 'off 14:36 A']],
    ['a look without a time', [CLAY, 'on 14:00 A', 'check A orange', 'off 14:36 A']],
    [
      'a look at another place while the bowl goes on',
      [CLAY, 'on 14:00-14:20 A top, nape', 'check 14:10 A top', 'check 14:20 A', 'off 14:32 A'],
    ],
    ['not taken off yet', [CLAY, 'on 14:00 A', 'check 14:10 A']],
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
      'a place, when another was looked at once all was on',
      [CLAY, 'on 14:00-14:12 A top, nape', 'check 14:12 A', 'check 14:20 A top', 'check 14:30 A', 'off 14:40 A'],
      'Bowl A nape, clay, has no check for 18 min, 14:12 to 14:30.',
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
    expect(saidIn(notes(...lines))).toEqual([`fix no-check: ${message}`]);
  });
});

test('each slip of the clock has its own rule', () => {
  expect(rulesIn(notes('bowl A 30 neon teal', 'on 14:00 A', 'off 14:20 A 40min'))).toEqual(['minutes-differ']);
  expect(rulesIn(notes('bowl A 30 neon teal', 'on 14:20-14:00 A', 'off 14:40 A'))).toContain('clock-unclear');
});
