import { describe, expect, test } from 'vitest';
import { allergyTo, saysBlackHenna, saysBreathing, skinFlag } from '../../src/trade/contraindications.ts';

describe('breathing trouble (the French agency ANSES on persulphates)', () => {
  test.each(['asthma, carries an inhaler', 'Asthmatic', 'gets wheezy at the basin', 'breathing difficulties, ask'])(
    'is in: %s',
    (text) => {
      expect(saysBreathing(text)).toBe(true);
    },
  );

  test.each(['no asthma', 'never had asthma', 'pregnant', 'takes her time'])('is not in: %s', (text) => {
    expect(saysBreathing(text)).toBe(false);
  });
});

describe('black henna (Regulation (EC) 1223/2009, Annex III, label warnings)', () => {
  test.each(['black henna tattoo, 2016', 'Black-henna at fourteen'])('is in: %s', (text) => {
    expect(saysBlackHenna(text)).toBe(true);
  });

  test.each(['henna 2021', 'never had black henna', 'henna, nearly black'])('is not in: %s', (text) => {
    expect(saysBlackHenna(text)).toBe(false);
  });
});

describe('reasons not to colour (Regulation (EC) 1223/2009, Annex III, label warnings)', () => {
  test.each([
    ['rash on the cheeks', 'rash'],
    ['irritated scalp', 'damaged scalp'],
    ['scalp is grazed at the crown', 'damaged scalp'],
    ['psoriasis on the scalp', 'damaged scalp'],
    ['tender scalp after the relaxer', 'sensitive scalp'],
    ['scalp a little itchy', 'sensitive scalp'],
    ['sensitive and sore scalp', 'damaged scalp'],
  ])('%s', (text, flag) => {
    expect(skinFlag(text)).toBe(flag);
  });

  test.each(['no rash', 'eczema on the neck', 'hearing aid on the left', 'never an irritated scalp'])(
    'is not in: %s',
    (text) => {
      expect(skinFlag(text)).toBeUndefined();
    },
  );
});

describe('what an allergy is to (dyes: Regulation (EC) 1223/2009, Annex III, entries 8, 8a, 9a, 22)', () => {
  test.each([
    ['PPD', 'dye'],
    ['para-phenylenediamine', 'dye'],
    ['toluene-2,5-diamine', 'dye'],
    ['resorcinol', 'dye'],
    ['hair colour, tested here', 'dye'],
    ['hair dye', 'dye'],
    ['persulphates', 'lightener'],
    ['ammonium persulfate', 'lightener'],
    ['bleach', 'lightener'],
    ['peroxide', 'peroxide'],
  ])('%s', (text, to) => {
    expect(allergyTo(text)).toBe(to);
  });

  test.each(['nickel', 'penicillin', 'no hair dye so far', 'plasters, the glue', 'latex'])('not %s', (text) => {
    expect(allergyTo(text)).toBeUndefined();
  });
});
