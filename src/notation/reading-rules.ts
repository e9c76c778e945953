import type { Severity } from '../text/finding.ts';

/**
 * What can be wrong with the typing of a line, whatever it is about: the names under which the reader reports, how
 * grave each is and why it matters. Their examples stand with the other rules.
 */
export const READING_RULES = {
  'not-utf-8': { severity: 'fix', why: 'Letters outside English may show wrongly until the file is saved as UTF-8.' },
  'nul-byte': { severity: 'fix', why: 'A NUL byte is a sign of a damaged file; the line is kept and not read.' },
  'line-too-long': { severity: 'fix', why: 'A line this long is no note; it is kept and not read.' },
  'merge-conflict': {
    severity: 'stop',
    why: 'Two versions of the same lines stand side by side, and neither can be trusted.',
  },
  'no-entry': { severity: 'fix', why: 'A line before any header belongs to nobody.' },
  'misspelt-header': {
    severity: 'fix',
    why: 'Lines under a header that cannot be read must not fall to the client above.',
  },
  'header-shape': { severity: 'fix', why: 'A header without what it needs cannot be filed.' },
  'wrong-entry': { severity: 'fix', why: 'A word under the wrong header would say something about the wrong thing.' },
  'unknown-word': {
    severity: 'fix',
    why: 'A line whose first word is unknown is kept as typed and counts for nothing.',
  },
  'not-read': { severity: 'fix', why: 'What is not read is not reckoned with.' },
  'nothing-said': { severity: 'fix', why: 'A word alone says nothing yet.' },
  'open-quote': { severity: 'fix', why: 'A quotation without an end swallows the rest of its line.' },
  'bad-date': { severity: 'fix', why: 'A date is year-month-day, so that 3/4 is never read two ways.' },
  'bad-time': { severity: 'fix', why: 'A time that is no time of day cannot be reckoned with.' },
  'two-readings': { severity: 'fix', why: 'A figure that can be read two ways is asked about, never guessed.' },
  'bare-oz': { severity: 'fix', why: 'An ounce is four different amounts.' },
  'no-bowl': { severity: 'fix', why: 'Without the bowl’s name the line belongs to no bowl.' },
  'no-name': { severity: 'fix', why: 'An amount of nothing cannot be reckoned.' },
  'name-taken': { severity: 'fix', why: 'A unit or a word of the notation cannot be a name.' },
  'caution-to': {
    severity: 'mind',
    why: 'A caution ends only with `until`, lest a month in its text end it by mistake.',
  },
} as const satisfies Readonly<Record<string, { severity: Severity; why: string }>>;

export type ReadingRule = keyof typeof READING_RULES;

/** Something wrong with the typing of one line, at its characters. `line` is counted from the entry's header. */
export type Notice = {
  readonly rule: ReadingRule;
  readonly line: number;
  readonly at: number;
  readonly message: string;
  readonly todo?: string;
  readonly label?: string;
  /** What to put in the place of the characters, where that mends it. */
  readonly put?: {
    readonly title: string;
    readonly text: string;
    readonly sure: 'certain' | 'likely';
    readonly at?: number;
  };
};
