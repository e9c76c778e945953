import { describe, expect, test } from 'vitest';
import { harmIn } from '../../src/trade/harm/told-harm.ts';

describe('harm told', () => {
  test.each([
    'eyelids swollen, scalp weeping, went to A&E',
    'red and itchy on the skin overnight, gone by noon',
    'scalp blistered there two days later, scab for a fortnight',
    'rang the next morning: hives on the neck and both eyes shut',
    'no redness but blisters behind the ears',
    'itching settled after three days',
    'her husband rang, face swollen, in hospital overnight',
    'burning at the nape after ten minutes',
    'asked if the blisters are normal',
    'scalp sore to touch for a week',
    'felt as if her scalp was burned',
    'doctor gave her steroid cream for her scalp',
    'couldn’t open her eyes on Sunday',
    'Kopfhaut brennt, nässt am Scheitel',
    'am nächsten Tag Lider zugeschwollen',
    'Bläschen? nein, Blasen hinter den Ohren',
    'le cuir chevelu brûle et suinte',
    'paupières gonflées, urgences',
    'bolhas no couro cabeludo no dia seguinte',
    'ardeu muito e inchou o rosto',
    'ampollas detrás de las orejas',
    'se le hinchó la cara',
  ])('to skin: %s', (text) => expect(harmIn(text)?.kind).toBe('skin'));

  test.each([
    'ends gummy when wet, some snapped at the comb',
    'hair came out in clumps in the shower',
    'pillow full of hair',
    'the nape broke off at the root, hair everywhere',
    'lengths melted in the foil',
    'Spitzen gummiartig, Strähne abgebrochen',
    'les pointes cassent, élastiques une fois mouillées',
    'o cabelo derreteu e quebrou nas pontas',
    'el pelo se rompe y parece chicle',
  ])('to hair: %s', (text) => expect(harmIn(text)?.kind).toBe('fibre'));
});

describe('none', () => {
  test.each([
    'snapped a photo for the folder',
    'burnt copper at the ends',
    'sore back, cushion at the basin',
    'sunburn on her shoulders',
    'red hair at last',
    'doctor by profession',
    'rash on the wrist from a strap',
    'rinse at once if it burns',
    'no itching, no redness, scalp calm',
    'no redness, swelling or itching',
    'the comb snapped, hair fine',
    'melted the roots into the lengths',
    'her son broke his arm',
    'itching to go pink',
    'watch for redness on the scalp',
    'told her it may sting',
    'bring forward, she works at the hospital',
    'wasp sting on the neck, in the garden',
    'kein Brennen auf der Kopfhaut',
    'bei Brennen sofort ausspülen',
    'pas de brûlure',
    'sem ardor no couro cabeludo',
    'sin picor',
    'cobre queimado nas pontas',
    'takes her coffee black',
    'softer at the front, less orange',
  ])('%s', (text) => expect(harmIn(text)).toBeUndefined());
});
