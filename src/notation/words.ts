/**
 * The first words of the notation: which entries they may stand in and which form their line has.
 *
 * Reads: nothing. Gives: the table that the cutter, the grammar, the binders and the word table in grammar/ share.
 */

export type EntryKind = 'salon' | 'stylist' | 'range' | 'product' | 'stock' | 'client' | 'visit';

/**
 * How a line is cut into groups. `header` and `loose`: one group. `mix`: groups joined by `+`. `list`: groups parted by
 * commas. `clock`: a time or a span first, then a list. `free`: the rest of the line is text and is not read.
 */
export type Form = 'header' | 'loose' | 'mix' | 'list' | 'clock' | 'free';

export type WordFacts = { readonly form: Form; readonly under: readonly EntryKind[]; readonly says: string };

export const HEADERS: readonly EntryKind[] = ['salon', 'stylist', 'range', 'product', 'stock', 'client', 'visit'];

const SHELF: readonly EntryKind[] = ['range', 'product'];
const line = (form: Form, under: readonly EntryKind[], says: string): WordFacts => ({ form, under, says });

/** Every word that a line can begin with, apart from the headers. */
export const BODY_WORDS = {
  money: line('loose', ['salon'], 'the salon’s currency'),
  scale: line('loose', ['salon'], 'what the scales can show'),
  hours: line('clock', ['salon'], 'opening hours, by which a bare 2.38 is read'),
  growth: line('loose', ['salon'], 'growth a day until a client’s own is measured'),
  policy: line('loose', ['salon'], 'the salon’s own rule'),

  mix: line('loose', SHELF, 'the maker’s mix ratio'),
  uses: line('list', SHELF, 'its own developers or activator'),
  strength: line('loose', SHELF, 'strengths of developer it takes'),
  time: line('list', SHELF, 'how long it takes, and from when'),
  lift: line('list', SHELF, 'the maker’s claim of lift'),
  tones: line('list', SHELF, 'what the tone digits mean'),
  shades: line('list', SHELF, 'shades that go by a name'),
  pack: line('loose', SHELF, 'pack and price'),
  reorder: line('loose', SHELF, 'when to buy again'),
  density: line('loose', SHELF, 'grams a millilitre'),
  keeps: line('loose', SHELF, 'how long it keeps once opened'),
  measure: line('loose', SHELF, 'a measure of its own'),
  scalp: line('loose', SHELF, 'how strong it may be on the scalp'),
  dose: line('loose', SHELF, 'how much of an additive'),
  over: line('loose', SHELF, 'the darkest hair a toner goes over'),

  in: line('loose', ['stock'], 'what came in'),
  count: line('loose', ['stock'], 'what was counted'),
  out: line('loose', ['stock'], 'what went out otherwise'),

  born: line('loose', ['client'], 'date, month or year of birth'),
  natural: line('list', ['client'], 'natural depth'),
  grey: line('list', ['client'], 'share of grey, by zone'),
  hair: line('list', ['client'], 'thickness, density, porosity, length, form'),
  pattern: line('loose', ['client'], 'how the hair grows'),
  history: line('loose', ['client'], 'what was done before'),
  allergy: line('loose', ['client'], 'a known allergy'),
  caution: line('free', ['client', 'visit'], 'what to know before touching the hair'),
  avoid: line('loose', ['client'], 'what the client does not want'),
  consent: line('loose', ['client'], 'what was agreed to'),
  letter: line('loose', ['client'], 'what a doctor writes'),

  zone: line('list', ['salon', 'client', 'visit'], 'a place with a name of its own'),
  test: line('loose', ['client', 'visit'], 'a test made, read, or decided against'),
  hold: line('loose', ['client', 'visit'], 'what not to use, and until when'),
  because: line('loose', ['client', 'visit'], 'one rule explained on this entry'),

  asked: line('loose', ['visit'], 'asked that day, and the answer'),
  aim: line('free', ['visit'], 'what the client asks for'),
  want: line('list', ['visit'], 'depth and tone to reach'),
  start: line('list', ['visit'], 'what is found before anything'),
  regrowth: line('loose', ['visit'], 'new growth measured'),
  bowl: line('mix', ['visit'], 'one mix'),
  plus: line('mix', ['visit'], 'a further component of a bowl'),
  weighed: line('mix', ['visit'], 'what the scales really said'),
  again: line('loose', ['visit'], 'an earlier bowl remade'),
  more: line('loose', ['visit'], 'another mix of the same bowl'),
  place: line('list', ['visit'], 'where a bowl goes, and how'),
  leave: line('list', ['visit'], 'left out on purpose'),
  on: line('clock', ['visit'], 'applied: first on to all on'),
  zero: line('clock', ['visit'], 'when the clock of the head begins'),
  check: line('clock', ['visit'], 'looked at'),
  off: line('clock', ['visit'], 'taken off'),
  heat: line('clock', ['visit'], 'heat'),
  wash: line('clock', ['visit'], 'washed'),
  rinse: line('clock', ['visit'], 'rinsed'),
  dry: line('clock', ['visit'], 'dried'),
  cut: line('clock', ['visit'], 'cut'),
  left: line('list', ['visit'], 'left in the bowls, and its fate'),
  home: line('mix', ['visit'], 'goes home with the client'),
  reaction: line('clock', ['visit'], 'a reaction'),
  stopped: line('clock', ['visit'], 'stopped early'),
  declined: line('loose', ['visit'], 'refused, and why'),
  result: line('list', ['visit'], 'what came of it'),
  photo: line('free', ['visit'], 'a file beside the notes'),
  care: line('free', ['visit'], 'aftercare given'),
  note: line('free', HEADERS, 'anything else'),
  charge: line('list', ['visit'], 'charged, by item'),
  deposit: line('loose', ['visit'], 'a deposit taken or used'),
  paid: line('list', ['visit'], 'paid, and how'),
  split: line('list', ['visit'], 'shared between stylists'),
  fit: line('loose', ['visit'], 'goods used on the client'),
  redo: line('loose', ['visit'], 'put right free of charge'),
  about: line('loose', ['visit'], 'later news of another visit'),
  call: line('loose', ['visit'], 'later news of this visit'),
  next: line('list', ['visit'], 'when, and what to change'),
} as const satisfies Readonly<Record<string, WordFacts>>;

export type BodyWord = keyof typeof BODY_WORDS;

const FORMS: ReadonlyMap<string, Form> = new Map<string, Form>([
  ...HEADERS.map((word): [string, Form] => [word, 'header']),
  ...Object.entries(BODY_WORDS).map(([word, facts]): [string, Form] => [word, facts.form]),
]);

/** The form of a line by its first word, folded; undefined when the word is not of the notation. */
export const formOf = (word: string): Form | undefined => FORMS.get(word);

/** Whether a folded word opens an entry. */
export const isHeader = (word: string): word is EntryKind => FORMS.get(word) === 'header';

/** Whether a folded word is a body word. */
export const isBodyWord = (word: string): word is BodyWord => {
  const form = FORMS.get(word);
  return form !== undefined && form !== 'header';
};

/** First words of earlier years that are called otherwise now. */
export const RENAMED_WORDS: ReadonlyMap<string, BodyWord> = new Map([['allow', 'because']]);

/** Every first word, headers first. */
export const FIRST_WORDS: readonly string[] = [...FORMS.keys()];

/** Other ways in which a hand writes a unit, and the unit as records write it. */
export const UNIT_NAMES: Readonly<Record<string, string>> = {
  gr: 'g',
  gm: 'g',
  gram: 'g',
  grams: 'g',
  mls: 'ml',
  litre: 'l',
  litres: 'l',
  drops: 'drop',
  part: 'p',
  parts: 'p',
  vols: 'vol',
  volume: 'vol',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  day: 'd',
  days: 'd',
  wk: 'w',
  wks: 'w',
  week: 'w',
  weeks: 'w',
  month: 'mo',
  months: 'mo',
  inch: 'in',
  inches: 'in',
  packs: 'pack',
};

/** Words that follow a number as its unit; no name may be one of these. */
export const UNIT_WORDS: ReadonlySet<string> = new Set([
  ...Object.keys(UNIT_NAMES),
  ...['g', 'kg', 'ml', 'l', 'oz', 'oz-wt', 'floz-us', 'floz-uk', 'drop', 'p', 'vol', 'min', 'h', 'd', 'w', 'mo'],
  ...['mm', 'cm', 'in', 'pack', 'each', 'am', 'pm'],
]);

/** Words with a meaning inside a line; no name may be one of these. */
export const SOFT_WORDS: ReadonlySet<string> = new Set([
  'from',
  'of',
  'for',
  'by',
  'to',
  'until',
  'at',
  'every',
  'last',
  'read',
  'in',
  'gap',
  'turn',
  'mirror',
  'lot',
  'use-by',
  'if',
  'with',
]);

/** Whether a folded word has the shape of a bowl's name: one letter, and digits if she likes; never `x` and a digit. */
export const isBowlName = (word: string): boolean => {
  const second = word.charCodeAt(1);
  // Most words go on with a plain letter, and need no pattern.
  return !(second >= 97 && second <= 122) && /^\p{L}\d*$/u.test(word) && !/^x\d/.test(word);
};
