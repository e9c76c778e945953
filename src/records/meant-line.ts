import { readLine } from '../notation/read-line.ts';
import type { Notice } from '../notation/reading-rules.ts';
import { BODY_WORDS, type EntryKind, FIRST_WORDS, isBodyWord } from '../notation/words.ts';
import { editDistance, nearNames } from '../text/near.ts';
import { harmOf } from '../trade/harm/told-harm.ts';

/**
 * What a line that begins with no word of its entry may have been meant as.
 *
 * Reads: the text of the line and the kind of its entry. Gives: the wording of a notice, or near words.
 */
type Meant = Pick<Notice, 'message' | 'todo'>;

const FIGURE = '(?:\\d+(?:[.,]\\d+)?[¼½¾]?|[¼½¾])';
/** A weight or a strength straight before or after a name, and a plus sign, a ratio or a strength further on. */
const MIX = new RegExp(
  `^[\\s\\p{Pd}•*]*(?:~?${FIGURE}\\s*(?:g|gr|gm|grams?|ml|p|parts?|scoops?)?\\s+\\p{L}|[\\p{L}-]+\\s+[^+]*${FIGURE}).*(?:\\+.*\\d|\\d\\s*(?:%|vol|:\\s*\\d))`,
  'iu',
);

/** Characters of a line that are looked at for a mix: it is a short thing, and the pattern slow on what is not. */
const MIX_LONGEST = 200;

/** What a whole line is like: a reaction, or a mix without its bowl; undefined for any other. */
export const meantLine = (text: string, kind: EntryKind): Meant | undefined => {
  if (kind !== 'visit' && kind !== 'client') return undefined;
  const felt = harmOf(text, 'skin')?.word;
  const { word } = readLine(text);
  const near = isBodyWord(word) ? [] : nearWords(word, kind);
  if (
    felt !== undefined &&
    near[0] !== 'reaction' &&
    (!isBodyWord(word) || !BODY_WORDS[word].under.some((under) => under === 'visit'))
  )
    return {
      message: `The line tells of \`${felt}\` and is not read.`,
      todo:
        kind === 'visit'
          ? 'Write it as `reaction HH:MM`, then where and what: a reaction stands first on the card.'
          : 'Write it under its visit as `reaction HH:MM`, then where and what, or write `caution` before it.',
    };
  if (kind !== 'visit' || isBodyWord(word) || near.length > 0 || !MIX.test(text.slice(0, MIX_LONGEST)))
    return undefined;
  return { message: 'The line looks like a bowl, and names none.', todo: 'Write `bowl A` before it.' };
};

/** Everyday words that are one letter from a short word of the notation; none of them is a slip of it. */
const EVERYDAY: ReadonlySet<string> = new Set([
  ...['air', 'arm', 'calm', 'came', 'cape', 'car', 'card', 'case', 'cell', 'cup', 'cute', 'does', 'done', 'fat', 'fix'],
  ...['head', 'hear', 'held', 'hole', 'hope', 'hose', 'if', 'is', 'it', 'lets', 'list', 'mole', 'move', 'neat', 'need'],
  ...[
    'news',
    'none',
    'nose',
    'not',
    'of',
    'oil',
    'old',
    'one',
    'or',
    'our',
    'out',
    'pain',
    'pair',
    'pale',
    'red',
    'said',
  ],
  ...['warm', 'warn', 'wart', 'went'],
]);

const SHORT = 4;

const lettersOf = (word: string): string => [...word].sort().join('');

/**
 * Words of the notation near to a mistyped first word, those of the entry first. A short one keeps its first letter, or
 * has all its letters in another order (`iam`).
 */
export const nearWords = (word: string, kind: EntryKind): readonly string[] => {
  if (word === '' || EVERYDAY.has(word)) return [];
  const own = FIRST_WORDS.filter((one) => isBodyWord(one) && BODY_WORDS[one].under.some((under) => under === kind));
  const near = [...new Set([...nearNames(word, own), ...nearNames(word, FIRST_WORDS)])];
  const fits = (one: string): boolean =>
    Math.min(one.length, word.length) > SHORT ||
    (editDistance(one, word) === 1 && (one[0] === word[0] || lettersOf(one) === lettersOf(word)));
  return near.filter(fits).slice(0, 3);
};
