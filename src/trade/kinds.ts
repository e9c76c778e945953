/** What a shelf item can be. */
export const KINDS = [
  'permanent',
  'demi',
  'semi',
  'temporary',
  'toner',
  'high-lift',
  'lightener',
  'developer',
  'additive',
  'remover',
  'filler',
  'conditioner',
  'treatment',
  'brow',
  'goods',
] as const;

export type Kind = (typeof KINDS)[number];

export type KindFacts = {
  /** Works by oxidation: always, never, or only once a developer is mixed in. */
  readonly oxidative: boolean | 'with developer';
  /** Can lighten the hair's own pigment. */
  readonly lightens: boolean;
  /** Leaves colour in the hair. */
  readonly colours: boolean;
  /** Comes as a range of shades. */
  readonly shades: boolean;
  /** What its time is counted from unless its `time` line says otherwise. */
  readonly timeFrom: 'first-on' | 'all-on';
  /** Holds oxidative dye, so a skin test is on record first. */
  readonly skinTest: boolean;
  /** Stands outside the ratio of colour to developer. */
  readonly outsideRatio: boolean;
};

const PLAIN: KindFacts = {
  oxidative: false,
  lightens: false,
  colours: false,
  shades: false,
  timeFrom: 'all-on',
  skinTest: false,
  outsideRatio: false,
};

const DIRECT_COLOUR: KindFacts = { ...PLAIN, colours: true, shades: true };
const DEVELOPED_COLOUR: KindFacts = { ...DIRECT_COLOUR, oxidative: 'with developer', skinTest: true };
const OXIDATIVE_COLOUR: KindFacts = { ...DIRECT_COLOUR, oxidative: true, skinTest: true };
const LIFTING_COLOUR: KindFacts = { ...OXIDATIVE_COLOUR, lightens: true };

/**
 * Common practice, no source, but for the skin test: the label warnings on oxidative hair dyes in Regulation (EC)
 * 1223/2009, Annex III. A maker's leaflet may ask for a test before any other kind as well.
 */
const FACTS: Readonly<Record<Kind, KindFacts>> = {
  permanent: LIFTING_COLOUR,
  demi: OXIDATIVE_COLOUR,
  semi: DIRECT_COLOUR,
  temporary: DIRECT_COLOUR,
  toner: DEVELOPED_COLOUR,
  'high-lift': LIFTING_COLOUR,
  lightener: { ...PLAIN, oxidative: true, lightens: true, timeFrom: 'first-on' },
  developer: { ...PLAIN, oxidative: true },
  additive: { ...PLAIN, outsideRatio: true },
  remover: PLAIN,
  filler: DEVELOPED_COLOUR,
  conditioner: PLAIN,
  treatment: PLAIN,
  brow: DEVELOPED_COLOUR,
  goods: PLAIN,
};

/** Whether a word, in small letters, is a kind of shelf item. */
export function isKind(word: string): word is Kind {
  return Object.hasOwn(FACTS, word);
}

/** What is taken to hold for every item of a kind. */
export function kindFacts(kind: Kind): KindFacts {
  return FACTS[kind];
}
