import { TONE_WORDS } from './tone.ts';

/**
 * Words by which a colourist says that a mix is to change: a tone, a depth, a strength, one thing for another. English,
 * German, French, Portuguese and Spanish. Common practice, no source; the list is not all that can be said.
 */

/** What a stretch of text says is to change in a mix. */
export type MixChange = {
  /** Its tone: `less gold`, `cooler`, `plus froid`. */
  readonly tone: boolean;
  /** Its depth or lift: `darker`, `half a level up`. */
  readonly depth: boolean;
  /** Its strength: `20vol`, `weaker developer`. */
  readonly strength: boolean;
  /** How much of it: `10 g less`, `mix more`, `-20 %`. */
  readonly amount: boolean;
  /** One thing for another, or one left out: `instead of`, `swap`, `statt`. */
  readonly swap: boolean;
  /** Shades it names, as typed: `6/1`, `10V`. */
  readonly shades: readonly string[];
};

const anyOf = (...words: readonly string[]): string => `(?:${words.join('|')})`;
const whole = (pattern: string): RegExp => new RegExp(`(?<![\\p{L}\\p{N}])${pattern}(?![\\p{L}\\p{N}])`, 'iu');

const TONES = anyOf(
  ...TONE_WORDS,
  'ash(?:y|en)?|golds?|brass(?:iness)?|warmth|coppery?|reddish|yellowish|violets?|pearly?|natural|beige|pink',
  'gold(?:ig|stich)?|asch(?:ig|e)?|kupfer(?:ig|n)?|rot(?:stich)?|rötlich|violett|gelb(?:stich)?|natur|kühl|kalt|warm',
  'dor[ée]e?s?|cendr[ée]e?s?|cuivr[ée]e?s?|rouges?|violine|iris[ée]e?s?|nacr[ée]e?s?|jaunes?|chaude?s?|froide?s?',
  'dourad[oa]s?|dorad[oa]s?|cinza|ceniza|cenizo|cobre|acobread[oa]s?|cobriz[oa]s?|vermelh[oa]s?|roj[oa]s?|violetas?|bege|amarel[oa]s?|amarill[oa]s?|quentes?|c[áa]lid[oa]s?|fr[íi][oa]s?',
);
const DEPTHS = anyOf(
  'dark|light|deep|bright|pale|blonde?|hell|dunkel|tief|blond',
  'fonc[ée]e?s?|claire?s?|profonde?s?',
  'escur[oa]s?|oscur[oa]s?|clar[oa]s?|profund[oa]s?',
);
const STRENGTHS = anyOf('strong|weak|stark|schwach|forte?s?|faible|fraco|d[ée]bil|fuerte');

const MORE = anyOf(
  'less|more|no|without|leave out|take out|drop|skip|omit|lose|add|extra|little|bit of|touch of|hint of|splash of|too|too much|not enough',
  'weniger|mehr|keine?n?|ohne|etwas|zu|zu viel|nicht genug',
  "moins|plus|sans|pas de|un peu de|trop|pas assez|d'",
  'menos|mais|m[áa]s|sem|sin|nada de|demasiad[oa]|muito|muy|un poco de|um pouco de',
);
const of = "(?:\\s+(?:de|d'|of|the|du|der|die|das|den|o|a|el|la))?";
const AFTER = anyOf('demais|demasiado|de m[áa]s|de trop');

const TONE_CHANGE = [
  whole(`${MORE}${of}\\s+${TONES}`),
  whole(`${TONES}\\s+${AFTER}`),
  whole(
    anyOf(
      'cooler|colder|warmer|ashier|redder|yellower|golden-er|rosier|coppery-er|pinker|browner|greyer',
      'kühler|kälter|wärmer|aschiger|goldiger|röter|kupfriger|violetter',
    ),
  ),
];
const DEPTH_CHANGE = [
  whole(`${MORE}${of}\\s+${DEPTHS}`),
  whole(`${DEPTHS}\\s+${AFTER}`),
  whole(anyOf('darker|lighter|deeper|brighter|paler|blonder|richer', 'dunkler|heller|tiefer|blonder')),
  whole('(?:half a|one|a|two|1|½|2)\\s+(?:levels?|depths?|shades?)(?:\\s+(?:up|down|higher|lower|deeper))?'),
  whole('(?:eine?n?|halbe?n?|zwei)\\s+(?:ton|töne|stufen?)\\s+(?:heller|dunkler|höher|tiefer)'),
];
const STRENGTH_CHANGE = [
  whole(anyOf('stronger|weaker|milder', 'stärker|schwächer')),
  whole(`${MORE}${of}\\s+${STRENGTHS}`),
  whole('(?:low|high|lower|higher|weak|mild)\\s+(?:developer|peroxide|volume|vol|strength)'),
  /(?<![\p{N}.,])\d{1,2}\s?vol(?:umes?|s)?(?!\p{L})/iu,
  // A share of something else, `20 % grey`, is no strength, and neither is a change by so much.
  /(?<![\p{N}.,+−–-]|[+−–-]\s)(?:[1-9]|1[0-2])(?:[.,]\d)?\s?%(?!\s*(?:grey|gray|off|grau|gris))/u,
];
const AMOUNT = [
  /[+−–-]\s?\d+(?:[.,]\d+)?\s?%/u,
  whole(
    '\\d+(?:[.,]\\d+)?\\s?(?:g|grams?|gramm|grammes|gramas|gramos|%)\\s+(?:less|more|weniger|mehr|de moins|de plus|moins|plus|menos|mais|m[áa]s)',
  ),
  whole('(?:mix|mixed|make)\\s+(?:up\\s+)?(?:a (?:bit|little)\\s+)?(?:less|more|half|double)'),
  whole('(?:half|double|twice|smaller|bigger|larger)\\s+(?:the\\s+)?(?:bowls?|mix|amount)'),
  whole('(?:weniger|mehr)\\s+(?:anmischen|mischen|farbe)'),
];
const SWAP = [
  whole(
    anyOf(
      'instead|instead of|rather than|in place of|swap|swapped|switch|switch to|change to|change for|replace|leave out|without|try|use|back to|over to',
      'statt|anstatt|anstelle|stattdessen|tauschen|wechseln|ersetzen|ohne|lieber',
      'au lieu|à la place|remplacer|plutôt|changer|sans',
      'en vez de|en lugar de|em vez de|em lugar de|no lugar de|trocar|cambiar|usar|sem|sin',
    ),
  ),
];

/** A wish for a colour, which is a change of the mix once it is planned: `thinking plum`, `go red`. */
const WISH = [
  whole(
    `${anyOf('go|going|want|wants|wanted|try|thinking|thinks of|will|möchte|veut|voudrait|quiere|quer')}\\s+(?:[\\p{L}]+\\s+){0,2}?${TONES}`,
  ),
  whole(anyOf('softer|weicher|sanfter|plus doux|más suave|mais suave')),
];

/** What takes a comparison back: `no darker`, `not too gold`, `nicht kühler`. */
const DENIED = [
  whole(
    `${anyOf("no|not|don't|never|nicht|pas|não|nao|nunca")}\\s+(?:(?:go|too|any|much|zu|trop|muito|demasiado|plus|más|mais)\\s+){0,2}(?:\\p{L}+er|${TONES}|${DEPTHS})`,
  ),
];
/** Of these only what follows `no` and is no comparison is left out of the mix. */
const LEFT_OUT = whole(`no\\s+${TONES}`);

const LEFT_OUT_SHADE =
  /(?<!\p{L})(?:without|no|no more|not|leave out|drop|skip|lose|instead of|rather than|in place of|ohne|keine?n?|statt|anstatt|sans|pas de|au lieu d[eu]|plutôt que|sem|sin|em vez d[eo]|en vez de|en lugar de|no lugar d[eo])\s+(?:(?:the|any|das|die|le|la|el|l'|o|a)\s+)?(\d{1,2}[/.-]\d{1,3}|\d{1,2}\p{Lu}{1,3})(?![\p{L}\p{N}/]|[.,]\d)/giu;

const SHADE =
  /(?<![\p{L}\p{N}/.,-])(?:\d{1,2}\/\d{1,3}|\d{1,2}[.-]\d{1,3}|\d{1,2}\p{Lu}{1,3})(?![\p{L}\p{N}/]|[.,]\d)/gu;
/** The shades that a text leaves out: `without the 7/4`, `6/1 instead of 6/3`. */
export const leftOutIn = (text: string): string[] =>
  [...text.matchAll(LEFT_OUT_SHADE)].flatMap(([, shade]) => shade ?? []);

/** What reads as a shade and is a share of the head or a fraction of something. */
const FRACTION = /^\s*(?:head|heads|kopf|tête|cabe[çz]a|inch|cm|mm|w|weeks?|tubes?|packs?|%)/iu;

/** What reads as a shade and is a day of the calendar: `back on 12/12`. */
const DAY = /(?<!\p{L})(?:on|until|till|from|before|since|am|bis|ab|le|el|até|desde)\s+$/iu;

const isFound = (text: string, patterns: readonly RegExp[]): boolean => patterns.some((one) => one.test(text));

/** Takes what is denied out of a text, so that only what is asked for is left. */
const asserted = (text: string): string =>
  DENIED.reduce(
    (left, one) => left.replace(new RegExp(one.source, 'giu'), (said) => (LEFT_OUT.test(said) ? said : ' ')),
    text,
  );

/**
 * What a clause says is to change in a mix; undefined where it speaks of no change. `planned`: it stands in a plan for
 * next time, where a wish or a shade alone is a change.
 */
export const mixChangeIn = (clause: string, planned: boolean): MixChange | undefined => {
  const text = asserted(clause);
  const shades = [...text.matchAll(SHADE)]
    .filter(
      ({ 0: shade, index }) => !FRACTION.test(text.slice(index + shade.length)) && !DAY.test(text.slice(0, index)),
    )
    .map(([shade]) => shade);
  const tone = isFound(text, TONE_CHANGE) || (planned && isFound(text, WISH));
  const depth = isFound(text, DEPTH_CHANGE);
  const strength = isFound(text, STRENGTH_CHANGE);
  const swap = isFound(text, SWAP);
  const amount = planned && isFound(text, AMOUNT);
  const isSaid = tone || depth || strength || amount || swap || (planned && shades.length > 0);
  return isSaid ? { tone, depth, strength, amount, swap, shades } : undefined;
};

const SAME = whole(
  anyOf(
    'same|as before|as it was|as last time|unchanged|as is|again|gleich|wie immer|wie zuletzt|unverändert|pareil|comme avant|idem|igual|como antes|lo mismo|o mesmo',
  ),
);

/** Whether a clause says that all stays as it was. */
export const saysTheSame = (clause: string): boolean => SAME.test(clause) && mixChangeIn(clause, false) === undefined;

const WHEN = whole(
  anyOf(
    'first|last|longer|shorter|earlier|later|minutes?|min|zuerst|zuletzt|länger|kürzer|minuten|premier|plus longtemps|primero|primeiro|más tiempo|mais tempo',
  ),
);

/** Whether a clause speaks of order or time, and of nothing that is mixed. */
export const saysWhen = (clause: string): boolean => WHEN.test(clause) && mixChangeIn(clause, true) === undefined;
