import { type Exact, exact } from '../text/exact.ts';

/** The ready-for-use limit of hydrogen peroxide on hair, in per cent: it binds the mixture on the head, not the bottle. */
export const LIMIT_READY_FOR_USE: Exact = exact(12);

const ANNEX = 'Regulation (EC) 1223/2009, Annex III';
const LIST = `${ANNEX}, as listed by the Commission`;

export type Limit = {
  readonly substance: string;
  readonly use: string;
  /** Most that the product ready for use may hold, in per cent. */
  readonly percent: Exact;
  /** What the percentage is reckoned as. */
  readonly reckonedAs: string;
  readonly source: string;
  readonly standing: 'published' | 'second-hand' | 'from memory';
};

function limit(
  substance: string,
  use: string,
  percent: Exact,
  reckonedAs: string,
  source: string,
  standing: Limit['standing'] = 'published',
): Limit {
  return { substance, use, percent, reckonedAs, source, standing };
}

const PEROXIDE_SOURCE = `${ANNEX}, entry 12, as replaced by Regulation (EU) 2019/831`;
const RELEASED = 'H2O2, present or released';
const DYE = 'oxidative dye, mixed, on hair';
const AS_IT_IS = 'the substance itself';

const PEROXIDE = limit('hydrogen peroxide', 'hair', LIMIT_READY_FOR_USE, RELEASED, PEROXIDE_SOURCE);

const LIMITS: readonly Limit[] = [
  PEROXIDE,
  limit('hydrogen peroxide', 'skin', exact(4), RELEASED, PEROXIDE_SOURCE),
  limit('hydrogen peroxide', 'nails', exact(2), RELEASED, PEROXIDE_SOURCE),
  limit('p-phenylenediamine', DYE, exact(2), 'free base', `${ANNEX}, entry 8a`, 'second-hand'),
  limit('p-phenylenediamine', 'oxidative dye for lashes, professional', exact(2), 'free base', `${ANNEX}, entry 8b`),
  limit('N-substituted phenylenediamines', DYE, exact(3), 'free base', `${LIST}, entry 8`),
  limit('toluene-2,5-diamine', DYE, exact(2), 'free base', `${ANNEX}, entry 9a`),
  limit('toluene-2,5-diamine', DYE, exact(36, 10), 'sulfate', `${ANNEX}, entry 9a`),
  limit('resorcinol', DYE, exact(125, 100), AS_IT_IS, `${ANNEX}, entry 22 a and b; opinion SCCS/1619/20`),
  limit('resorcinol', 'lotions and shampoos', exact(5, 10), AS_IT_IS, `${ANNEX}, entry 22 c; opinion SCCS/1619/20`),
  limit('m-aminophenol', DYE, exact(12, 10), AS_IT_IS, `${ANNEX}, entry 217; Directive 2011/59/EU`),
  limit('4-amino-3-nitrophenol', DYE, exact(15, 10), AS_IT_IS, `${ANNEX}, entry 215; Directive 2011/59/EU`),
  limit('2,7-naphthalenediol', DYE, exact(1), AS_IT_IS, `${ANNEX}, entry 216; Directive 2011/59/EU`),
  limit('4-chlororesorcinol', DYE, exact(25, 10), AS_IT_IS, `${ANNEX}, entry 254; Directive 2012/21/EU`),
  limit('hydroxyethyl-p-phenylenediamine', DYE, exact(2), 'sulfate', `${ANNEX}, entry 256; Directive 2012/21/EU`),
  limit('1-naphthol', DYE, exact(2), AS_IT_IS, `${ANNEX}, entry 16`, 'from memory'),
  limit('ammonia', 'any', exact(6), 'NH3', `${LIST}, entry 4`),
  limit('thioglycolic acid', 'waving and straightening', exact(8), 'the acid', `${LIST}, entry 2a`),
  limit('thioglycolic acid', 'waving and straightening, professional', exact(11), 'the acid', `${LIST}, entry 2a`),
  limit('thioglycolic acid', 'hair products rinsed off', exact(2), 'the acid', `${LIST}, entry 2a`),
];

export type Law = {
  readonly name: string;
  readonly peroxide: Limit;
  /** The label warning says the product is not meant for anyone younger than this, in years. */
  readonly youngest: number;
  readonly youngestSays: string;
  readonly youngestSource: string;
  readonly limits: readonly Limit[];
};

const AGE_SOURCE = `${ANNEX}, label warnings of the oxidative hair dyes`;
const AGE_SAYS = 'Labels of oxidative hair dyes say that they are not meant for anyone under 16.';

/**
 * Limits on the finished product, by the name a salon's `policy law` gives. No limit on persulphates was found in
 * Annex III, so none stands here; nor does the entry say whether its per cent is by weight or by volume.
 */
export const LAW = {
  eu: {
    name: 'European Union',
    peroxide: PEROXIDE,
    youngest: 16,
    youngestSays: AGE_SAYS,
    youngestSource: AGE_SOURCE,
    limits: LIMITS,
  },
} as const satisfies Record<string, Law>;

export type LawName = keyof typeof LAW;

/** Whether a word, in small letters, names a law of the table. */
export function isLaw(word: string): word is LawName {
  return Object.hasOwn(LAW, word);
}
