import { describe, expect, test } from 'vitest';
import labelAge from '../../src/rules/age/label-age.ts';
import allergyNamed from '../../src/rules/cautions/allergy-named.ts';
import blackHenna from '../../src/rules/cautions/black-henna.ts';
import persulphate from '../../src/rules/cautions/persulphate-breathing.ts';
import soreScalp from '../../src/rules/cautions/sore-scalp.ts';
import { dayNamed } from '../../src/rules/said-on-file.ts';
import eyeAreaDye from '../../src/rules/testing/eye-area-dye.ts';
import { foundBy, notesOf, saidBy, visitOf } from './one-rule.ts';

const [CLAY, CREAM] = ['bowl A 40 clay + 80 dev-6', 'bowl A 40 cream 6/0 + 60 dev-6'];
const ASTHMA = 'caution asthma, carries an inhaler';

describe('persulphate-breathing', () => {
  const said = (client: readonly string[], ...lines: readonly string[]): string[] =>
    saidBy(persulphate, notesOf(client, visitOf(...lines)));

  test('is silent at colour, once a caution has ended, without one, and where the bowl was left', () => {
    expect(said([ASTHMA], CREAM)).toEqual([]);
    expect(said(['caution asthma until 2026-09'], CLAY)).toEqual([]);
    expect(said([], CLAY)).toEqual([]);
    expect(said([ASTHMA], CLAY, 'left A 120')).toEqual([]);
  });

  test('stops at lightener, by caution or allergy, once a visit', () => {
    const stop = 'stop: Bowl A holds clay, a lightener, and "asthma, carries an inhaler" is on file.';
    expect(said([ASTHMA], CLAY, 'bowl B 20 clay + 40 dev-6')).toEqual([stop]);
    expect(said(['allergy "asthma, carries an inhaler"'], CLAY)).toEqual([stop]);
  });
});

describe('black-henna', () => {
  const said = (client: readonly string[], ...visits: readonly string[]): string[] =>
    saidBy(blackHenna, notesOf(client, visits));
  const TESTED = 'test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear';

  test('is silent without it, at lightener, and before it', () => {
    expect(said(['history 2021 henna'], ...visitOf(CREAM))).toEqual([]);
    expect(said(['allergy "black henna tattoo"'], ...visitOf(CLAY))).toEqual([]);
    expect(said(['history 2026-10 henna "black henna tattoo"'], ...visitOf(CREAM))).toEqual([]);
  });

  const stop = (text: string): string => `stop: cream is used, "${text}" is on file, and no letter of a doctor since.`;

  test('stops, and a clear skin test made since lifts nothing', () => {
    expect(said(['allergy "black henna tattoo, 2016"'], ...visitOf(CREAM))).toEqual([stop('black henna tattoo, 2016')]);
    expect(said([TESTED, 'caution black henna at fourteen'], ...visitOf(CREAM))).toEqual([
      stop('black henna at fourteen'),
    ]);
  });

  test('is lifted by a letter since that gives leave, and by none that refuses', () => {
    const client = (line: string): string[] => ['caution black henna at fourteen', line];
    expect(said(client('letter 2026-05-02 "Dr Quill: may have hair dye again"'), ...visitOf(CREAM))).toEqual([]);
    expect(said(client('letter 2026-05-02 "Dr Quill: no hair dye"'), ...visitOf(CREAM))).toHaveLength(1);
  });

  test('finds the day that a text names', () => {
    expect(['in 2016', '2026-08', 'on 2026-08-02, blistered', 'at fourteen', '12345'].map(dayNamed)).toEqual([
      '2016-01-01',
      '2026-08-01',
      '2026-08-02',
      undefined,
      undefined,
    ]);
  });
});

describe('allergy-named', () => {
  const said = (allergy: string, ...lines: readonly string[]): string[] =>
    saidBy(allergyNamed, notesOf([`allergy "${allergy}"`], visitOf(...lines)));

  test.each([
    ['nickel', CREAM],
    ['none known', CREAM],
    ['hair dye', CLAY],
    ['hair dye', 'bowl A 40 neon teal'],
    ['hair dye', 'bowl A 40 tint brown'],
    ['persulphates', CREAM],
    ['peroxide', 'bowl A 40 neon teal'],
    ['creamy soap', CREAM],
  ])('an allergy to %s is silent at %s', (allergy, line) => {
    expect(said(allergy, line)).toEqual([]);
  });

  test.each([
    ['PPD', CREAM, 'cream, permanent'],
    ['hair dye', 'bowl A 10 tint brown + 10 dev-6', 'tint, brow'],
    ['persulphates', CLAY, 'clay, lightener'],
    ['peroxide', CLAY, 'dev-6, developer'],
    ['oat milk', 'bowl A 20 milk', 'milk, conditioner'],
    ['neon, itches', 'bowl A 40 neon teal', 'neon, semi'],
  ])('an allergy to %s stops at %s', (allergy, line, holds) => {
    expect(said(allergy, line)).toEqual([`stop: Bowl A holds ${holds}, and the allergy "${allergy}" is on file.`]);
  });

  test('is told once a visit, and without a kind where the shelf gives none', () => {
    expect(said('PPD', CREAM, 'bowl B 20 cream 7/0 + 30 dev-6')).toHaveLength(1);
    const notes = notesOf(['allergy "resin"'], visitOf('bowl A 20 resin'), ['product resin "Resin"']);
    expect(saidBy(allergyNamed, notes)).toEqual(['stop: Bowl A holds resin, and the allergy "resin" is on file.']);
  });

  test('says nothing of dye where a product has no kind', () => {
    const notes = notesOf(['allergy "hair dye"'], visitOf('bowl A 20 resin'), ['product resin "Resin"']);
    expect(saidBy(allergyNamed, notes)).toEqual([]);
  });
});

describe('sore-scalp', () => {
  const said = (caution: string, ...lines: readonly string[]): string[] =>
    saidBy(soreScalp, notesOf([`caution ${caution}`], visitOf(...lines)));

  test.each([
    ['off the scalp', [CLAY, 'place A top off-scalp 1cm']],
    ['on lengths', [CREAM, 'place A lengths']],
    ['at direct colour', ['bowl A 40 neon teal']],
  ])('is silent %s', (_, lines) => {
    expect(said('irritated scalp', ...lines)).toEqual([]);
  });

  test('is silent at another caution', () => {
    expect(said('pregnant', CREAM)).toEqual([]);
  });

  test.each([
    [[CREAM]],
    [[CREAM, 'place A roots apply']],
    [[CREAM, 'on 14:00 A full-head']],
    [[CLAY, 'place A crown on-scalp', 'place A top off-scalp 1cm']],
  ])('stops at %s', (lines) => {
    expect(said('rash on the neck', ...lines)).toEqual([
      'stop: Bowl A comes to the scalp, and the caution "rash on the neck" is in force.',
    ]);
  });

  test('minds a sensitive scalp, once', () => {
    const visits = [...visitOf(CREAM), 'visit 2026-10-04 wren-abbott', CREAM];
    expect(saidBy(soreScalp, notesOf(['caution tender scalp'], visits))).toEqual([
      'mind: Bowl A comes to the scalp, and the caution "tender scalp" is in force.',
    ]);
  });
});

describe('label-age (Regulation (EC) 1223/2009, Annex III, label warnings)', () => {
  const under = (policy: string): string[] => ['salon harbour "Harbour Row"', `  policy ${policy}`];
  const said = (born: string, salon: readonly string[], ...lines: readonly string[]): string[] =>
    foundBy(labelAge, notesOf([`born ${born}`], visitOf(...lines), salon)).map(
      ({ message, caution }) => `${message} ${caution ?? ''}`,
    );
  const TINT = 'bowl B 10 tint brown + 10 dev-6';

  test('16 passes and 15 does not', () => {
    expect(said('2010-09-04', [], CREAM)).toEqual([]);
    expect(said('2010-09-05', [], CREAM, 'bowl B 40 gloss 6/0 + 80 dev-6')).toEqual([
      'Aged 15, and bowl A holds cream, an oxidative dye. ',
    ]);
  });

  test('is silent at lightener, and without a birth', () => {
    expect(said('2012', [], CLAY)).toEqual([]);
    expect(saidBy(labelAge, notesOf([], visitOf(CREAM)))).toEqual([]);
  });

  test('a policy of the salon decides for the head, and never beside the eye', () => {
    expect(said('2012', under('under 16 temporary only'), CREAM, TINT)).toEqual([]);
    expect(said('2012', under('under 16 brow permanent only'), CREAM)).toEqual([]);
    const eye = 'an oxidative dye beside the eye. eyes';
    expect(said('2012', under('under 16 brow only'), TINT)).toEqual([`Aged 13, and bowl B holds tint, ${eye}`]);
    expect(said('2012', under('under 12 temporary only'), TINT)).toEqual([`Aged 13, and bowl B holds tint, ${eye}`]);
    expect(said('2012', [], CREAM, 'place A lashes')).toEqual([`Aged 13, and bowl A holds cream, ${eye}`]);
  });
});

describe('eye-area-dye (Regulation (EC) 1223/2009, Annex III)', () => {
  const said = (...lines: readonly string[]): string[] => saidBy(eyeAreaDye, notesOf([], visitOf(...lines)));

  test('is silent at brow tint, on the head, and at direct colour', () => {
    expect(said('bowl A 10 tint brown + 10 dev-6', 'place A brow')).toEqual([]);
    expect(said(CREAM, 'place A temples')).toEqual([]);
    expect(said('bowl A 10 neon teal', 'place A brow')).toEqual([]);
  });

  test('stops at colour for the head', () => {
    expect(said(CREAM, 'place A left brow')).toEqual(['stop: Bowl A holds cream, permanent, and goes on left brow.']);
  });
});
