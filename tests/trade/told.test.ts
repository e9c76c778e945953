import { describe, expect, test } from 'vitest';
import { crossAllergens, namesHairDye, withoutOtherDyes } from '../../src/trade/allergens.ts';
import { allergyTo } from '../../src/trade/contraindications.ts';
import { bringsDye, isClear } from '../../src/trade/dye.ts';
import { grantsColour } from '../../src/trade/letters.ts';
import { medicineBegun, treatmentTold } from '../../src/trade/medical.ts';
import { hennaTold, metalTold } from '../../src/trade/metal.ts';
import { reactionTold } from '../../src/trade/reaction-words.ts';
import { relaxedTold } from '../../src/trade/relaxed.ts';
import { isNo } from '../../src/trade/said.ts';

describe('metal', () => {
  test.each([
    'he combs a lead-acetate colour restorer through every morning',
    'uses a grey restorer, for years',
    'smelled of rotten eggs when wet, and gets darker every day',
    'combs something through, darker every morning',
    'combs it through every night and the grey turns yellow, then brown, smells of matches',
    'benutzt einen Haarfarbwiederhersteller',
    'Bleiacetat im Haarwasser',
    'applique un restaurateur de couleur',
    'sels métalliques',
    'usa loção com acetato de chumbo',
    'usa sales metálicas',
  ])('is named by "%s"', (text) => {
    expect(metalTold(text)?.sure).toBe(true);
  });

  test.each([
    'wet hair smells of rotten eggs',
    'a bit darker every day since the holiday product',
    'riecht nach faulen Eiern, wenn es nass ist',
    'cada dia mais escuro',
    'cada día más oscuro',
    'plus foncé chaque jour',
  ])('may be there by one sign: "%s"', (text) => {
    expect(metalTold(text)?.sure).toBe(false);
  });

  test.each([
    'never used a colour restorer',
    'no metallic salts, no henna',
    'lead-free restorer? no',
    'perm lotion smelled of rotten eggs',
    'the remover stank of eggs',
    'evenings get darker every day',
    'keine Metallsalze',
    'sans sels métalliques',
    'combed through to the ends',
    'metal clips at the crown',
  ])('is not told by "%s"', (text) => {
    expect(metalTold(text)).toBeUndefined();
  });

  test('henna on the hair is told apart from tattoos and brows', () => {
    expect(hennaTold('had henna on the lengths in 2024')).toBe('henna');
    expect(hennaTold('green powder stirred with black tea, left on overnight')).toBe('green powder');
    expect(hennaTold('green powder for the plants')).toBeUndefined();
    expect(hennaTold('henna brows only')).toBeUndefined();
    expect(hennaTold('black henna tattoo')).toBeUndefined();
    expect(hennaTold('never any henna')).toBeUndefined();
  });
});

describe('relaxed hair', () => {
  test.each([
    'relaxer every eight weeks at home',
    'lengths relaxed last spring',
    'chemically straightened in 2026',
    'défrisage au printemps',
    'relaxamento químico em março',
    'alisado químico',
  ])('is told by "%s"', (text) => {
    expect(relaxedTold(text)).toBeDefined();
  });

  test.each([
    'relaxed about the length',
    'never had a relaxer',
    'relaxer: none',
    'a relaxed wave',
    'she relaxed at the basin',
  ])('is not told by "%s"', (text) => {
    expect(relaxedTold(text)).toBeUndefined();
  });
});

describe('treatment', () => {
  test.each([
    'chemotherapy, last round three weeks ago, scalp not seen by a doctor yet',
    'finishing radiotherapy next week',
    'Chemo seit August',
    'chimio en cours',
    'em quimioterapia',
    'radioterapia desde mayo',
    'had an operation two weeks ago',
    'knee surgery last month, general anaesthetic',
  ])('is told by "%s"', (text) => {
    expect(treatmentTold(text)).toBeDefined();
  });

  test.each([
    'no chemotherapy, thyroid only',
    'chemotherapy as a child',
    'chemo years ago',
    'her mother has chemotherapy',
    'chemotherapy, oncologist is happy with colour',
    'nose operation as a teenager',
    'the whole operation took two hours',
  ])('is not told by "%s"', (text) => {
    expect(treatmentTold(text)).toBeUndefined();
  });
});

describe('a medicine', () => {
  test.each([
    'medicines: a new blood thinner',
    'medicines',
    'started antibiotics last week',
    'on a new tablet for blood pressure',
    'nimmt seit Mai neue Tabletten',
    'a commencé des antibiotiques',
    'começou um remédio novo',
    'empezó antibióticos',
  ])('was begun by "%s"', (text) => {
    // `asked medicines yes` says no more than its topic.
    expect(medicineBegun(text)).toBeDefined();
  });

  test.each([
    'medicines: the same as in spring',
    'no new medicines',
    'blood thinners for years',
    'her husband started tablets',
    'new shampoo',
  ])('was not begun by "%s"', (text) => {
    expect(medicineBegun(text)).toBeUndefined();
  });
});

describe('an allergy', () => {
  test.each([
    ['benzocaine', 'benzocaine'],
    ['procaine at the dentist', 'procaine'],
    ['PABA in sun cream', 'PABA'],
    ['IPPD, black rubber', 'black rubber'],
    ['blue clothing dye on nylon tights', 'textile dye'],
    ['Disperse Blue 106', 'textile dye'],
    ['Benzocain', 'benzocaine'],
    ['benzocaína', 'benzocaine'],
    ['teintures textiles', 'textile dye'],
  ])('to %s lets expect more: %s', (text, name) => {
    expect(crossAllergens(text)).toContain(name);
  });

  test.each([
    'latex gloves',
    'lidocaine',
    'nickel',
    'no reaction to benzocaine',
    'benzocaine was tried by the clinic and is fine',
    'rubber bands',
  ])('to %s does not', (text) => {
    expect(crossAllergens(text)).toEqual([]);
  });

  test('to dye of clothes is none to hair dye, and hair dyes called clear are left out', () => {
    expect(
      allergyTo(withoutOtherDyes('blue clothing dye on nylon tights, patch tested, hair dyes clear')),
    ).toBeUndefined();
    expect(allergyTo(withoutOtherDyes('clothing dye and hair dye'))).toBe('dye');
    expect(namesHairDye('clothing dye, hair dyes clear')).toBe(false);
    expect(namesHairDye('clothing dye and hair dye')).toBe(true);
    expect(crossAllergens('dark tights, the dye in them; black rubber')).toEqual(['black rubber', 'textile dye']);
  });
});

describe('a letter', () => {
  test.each([
    'Dr N: may have hair colour',
    'no objection to colour',
    'not the dye but the plaster; may be tested and have hair dye again',

    'patch tests negative, not allergic to PPD',
    'keine Bedenken, darf färben',
    'aucune contre-indication',
    'sem alergia, pode pintar',
    'sin alergia, puede teñirse',
  ])('gives leave: "%s"', (text) => {
    expect(grantsColour(text)).toBe(true);
  });

  test.each([
    'no hair dye',
    'must not have PPD',
    'direct dye only',
    'await patch tests in June',
    'PPD positive',
    'keine Haarfarbe',
    'pas de coloration',
    'não pode pintar',
    'no puede teñirse',
  ])('gives none: "%s"', (text) => {
    expect(grantsColour(text)).toBe(false);
  });
});

test.each([
  ['a tingle, as always', 'mild'],
  ['stinging, a scratch she forgot', 'mild'],
  ['blistered behind the ear', 'grave'],
  ['ein Kribbeln', 'mild'],
  ['geschwollene Augen', 'grave'],
  ['burning', undefined],
  ['burning, no blisters', undefined],
])('a reaction told as "%s" is %s', (text, how) => {
  expect(reactionTold(text)).toBe(how);
});

test('dye comes with colour, not with a clear shade, lightener or care', () => {
  expect(bringsDye('demi', '7/1')).toBe(true);
  expect(bringsDye('demi', 'clear')).toBe(false);
  expect(bringsDye('semi', 'teal')).toBe(true);
  expect(bringsDye('lightener', undefined)).toBe(false);
  expect(bringsDye(undefined, undefined)).toBe(true);
  expect(isClear('clear')).toBe(true);
});

test('an answer is a bare no', () => {
  for (const text of ['none', 'nothing new', 'none that she knows of', 'nein', 'ninguno.'])
    expect(isNo(text)).toBe(true);
  for (const text of ['none now, asthma as a child', 'a new one', 'not sure']) expect(isNo(text)).toBe(false);
});
