/** The colours that tones are opposed by. */
export type ToneColour = 'yellow' | 'orange' | 'red' | 'violet' | 'blue' | 'green';

/**
 * What neutralises what: violet and yellow, blue and orange, green and red. Every training page read agrees, among
 * them the US training page "Underlying pigment chart".
 */
export const OPPOSITES: Readonly<Record<ToneColour, ToneColour>> = {
  yellow: 'violet',
  violet: 'yellow',
  orange: 'blue',
  blue: 'orange',
  red: 'green',
  green: 'red',
};

/** Tone words by the colour they lean to: common practice, no source. A family without an opposite has no direction. */
export const TONE_FAMILIES = {
  yellow: ['yellow', 'gold', 'golden', 'honey'],
  orange: ['orange', 'copper', 'brassy', 'apricot'],
  red: ['red', 'mahogany', 'pink', 'rose'],
  violet: ['violet', 'mauve', 'pearl', 'silver', 'purple', 'plum'],
  blue: ['blue', 'ash', 'steel'],
  green: ['green', 'matt', 'khaki'],
  neutral: ['neutral', 'natural', 'beige', 'brown', 'chocolate'],
  warm: ['warm'],
  cool: ['cool'],
} as const;

export type ToneFamily = keyof typeof TONE_FAMILIES;
export type ToneWord = (typeof TONE_FAMILIES)[ToneFamily][number];

/** Words that describe the tone of hair. */
export const TONE_WORDS: readonly ToneWord[] = Object.values(TONE_FAMILIES).flat();

const FAMILY_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(TONE_FAMILIES).flatMap(([family, words]) => words.map((word) => [word, family] as const)),
);

/**
 * Meanings of tone digits until a range declares its own. Two published lists agree on 1 to 6 (consumer page
 * "Understanding home hair colour", November 2015; a hairdressing lesson on numbering) and `0` is natural in all; no two
 * agree on 7 to 9, so those stay open.
 */
export const DEFAULT_TONE_DIGITS: Readonly<Record<string, ToneWord>> = {
  '0': 'natural',
  '1': 'ash',
  '2': 'violet',
  '3': 'gold',
  '4': 'copper',
  '5': 'mahogany',
  '6': 'red',
};

/** Whether a word is a tone word. Case-blind. */
export function isTone(word: string): boolean {
  return FAMILY_OF.has(word.toLowerCase());
}

/** The family of a tone word; undefined when the word is not one. Case-blind. */
export function toneFamily(word: string): ToneFamily | undefined {
  return FAMILY_OF.get(word.toLowerCase()) as ToneFamily | undefined;
}
