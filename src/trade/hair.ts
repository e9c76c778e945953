export type HistoryFacts = {
  /** Left dye in the hair. */
  readonly coloured: boolean;
  /** Took pigment out of the hair. */
  readonly lightened: boolean;
  /** May have left metal in the hair. */
  readonly metal: boolean;
  /** Broke and reset bonds of the fibre. */
  readonly restructured: boolean;
};

const UNTOUCHED: HistoryFacts = { coloured: false, lightened: false, metal: false, restructured: false };
const COLOURED: HistoryFacts = { ...UNTOUCHED, coloured: true };
const RESTRUCTURED: HistoryFacts = { ...UNTOUCHED, restructured: true };

/**
 * What earlier services leave behind: common practice, no source, but for reshaping services, which weaken bleached
 * hair further: Journal of the Society of Cosmetic Chemists 44(6), 1993, table VI. A colour restorer
 * holds metal salts and a compound henna may, so those two words count as metal.
 */
const HISTORY_FACTS = {
  'box-colour': COLOURED,
  'salon-colour': COLOURED,
  lightener: { ...UNTOUCHED, lightened: true },
  henna: { ...COLOURED, metal: true },
  metallic: { ...COLOURED, metal: true },
  'direct-dye': COLOURED,
  perm: RESTRUCTURED,
  relaxer: RESTRUCTURED,
  smoothing: RESTRUCTURED,
  none: UNTOUCHED,
} as const satisfies Record<string, HistoryFacts>;

export type HistoryWord = keyof typeof HISTORY_FACTS;

/** Whether a word, in small letters, is a history word. */
export function isHistory(word: string): word is HistoryWord {
  return Object.hasOwn(HISTORY_FACTS, word);
}

/** What a history word says of the hair. */
export function historyFacts(word: HistoryWord): HistoryFacts {
  return HISTORY_FACTS[word];
}

/** Qualities of hair with their words, thinnest, lowest, shortest or straightest first. Trade terms. */
export const HAIR_QUALITIES = {
  strand: ['fine', 'medium', 'coarse'],
  density: ['low', 'medium', 'high'],
  porosity: ['low', 'medium', 'high'],
  length: ['crop', 'short', 'chin', 'shoulder', 'mid-back', 'waist', 'long'],
  form: ['straight', 'wavy', 'curly', 'coily'],
} as const;

export type HairQuality = keyof typeof HAIR_QUALITIES;

/**
 * The longest hair in millimetres that a word of length is said of, along the hair from the crown: common practice, no
 * source, and on the long side, so that nothing is taken for cut off that may still hang. `long` has no end.
 */
const LONGEST: ReadonlyMap<string, number> = new Map([
  ['crop', 50],
  ['short', 150],
  ['chin', 300],
  ['shoulder', 400],
  ['mid-back', 650],
  ['waist', 900],
]);

/** The longest that a word of length, in small letters, is said of, in millimetres; undefined where it has no end. */
export function longestOf(word: string): number | undefined {
  return LONGEST.get(word);
}

/**
 * Words for artificial colour that is dark, as hands write them in English, German, French, Portuguese and Spanish;
 * so do shade numbers from 1 to 3 (`1/0`, `2.0`). Common practice, no source.
 */
const DARK =
  /(?<!\b(?:no|not|never|without|kein|keine|nicht|nie|pas|jamais|sans|nunca|não|sem|sin)\s(?:\p{L}+\s)?)(?:(?<!\p{L})(?:(?:blue[- ]?|jet[- ]?|soft[- ]?)?black|dark(?:er|est)?|espresso|ebony|raven|schwarz\p{L}*|(?:dunkel|tiefbraun)\p{L}*|noire?s?|foncée?s?|pret[oa]s?|escur\p{L}*|negr[oa]s?|oscur\p{L}*|moren[oa]s?)(?!\p{L})(?!\s(?:henna|tea|blonde?|roots?))|(?<!\bon\s|[\d./,-])[123](?:\/(?:00?|[1-7]{1,2})|\.00?)(?![\d%./,-]))/iu;

/** The words by which a note says that colour in the hair is dark; undefined without any, and where they are denied. */
export function darkWords(text: string): string | undefined {
  return DARK.exec(text)?.[0].toLowerCase();
}

/** The darkest-looking depths, up to which artificial colour is called dark: common practice, no source. */
export const DARK_COLOUR = 4;

/** Whether a word, in small letters, describes a quality of hair. */
export function isHairWord(quality: HairQuality, word: string): boolean {
  return (HAIR_QUALITIES[quality] as readonly string[]).includes(word);
}

/** Tests a note can record. Trade terms; an awarding unit on hair colouring lists the same ones and elasticity for stretch. */
export const TEST_KINDS = ['skin', 'strand', 'metal', 'stretch', 'porosity'] as const;

export type TestKind = (typeof TEST_KINDS)[number];

/** Whether a word, in small letters, is a kind of test. */
export function isTestKind(word: string): word is TestKind {
  return (TEST_KINDS as readonly string[]).includes(word);
}

/**
 * Words for what a test showed; `clear` and `reaction` stand for any test. Bubbles, heat and a change of colour end a
 * test for metal: hairdressing page "Incompatibility test". A strand dragging or smooth under the fingers: cosmetology
 * course page on hair analysis. The rest is common practice, no source.
 */
export const TEST_RESULTS: Readonly<Record<TestKind, readonly string[]>> = {
  skin: ['clear', 'reaction'],
  strand: ['clear', 'reaction', 'gummy', 'breaks'],
  metal: ['clear', 'reaction', 'bubbles', 'heat', 'colour-change'],
  stretch: ['clear', 'reaction', 'springs-back', 'stays-stretched', 'breaks'],
  porosity: ['clear', 'reaction', 'smooth', 'rough', 'uneven'],
};

const ADVERSE: ReadonlySet<string> = new Set([
  'reaction',
  'gummy',
  'breaks',
  'bubbles',
  'heat',
  'colour-change',
  'stays-stretched',
]);

/** Whether a result word, in small letters, speaks against going on. */
export function isAdverse(result: string): boolean {
  return ADVERSE.has(result);
}
