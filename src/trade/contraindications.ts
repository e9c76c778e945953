import { isLongPast, saidUndenied } from './denial.ts';
import { isAwayFromHead } from './harm/told-harm.ts';

/** Some words as a text has them, from the beginning of a word on. */
const saying = (words: string): RegExp => new RegExp(`(?<!\\p{L})(?:${words})`, 'giu');

const BREATHING = saying(
  'asth?ma|asma|asthme|wheez|inhaler|inhalator|puffer|atemnot|essouffl|falta de ar|bombinha|breathless|breathing (?:trouble|difficult)|short of breath|copd',
);

/**
 * Whether a text on file speaks of breathing trouble. Persulphates are respiratory sensitisers: the French agency ANSES,
 * page "ANSES recommends restricting persulphates in hair products".
 */
export function saysBreathing(text: string): boolean {
  return saidUndenied(text, BREATHING) !== undefined;
}

/** Whether the breathing trouble a text speaks of ended long ago: `asthma as a child, none for thirty years`. */
export function breathingIsPast(text: string): boolean {
  return isLongPast(text);
}

const BLACK_HENNA = saying('black[\\s-]henna');

/** Whether a text on file speaks of black henna: Regulation (EC) 1223/2009, Annex III, label warnings of oxidative dyes. */
export function saysBlackHenna(text: string): boolean {
  return saidUndenied(text, BLACK_HENNA) !== undefined;
}

/** What a label gives as a reason not to colour, kept apart: a rash on the face, and two states of the scalp. */
export type SkinFlag = 'rash' | 'damaged scalp' | 'sensitive scalp';

const near = (words: string): RegExp =>
  saying(`(?:${words})\\p{L}*\\s(?:[\\p{L},]+\\s){0,2}scalp|scalp\\s(?:[\\p{L},]+\\s){0,2}(?:${words})`);

const SKIN_FLAGS: readonly (readonly [SkinFlag, RegExp])[] = [
  ['rash', saying('rash')],
  [
    'damaged scalp',
    near(
      'damag|irritat|inflam|broken|grazed|graze|burn|sore|raw|weep|scratch|wound|lesion|psoriasis|dermatitis|eczema',
    ),
  ],
  [
    'damaged scalp',
    saying(
      'razor nick|nicked|nicks?\\b|(?:broken|grazed|raw) skin|skin (?:is )?broken|graz(?:e|ed)\\b|weeping|sunburn|open (?:cut|wound|sore)',
    ),
  ],
  ['sensitive scalp', near('sensitive|tender|itch')],
];

/**
 * The reason not to colour that a text on file gives; undefined without one. "A rash on your face or sensitive, irritated
 * and damaged scalp": Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes.
 */
export function skinFlag(text: string): SkinFlag | undefined {
  return SKIN_FLAGS.find(([, pattern]) => {
    const said = saidUndenied(text, pattern);
    return said !== undefined && !isAwayFromHead(text, said.index, said.index + said[0].length);
  })?.[0];
}

/** What an allergy is to, as far as it bears on colour. */
export type AllergyTo = 'dye' | 'lightener' | 'peroxide';

const ALLERGENS: readonly (readonly [AllergyTo, RegExp])[] = [
  [
    'dye',
    saying(
      'ppd|\\bptd|p-?phenylene|para-?phenylene|toluene|resorcinol|aminophenol|(?:hair|permanent|oxidative) (?:colou?r|dye|tint)|dye',
    ),
  ],
  ['lightener', saying('persul(?:ph|f)ate|bleach|lightener')],
  ['peroxide', saying('peroxide|developer')],
];

/**
 * What an allergy line names that colour work puts on hair; undefined for others, such as nickel. The dyes: entries 8, 8a,
 * 9a and 22 of Regulation (EC) 1223/2009, Annex III; the rest is common practice, no source.
 */
export function allergyTo(text: string): AllergyTo | undefined {
  return ALLERGENS.find(([, pattern]) => saidUndenied(text, pattern) !== undefined)?.[0];
}
