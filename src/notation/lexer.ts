import { type CustomPatternMatcherFunc, createToken, type IToken, Lexer, type TokenType } from 'chevrotain';

/**
 * Tokens are shapes, never meanings: no token is a keyword, a unit or a time of day, and no pattern asks for a
 * particular digit. So a line and the same line with every digit folded to 0 give the same kinds at the same places.
 * The lexer never errs: whatever starts no other token is an `Unknown` run.
 */

/** One code for every bucket in which the lexer keeps first characters: the whole range at little cost. */
const EVERY_CODE: number[] = [
  ...Array.from({ length: 256 }, (_, code) => code),
  ...Array.from({ length: 258 }, (_, bucket) => Math.min(256 + bucket * 255, 0xffff)),
];
const LETTER = /\p{L}/u;
const LETTER_CODES = EVERY_CODE.filter((code) => code > 255 || LETTER.test(String.fromCharCode(code)));

/** The lexer drops the `u` flag of a plain pattern, so patterns that need it are matched here. */
const sticky =
  (pattern: RegExp): CustomPatternMatcherFunc =>
  (text, offset) => {
    pattern.lastIndex = offset;
    return pattern.exec(text);
  };

/** A token matched here; its pattern is its label, so that the grammar reference can print it. */
const custom = (name: string, pattern: RegExp, starts: (string | number)[]): TokenType =>
  createToken({
    name,
    pattern: { exec: sticky(pattern) },
    label: pattern.source,
    line_breaks: false,
    start_chars_hint: starts,
  });

/** A token that the lexer matches; with its first characters named, the pattern need not be taken apart for them. */
const plain = (name: string, starts: string, pattern: RegExp): TokenType =>
  createToken({ name, pattern, start_chars_hint: [...starts] });

const DIGITS = '0123456789';
const DASHES = '-‐‑‒–—―−';
const FRACTIONS = '¼½¾⅓⅔⅛⅜⅝⅞';

export const Space = createToken({
  name: 'Space',
  pattern: /[\t\v\f\r \u00a0\u1680\u2000-\u200b\u2028\u2029\u202f\u205f\u3000\ufeff]+/,
  group: Lexer.SKIPPED,
  line_breaks: false,
  start_chars_hint: [...'\t\v\f\r \u00a0\u1680\u2000\u200b\u2028\u2029\u202f\u205f\u3000\ufeff'],
});
/** Neither a comment nor an open quotation holds the white space at the end of its line. */
export const Comment = custom(
  'Comment',
  /(?<=[\s\u200b])#(?=[\s\u200b]|$)(?:[\s\S]*[^\s\u200b])?|(?<=^[\s\u200b]*)#(?:[\s\S]*[^\s\u200b])?/uy,
  ['#'],
);
export const Quoted = plain('Quoted', '"“”„«', /"[^"“”]*["“”]|[“”„][^"“”]*["“”]|«[^»]*»/);
export const OpenQuote = plain('OpenQuote', '"“”„«', /["“”„«](?:[\s\S]*[^\s\u200b])?/);
export const DateShape = plain('Date', DIGITS, /\d{4}[-‐-―−]\d{1,2}[-‐-―−]\d{1,2}(?!\d)/);
export const MonthShape = plain('Month', DIGITS, /\d{4}[-‐-―−]\d{2}(?![\d‐-―−-])/);
/** A colon between figures, with spaces around it where a hand puts them (`1 : 2`). */
export const Pair = plain(
  'Pair',
  `${DIGITS}${FRACTIONS}`,
  /(?:\d+(?:[.,]\d+)?[¼½¾]?|[¼½¾])(?:[ \t]*:[ \t]*(?:\d+(?:[.,]\d+)?[¼½¾]?|[¼½¾]))+/,
);
export const Slashed = custom('Slashed', /\d+(?:[.,]\d+)?(?:\/[\p{L}\d]+)+/uy, [...DIGITS]);
export const Chain = plain('Chain', DIGITS, /\d+(?:[.,]\d+){2,}/);
export const Dotted = plain('Dotted', DIGITS, /\d+[.,]\d+/);
export const Fraction = plain('Fraction', `${DIGITS}${FRACTIONS}`, /\d*[¼½¾⅓⅔⅛⅜⅝⅞]/);
export const Whole = plain('Whole', DIGITS, /\d+/);
export const Count = custom('Count', /[xX×]\d+(?![\p{L}\d])/uy, ['x', 'X', '×']);
export const Word = custom(
  'Word',
  /[ap]m(?=[-–—]\d)|[AP]M(?=[-–—]\d)|\p{L}[\p{L}\p{M}\p{N}]*(?:[-‐‑–.'’_][\p{L}\p{M}\p{N}]+)*/uy,
  LETTER_CODES,
);
export const Plus = plain('Plus', '+＋', /[+＋]/);
export const Dash = plain('Dash', DASHES, /[-‐-―−]/);
export const Comma = plain('Comma', ',،、', /[,،、]/);
export const Percent = plain('Percent', '%', /%/);
export const Tilde = plain('Tilde', '~≈', /[~≈]/);
export const Doubt = plain('Doubt', '?', /\?/);
export const Equal = plain('Equal', '=', /=/);
export const Slash = plain('Slash', '/', /\//);
export const Stop = plain('Stop', '.;:()', /[.;:()]/);
export const Unknown = custom(
  'Unknown',
  /[^\s\u200b\p{L}\d¼½¾⅓⅔⅛⅜⅝⅞"“”„«#×~≈,،、+＋%=?/.;:()‐-―−-]+|[\s\S]/uy,
  EVERY_CODE,
);

export const TOKENS: TokenType[] = [
  Space,
  Comment,
  Quoted,
  OpenQuote,
  DateShape,
  MonthShape,
  Pair,
  Slashed,
  Chain,
  Dotted,
  Fraction,
  Whole,
  Count,
  Word,
  Plus,
  Dash,
  Comma,
  Percent,
  Tilde,
  Doubt,
  Equal,
  Slash,
  Stop,
  Unknown,
];

let lexer: Lexer | undefined;

/** Tokens of one line (without its ending), each with its offset. Building the lexer waits for the first line. */
export const tokensOf = (line: string): IToken[] => {
  lexer ??= new Lexer(TOKENS, {
    positionTracking: 'onlyOffset',
    ensureOptimizations: true,
    skipValidations: true,
    recoveryEnabled: true,
    lineTerminatorCharacters: ['\n'],
    lineTerminatorsPattern: /\n/g,
  });
  return lexer.tokenize(line).tokens;
};
