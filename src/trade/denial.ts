/**
 * What a text denies, in the five languages that free text is read in (English, German, French, Portuguese, Spanish):
 * one reading for asthma, rashes, broken hair and metal alike. It goes clause by clause, so that "no redness, but
 * blisters" still tells of blisters. What has ended ("gone", "no longer", "nicht mehr") was there, and is not denied.
 * The words are common practice, no source.
 */

/** A word by itself in any script, since `\b` knows plain letters only. */
export const wholeWord = (words: string): string => `(?<![\\p{L}\\p{N}])(?:${words})(?![\\p{L}\\p{N}])`;

const whole = (words: string, flags = 'iu'): RegExp => new RegExp(wholeWord(words), flags);

/** Where a sentence ends; a decimal point does not end one. */
const SENTENCE = /[;:!?()\n–—]|\.(?!\d)|\s-+\s/gu;

/** Where the reach of a denial ends within a sentence. */
const CLAUSE = new RegExp(
  `,|${wholeWord(
    [
      'and|but|then|though|although|however|yet|so|until|till|because|when|while|except|besides|only|just|merely|with|where',
      'und|aber|dann|sondern|doch|bis|weil|nur|außer|ausser|jedoch|dafür|mit',
      "et|mais|puis|jusqu'à|seulement|sauf|car|avec",
      'e|mas|até|porém|porque|só|exceto|depois|com',
      'y|pero|sino|hasta|solo|sólo|excepto|luego|con',
    ].join('|'),
  )}`,
  'giu',
);

const DENYING = whole(
  [
    "no(?! one)|not|never|none|nothing|without|hardly|barely|neither|nor|ruled out|rules out|free (?:of|from)|denie[sd]|nil|zero|\\p{L}+n't",
    'cannot|(?:did|does|do|has|had|have|is|was|are|were|wo|would|could|ca|should)nt',
    'kein\\p{L}*|nicht|nie|niemals|ohne|nichts|weder',
    "pas|jamais|aucune?|sans|ni|rien|n'\\p{L}+ (?:pas|jamais|rien)",
    'não|nao|sem|nenhuma?|nunca|nem|nada',
    'sin|ning[úu]n[oa]?|jamás|tampoco',
  ].join('|'),
  'giu',
);

/** Portuguese has `no` for "in the": a text in it denies with other words. */
const PORTUGUESE = new RegExp(
  `[ãõ]|${wholeWord('uma|ela|com|ao|aos|couro|depois|cabelos?|rosto|pescoço|orelhas?|olhos?|ficou|ligou|voltou|ardeu|coceira|bolhas?|feridas?|inchad[oa]s?|dias? seguinte')}`,
  'iu',
);

/** What stands straight before a denial that ends something: `já não`, `ya no`. */
const NO_MORE_BEFORE = /(?<!\p{L})(?:já|ja|ya)\s*$/iu;
/** What follows a denial, or what it denies, and ends something: `no longer`, `nicht mehr`, `não coça mais`. */
const NO_MORE_AFTER = /^\s*(?:longer|more|any\s?more|mehr|länger|plus|mais|más)(?!\p{L})/iu;

/** Between a denial and a word: then it is something else that is denied, such as that it got better, or was told. */
const OTHERWISE = whole(
  [
    'gone|better|settled|healed|heal|improv\\p{L}*|good|well|fine|calm\\p{L}*|happy|right|okay|ok|clear(?:ed|ing)?|stop(?:ped|ping)?|subsid\\p{L}*|eas(?:ed|ing)|recovered|go(?:ing)? away|went away',
    'knows?|knew|sure|idea|doubt|wonder|surprised?|sle(?:ep|pt)|open(?:ed)?|touch(?:ed)?|comb(?:ed)?|brush(?:ed)?|bear|lie|wear|rins(?:e|ed)|wash(?:ed)?|tested|tests?|gloves?|warn(?:ing|ed)|matter|say|said|tell|told|mention(?:ed)?|admit(?:ted)?|listen(?:ed)?|wait(?:ed)?|such|this|like|worse|expect(?:ed)?|time|help(?:ed)?|come|came|pleased',
    'weg|besser|gut|verheilt|schlafen|geschlafen|weiß|weiss|sicher|gesagt|erwähnt|öffnen|aufgehört|abgeklungen|wie|solche\\p{L}*',
    'passé|mieux|bien|guéri\\p{L}*|dormi\\p{L}*|dit|sait|ouvrir|arrêt\\p{L}*|disparu',
    'melhor\\p{L}*|bem|bom|passou|sarou|disse|sabe|abrir|parou|parava|para de',
    'mejor\\p{L}*|buen[oa]?|curó|dijo|durmió|paraba|dejaba|deja',
  ].join('|'),
);

/** `any` binds to its denial over what else stands between: `could not see any redness`. */
const ANY = whole('any|a single|a sign|sign of|signs of|irgend\\p{L}*|la moindre|qualquer');

/** Most words between a denial and what it denies. */
const REACH = 7;

/** What denies from behind, at the end of its clause: `asthma: none`, `Asthma? no`, `brennt nicht`. */
const DENIED_BEHIND =
  /^[\s:?=–—-]*(?:(?:is|was|were|are|been|reported|at all|gar|überhaupt|auch)\s)*(?:none|nil|zero|0|no|nope|never|negative|absent|ruled out|denied|not? (?:seen|noted|present|found|there|reported|known)|none (?:seen|noted|known|reported)|kein\p{L}*|nein|nicht|nie|non|aucune?|jamais|não|nao|nenhuma?|nunca|ning[úu]n[oa]?)(?=\s*(?:$|[,.;!)–—]|at all))/iu;

/** `ne brûle pas`: a denial that stands round its word. */
const NE = /(?<!\p{L})(?:ne\s+|n')(?:(?:l|m|s|t)['’]|(?:lui|le|la|les|se|me)\s)?(?:a\s|est\s|ont\s|sont\s)?$/iu;
const NE_PAS = /^\p{L}*\s*(?:pas|jamais|rien|aucun|point)(?!\p{L})/iu;

/** One more thing of a list that a denial opens: a word or two. */
const ITEM = /^\s*(?:[\p{L}'-]+\s+)?[\p{L}'-]+\s*$/u;
/** Alternatives: `swelling or itching`. */
const OR = whole('or|nor|oder|noch|ou|ni|nem|o|u');
/** Said of what was seen, where a list of nouns would go on: `no pain, swollen`. */
const STATE = /(?:ed|en|broke|snapped|sore|raw|red)$/iu;

const lastBreak = (text: string, breaks: RegExp): number => {
  let end = 0;
  for (const match of text.matchAll(breaks)) end = match.index + match[0].length;
  return end;
};

/** Whether a denial in a clause reaches to its end; `behind` is what follows the word there. */
const reachesEnd = (clause: string, behind: string, portuguese: boolean): boolean => {
  if (NO_MORE_AFTER.test(behind)) return false;
  for (const match of clause.matchAll(DENYING)) {
    const word = match[0].toLowerCase();
    const between = clause.slice(match.index + match[0].length);
    if (portuguese && word === 'no') continue;
    if (/^\s*more\s/iu.test(between) && /^[^,.;]*\sthan\s/iu.test(behind)) return true;
    if (NO_MORE_BEFORE.test(clause.slice(0, match.index)) || NO_MORE_AFTER.test(between)) continue;
    if (between.split(/\s+/u).filter(Boolean).length > REACH) continue;
    if (OTHERWISE.test(between) && !ANY.test(between)) continue;
    return true;
  }
  return false;
};

/** Pieces of a sentence between commas and conjunctions, with what parts each from the one before. */
const piecesOf = (sentence: string): { text: string; by: string }[] => {
  const pieces: { text: string; by: string }[] = [];
  let start = 0;
  let by = '';
  for (const match of sentence.matchAll(CLAUSE)) {
    pieces.push({ text: sentence.slice(start, match.index), by });
    by = match[0].toLowerCase();
    start = match.index + by.length;
  }
  return [...pieces, { text: sentence.slice(start), by }];
};

const AND = new Set(['and', 'und', 'et', 'e', 'y']);

/** Whether the word stands in a list that a denial opened: `no redness, swelling or itching`, `no pain and swelling`. */
const isListed = (before: string, word: string, after: string, portuguese: boolean): boolean => {
  const [rest = ''] = after.split(SENTENCE);
  const pieces = piecesOf(before + word + rest);
  const own = piecesOf(before + word).length - 1;
  const opened = pieces.slice(0, own).findLastIndex(({ text }) => reachesEnd(text.trimEnd(), '', portuguese));
  if (opened < 0) return false;
  const list = pieces.slice(opened + 1);
  const isShort = ({ text, by }: { text: string; by: string }): boolean =>
    (by === ',' || AND.has(by)) && text.split(OR).every((one) => ITEM.test(one));
  const upToOwn = list.slice(0, own - opened);
  if (!upToOwn.every(isShort)) return false;
  const [first] = upToOwn;
  const last = list.at(-1);
  if (list.some(({ text }) => OR.test(text))) return true;
  if (STATE.test(word)) return false;
  if (list.length === 1) return first !== undefined && AND.has(first.by) && ITEM.test(first.text.trim());
  return list.every(isShort) && last !== undefined;
};

/**
 * Whether a text denies what stands in it from one character up to another: `no asthma`, `asthma: none`, `did not burn`,
 * `no redness, swelling or itching`, `kein Brennen`, `sans rougeur`, `sem coceira`, `sin ampollas`. "No redness, but
 * blisters" does not deny the blisters, and "no longer itches" denies nothing that was.
 */
export function isDenied(text: string, from: number, to: number): boolean {
  const plain = text.replace(/[’‘`´]/gu, "'");
  const start = lastBreak(plain.slice(0, from), SENTENCE);
  const before = plain.slice(start, from);
  const after = plain.slice(to);
  const portuguese = PORTUGUESE.test(plain);
  const clause = before.slice(lastBreak(before, CLAUSE));
  if (reachesEnd(clause, after, portuguese)) return true;
  if (DENIED_BEHIND.test(after) || (NE.test(clause) && NE_PAS.test(after))) return true;
  return isListed(before, plain.slice(from, to), after, portuguese);
}

/**
 * The first place at which a text says what a pattern has and does not deny it; undefined where it says it nowhere.
 * The pattern needs the flag `g`.
 */
export function saidUndenied(text: string, pattern: RegExp): RegExpExecArray | undefined {
  for (const match of text.matchAll(pattern))
    if (!isDenied(text, match.index, match.index + match[0].length)) return match;
  return undefined;
}

const LONG_PAST = whole(
  [
    'as a (?:child|kid|boy|girl|baby|teenager)|in (?:her |his |their )?childhood|childhood|outgr(?:ew|own)|gr(?:ew|own) out of|used to|years ago|decades ago|(?:none|not|nothing|never|no \\p{L}+) (?:for|in|since) (?:[\\p{L}\\d]+ )?(?:\\p{L}+ )?(?:years|decades|childhood|\\d{4})|long gone|no longer|not any ?more',
    'als kind|in der kindheit|kindheits\\p{L}*|früher|nicht mehr|vor \\p{L}+ jahren|seit (?:\\p{L}+|\\d+) jahren (?:nicht|kein)\\p{L}*',
    "enfant|dans l'enfance|pendant l'enfance|il y a (?:\\p{L}+|\\d+) ans|plus depuis",
    'na infância|em criança|quando criança|há (?:\\p{L}+|\\d+) anos|já não',
    'de niñ[oa]|en la infancia|hace (?:\\p{L}+|\\d+) años|ya no',
  ].join('|'),
);

const STILL = whole(
  'still|carries|inhaler|puffer|again|sometimes|mild|now|noch|manchmal|inhalator|encore|parfois|ainda|às vezes|todavía|aún|a veces',
  'giu',
);

/** Whether a text tells of something that ended long ago: `as a child, none for thirty years`. "Still" is not past. */
export function isLongPast(text: string): boolean {
  const plain = text.replace(/[’‘`´]/gu, "'");
  return LONG_PAST.test(plain) && saidUndenied(plain, STILL) === undefined;
}
