import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  product dev-6 "Cream developer" developer 6%
  product act "Activator" developer 0%
  product clay "Peregrine clay" lightener
  range cream "Larkfield cream" permanent
  range toner "Tidewater toner" toner
  range neon "Kelp direct" semi
    mix none
    shades teal
  product mist "No kind that dyes" conditioner`;

const POLICY = `
  salon harbour "Harbour Row"
    hours 9:00-19:00
    policy skin-test 48h every 26w
    policy skin-test void after reaction`;

const CREAM = 'bowl A 20 cream 7/0 + 30 dev-6';
const OK = 'test skin 2026-09-01 11:00 cream, toner read 2026-09-03 11:30 clear';

const notes = (client: readonly string[], visit: readonly string[], salon = POLICY): string =>
  [
    textOf(salon),
    textOf(SHELF),
    'client wren-abbott "Wren Abbott"',
    ...client,
    'visit 2026-09-04 14:00 wren-abbott',
    ...visit,
    '',
  ].join('\n');

describe('a skin test', () => {
  test.each([
    ['a clear test', [OK], [CREAM]],
    ['a clear test that names no product', ['test skin 2026-09-01 11:00 read 2026-09-03 11:30 clear'], [CREAM]],
    ['direct dye', [], ['bowl A 30 neon teal']],
    ['lightener', [], ['bowl A 40 clay + 80 dev-6']],
    ['a toner without peroxide', [], ['bowl A 20 toner 9/1 + 20 act']],
    ['colour that all stayed in the bowl', [], [CREAM, 'left A 50 binned']],
    ['colour on a piece off the head', [], [CREAM, 'place A off-head']],
    [
      'a test read on a line of its own',
      ['test skin 2026-09-01 11:00 cream', 'test skin read 2026-09-03 11:30 clear'],
      [CREAM],
    ],
  ])('is not missed with %s', (_, client, visit) => {
    expect(rulesIn(notes(client, visit))).toEqual([]);
  });

  test('is missed once for all products together', () => {
    expect(saidIn(notes([], [CREAM, 'bowl T 20 toner 9/1 + 20 dev-6']))).toEqual([
      'stop skin-test-missing: cream, toner: no skin test is noted.',
    ]);
  });

  test('is missed once for two shades of one range', () => {
    expect(
      rulesIn(notes([], ['bowl A 10 cream 7/0 + 10 cream 7/1 + 30 dev-6', 'bowl B 10 cream 6/0 + 15 dev-6'])),
    ).toEqual(['skin-test-missing']);
  });

  test('is missed for the product it was not made with', () => {
    const client = ['test skin 2026-09-01 11:00 toner read 2026-09-03 11:30 clear'];
    expect(saidIn(notes(client, [CREAM]))).toEqual([
      'stop skin-test-missing: The skin test of 2026-09-01 was made with toner; none with cream.',
    ]);
  });

  test('is asked of what goes on the head beside a piece', () => {
    expect(rulesIn(notes([], [CREAM, 'place A off-head, lengths']))).toEqual(['skin-test-missing']);
  });

  test('is asked of what is taken out of another bowl', () => {
    const visit = [CREAM, 'bowl B 50 from A + 10 mist'];
    expect(rulesIn(notes([], visit))).toEqual(['skin-test-missing']);
  });

  test.each([
    ['skin-test-unread', 'test skin 2026-09-01 11:00 cream', 'the skin test of 2026-09-01 11:00 has no result yet'],
    [
      'skin-test-too-soon',
      'test skin 2026-09-03 11:00 cream read 2026-09-04 12:00 clear',
      'the skin test of 2026-09-03 11:00 was made 27 h before the visit',
    ],
    [
      'skin-test-too-soon',
      'test skin 2026-09-03 cream clear',
      'the skin test of 2026-09-03 was made 1 d before the visit',
    ],
    [
      'skin-test-too-soon',
      'test skin 2026-08-01 16:00 cream read 2026-08-02 12:00 clear',
      'the skin test of 2026-08-01 16:00 was read after 20 h',
    ],
    [
      'skin-test-expired',
      'test skin 2026-03-04 11:00 cream read 2026-03-06 11:30 clear',
      'the skin test of 2026-03-04 11:00 held until 2026-09-02; the visit is 2 d later',
    ],
    [
      'skin-test-positive',
      'test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 reaction',
      'the skin test of 2026-09-01 11:00 was positive',
    ],
  ])('gives %s', (rule, line, says) => {
    expect(saidIn(notes([line], [CREAM])).filter((said) => said.includes('skin-test'))).toEqual([
      `stop ${rule}: cream: ${says}.`,
    ]);
  });

  test('is of a day not noted where only its reading stands', () => {
    expect(saidIn(notes(['test skin read 2026-09-03 11:30 reaction'], [CREAM]))).toEqual([
      'stop skin-test-positive: cream: the skin test of a day not noted was positive.',
    ]);
  });

  test.each([
    ['2026-09-05 clear', 'was read 1 d after the visit began'],
    ['2026-09-05 16:00 clear', 'was read 26 h after the visit began'],
    ['2026-09-04 16:00 clear', 'was read 2 h after the visit began'],
    ['2026-09-04 15:59 clear', 'was read 1 h 59 min after the visit began'],
    ['2026-09-04 14:01 clear', 'was read 1 min after the visit began'],
  ])('read %s is not read in time', (read, says) => {
    expect(saidIn(notes([`test skin 2026-09-01 11:00 cream read ${read}`], [CREAM]))).toContain(
      `stop skin-test-unread: cream: the skin test of 2026-09-01 11:00 ${says}.`,
    );
  });

  test('with another product counts for none, its day noted or not', () => {
    expect(saidIn(notes(['test skin toner'], [CREAM]))).toContain(
      'stop skin-test-missing: The skin test of a day not noted was made with toner; none with cream.',
    );
  });

  test.each([
    ['test skin read 2026-09-03 11:30 red', 'The reading of the skin test says `red`; it does not settle the test.'],
    [
      'test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 red',
      'The reading of the skin test of 2026-09-01 11:00 says `red`; it does not settle the test.',
    ],
    [
      'test skin 2026-09-01 11:00 cream read 2026-09-03 11:30 clear 5',
      'The reading of the skin test of 2026-09-01 11:00 says `clear 5`; it does not settle the test.',
    ],
  ])('of which `%s` tells is not settled', (line, message) => {
    expect(saidIn(notes([line], []))).toContain(`stop skin-test-unclear: ${message}`);
  });

  test('is void after a reaction, by the salon’s policy', () => {
    const text = notes(
      [
        'test skin 2026-08-01 11:00 cream read 2026-08-03 11:30 clear',
        'visit 2026-08-20 10:00 wren-abbott',
        CREAM,
        'reaction temples red',
      ],
      [CREAM],
    );
    expect(saidIn(text)).toContain(
      'stop skin-test-expired: cream: the skin test of 2026-08-01 11:00 is void since the reaction of 2026-08-20 with bowl A.',
    );
  });

  test('is not void for a reaction that came of the same visit', () => {
    expect(rulesIn(notes([OK], [CREAM, 'on 14:10 A', 'reaction +5 A temples red', 'stopped 14:16 A']))).toEqual([]);
  });

  test('has its lead from the federation’s page where the salon has no policy', () => {
    const [finding] = findIn(notes([], [CREAM], 'salon harbour "Harbour Row"')).findings;
    expect(finding?.expected).toBe(
      'A skin test is made 48 h before the colour, read 48 h after it was made (a UK trade federation’s page on allergy alert testing; no `policy skin-test` line stands).',
    );
  });

  test('has its lead from the salon’s line where one stands', () => {
    const salon = 'salon harbour "Harbour Row"\n  policy skin-test 90min';
    const [finding] = findIn(notes([], [CREAM], salon)).findings;
    expect(finding?.expected).toBe(
      'A skin test is made 1 h 30 min before the colour, read 1 h 30 min after it was made (the salon’s policy, example.bowl:2).',
    );
  });

  test('counts to the first on where the visit has no time', () => {
    const text = notes(
      ['test skin 2026-09-02 13:30 cream read 2026-09-04 13:40 clear'],
      [CREAM, 'on 13:45 A', 'off 14:20 A'],
    );
    expect(rulesIn(text.replace('2026-09-04 14:00 wren', '2026-09-04 wren'))).toEqual([]);
    expect(rulesIn(text.replace('2026-09-04 14:00 wren', '2026-09-04 wren').replace('on 13:45', 'on 13:20'))).toEqual([
      'skin-test-unread',
    ]);
  });

  test('is not looked for under a slip of the client’s name: the slip is the finding', () => {
    const text = notes([OK], [CREAM]).replace('14:00 wren-abbott', '14:00 wren-abott');
    expect(rulesIn(text)).toEqual(['unknown-name']);
    expect(rulesIn(text.replace('wren-abott', 'someone-else'))).toEqual(['unknown-name', 'skin-test-missing']);
  });

  test('decided against without a reason is asked for one', () => {
    const [finding] = findIn(notes([], ['test skin not-needed', CREAM])).findings;
    expect([finding?.rule, finding?.severity]).toEqual(['skin-test-decision', 'mind']);
    expect(finding?.message).toBe('cream without a skin test, by decision: without a reason.');
    expect(finding?.todo).toBe('Write the reason in quotation marks after `not-needed`.');
  });
});

describe('metal-under-peroxide', () => {
  const CLAY = 'bowl A 40 clay + 80 dev-6';
  test.each([
    ['a clear test since', ['history 2026-03 metallic lengths', 'test metal 2026-04-01 40 dev-6 clear'], [CLAY]],
    ['metal that came later', ['history 2026-10 metallic lengths'], [CLAY]],
    ['other history', ['history 2026-03 box-colour lengths', 'history something-else'], [CLAY]],
    ['no peroxide', ['history 2026-03 metallic'], ['bowl A 30 neon teal']],
    ['a developer of 0 %', ['history 2026-03 metallic'], ['bowl A 20 toner 9/1 + 20 act']],
    ['a test that showed nothing clear or adverse', ['test metal 2026-04-01 40 dev-6 rough'], [CLAY]],
    [
      'a later clear test after an adverse one',
      ['test metal 2026-03-01 40 dev-6 bubbles', 'test metal 2026-04-01 40 dev-6 clear'],
      [CLAY],
    ],
    ['words that deny it', ['history 2026-03 box-colour "no metal salts in it"', 'caution "metal salts free"'], [CLAY]],
    ['a watch strap', ['allergy nickel', 'caution "metal slide in the hair"'], [CLAY]],
    ['an adverse test after the visit', ['test metal 2026-12-01 40 dev-6 bubbles'], [CLAY]],
  ])('is silent with %s', (_, client, visit) => {
    expect(rulesIn(notes(client, visit))).not.toContain('metal-under-peroxide');
  });

  test.each([
    [
      'metal, no date',
      ['history metallic lengths'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the history has metallic; no clear metal test follows it.',
    ],
    [
      'metal after the clear test',
      ['test metal 2026-01-01 40 dev-6 clear', 'history 2026-03 metallic'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the history has metallic in 2026-03; no clear metal test follows it.',
    ],
    [
      'henna alone',
      ['history 2026-03 henna'],
      'fix metal-under-peroxide: Bowl A has peroxide, and the history has henna in 2026-03; no clear metal test follows it.',
    ],
    [
      'henna and plain words of metal',
      ['history 2026-03 henna lengths "shop packet, with metal salts in"'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the history has metal salts; no clear metal test follows it.',
    ],
    [
      'plain words beside another kind',
      ['history 2026-03 salon-colour lengths "a colour restorer"'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the history has colour restorer; no clear metal test follows it.',
    ],
    [
      'plain words that name no day',
      ['history salon-colour lengths "a colour restorer"'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the history has colour restorer; no clear metal test follows it.',
    ],
    [
      'plain words in a caution',
      ['caution compound henna on the lengths'],
      'stop metal-under-peroxide: Bowl A has peroxide, and a caution has compound henna; no clear metal test follows it.',
    ],
    [
      'henna and an adverse test',
      ['history 2026-03 henna', 'test metal 2026-04-01 40 dev-6 bubbles'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the metal test of 2026-04-01 showed a reaction; no clear metal test follows it.',
    ],
    [
      'an undated clear test',
      ['history 2026-03 metallic', 'test metal 40 dev-6 clear'],
      'stop metal-under-peroxide: Bowl A has peroxide, and the history has metallic in 2026-03; no clear metal test follows it.',
    ],
  ])('fires with %s', (_, client, said) => {
    expect(saidIn(notes(client, [CLAY]))).toEqual([said]);
  });
});

describe('reaction-on-file', () => {
  const CLAY = 'bowl A 40 clay + 80 dev-6';
  const before = ['visit 2026-03-04 wren-abbott', 'reaction temples burning'];
  const positive = 'test skin 2026-03-01 11:00 cream read 2026-03-03 11:30 reaction';

  test('stops at dye, with the words and the bowl of the reaction', () => {
    expect(saidIn(notes([OK, ...before], [CREAM]))).toEqual([
      'stop reaction-on-file: A reaction (burning) of 2026-03-04 is on file, and no letter that lifts it; bowl A holds oxidative dye.',
    ]);
    expect(
      saidIn(notes([OK, 'visit 2026-03-04 wren-abbott', 'reaction temples', 'bowl D 20 neon teal'], [CREAM])),
    ).toEqual([
      'stop reaction-on-file: A reaction with bowl D of 2026-03-04 is on file, and no letter that lifts it; bowl A holds oxidative dye.',
    ]);
  });

  test.each([
    ['letter 2026-03-20 "Dr N: may have hair colour"', []],
    ['letter 2026-03-20 "Dr N: no objection to colour, not allergic"', []],
    ['letter 2026-03-03 "Dr N: may have hair colour"', ['reaction-on-file']],
    ['letter 2026-09-05 "Dr N: may have hair colour"', ['reaction-on-file']],
    ['letter 2026-03-20 "Dr N: no dye until patch tested"', ['reaction-on-file']],
  ])('is lifted at dye by `%s` or not', (letter, rules) => {
    expect(rulesIn(notes([OK, letter, ...before], [CREAM]))).toEqual(rules);
  });

  test('is not lifted by a letter that a newer one takes back', () => {
    const letters = ['letter 2026-03-20 "may have colour"', 'letter 2026-06-20 "PPD positive, no hair dye"'];
    expect(rulesIn(notes([OK, ...letters, ...before], [CREAM]))).toEqual(['reaction-on-file']);
  });

  test('says nothing of dye after a reaction under lightener, and voids no test', () => {
    const under = ['visit 2026-09-04 13:00 wren-abbott', CLAY, 'reaction 13:20 A crown "a tingle, gone at the rinse"'];
    const text = notes([OK], [CREAM]).replace('visit 2026-09-04 14:00', 'visit 2026-09-20 14:00');
    expect(rulesIn(`${text}\n${under.join('\n')}\n`).filter((rule) => /^(reaction-on|skin-test)/.test(rule))).toEqual(
      [],
    );
  });

  test.each([
    ['a tingle', 'mind'],
    ['a scratch she forgot to mention, stinging', 'mind'],
    ['burning', 'fix'],
    ['blistered, went to the doctor', 'stop'],
    ['burning, no blisters', 'fix'],
  ])('under lightener told as "%s" is a %s at the next lightener', (told, severity) => {
    const earlier = ['visit 2026-03-04 wren-abbott', CLAY, `reaction A crown "${told}"`, 'stopped A'];
    const found = findIn(notes(earlier, [CLAY])).findings.find(({ rule }) => rule === 'reaction-on-file');
    expect(found?.severity).toBe(severity);
    expect(found?.caution).toContain('Lightener can burn');
    expect(found?.expected).not.toContain('oxidative');
  });

  test('counts a positive skin test for other dye, and not for lightener', () => {
    expect(rulesIn(notes([positive], [CLAY]))).toEqual([]);
    const toner = 'test skin 2026-03-01 11:00 toner read 2026-03-03 11:30 reaction';
    expect(saidIn(notes([OK, toner], [CREAM]))).toEqual([
      'stop reaction-on-file: A positive skin test of 2026-03-03 is on file, and no letter that lifts it; bowl A holds oxidative dye.',
    ]);
    expect(rulesIn(notes([positive], [CREAM]))).toEqual(['skin-test-positive']);
    expect(rulesIn(notes([positive, OK], [CREAM]))).toEqual(['skin-test-positive']);
    expect(rulesIn(notes([positive, OK, 'letter 2026-05-02 "Dr N: may have colour"'], [CREAM]))).toEqual([]);
    expect(saidIn(notes([positive, 'letter 2026-05-02 "Dr N: may have colour"'], [CREAM]))).toEqual([
      'stop skin-test-missing: cream: no skin test is noted since the letter.',
    ]);
  });

  test.each([
    ['direct dye', before, ['bowl A 30 neon teal']],
    ['the day itself', [], [CLAY, 'on 14:00 A', 'check 14:04 A', 'reaction 14:05 A temples red', 'stopped 14:06 A']],
  ])('is silent at %s', (_, client, visit) => {
    expect(rulesIn(notes(client, visit))).not.toContain('reaction-on-file');
  });
});
