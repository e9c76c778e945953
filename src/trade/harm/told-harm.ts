import { isDenied, wholeWord } from '../denial.ts';
import {
  ANYWHERE,
  BARE_SKIN,
  CAUSE_BEFORE,
  ELSEWHERE,
  HAIR,
  HAIR_TOLD,
  HEAD,
  HEAD_OR_SKIN,
  OTHER_CAUSE,
  OTHER_ONE,
  WORK,
} from './context-words.ts';
import { IDIOMS } from './idioms.ts';
import { type Beside, type HarmKind, SIGNS, type Sign } from './signs.ts';

/**
 * Harm that a text tells of: a swollen eye, a blister, hair that snapped. It is the one reading of harm in free text.
 * What is denied, of another cause or of somebody else, and advice for what may come, is none; harm that has gone since
 * is harm still. Words and limits: common practice, no source.
 */
export type HarmTold = {
  readonly kind: HarmKind;
  /** The words that tell of it, in small letters. */
  readonly word: string;
  /** Where they stand in the text, in UTF-16 units. */
  readonly from: number;
  readonly to: number;
};

const SENTENCE_END = /[.;!?()\n–—"“”„«»](?!\d)|\s-+\s/gu;
const CLAUSE_END = new RegExp(
  `[,:]|${wholeWord('and|but|then|though|so|und|aber|dann|et|mais|puis|e|mas|y|pero')}`,
  'giu',
);

/** What may come, is feared, or is to be done if it comes. */
const NOT_YET = new RegExp(
  `${wholeWord(
    [
      "(?<!(?:as|even|asks?|asked|asking|wonders?|wondered|see|unsure|sure)\\s)(?:if|whether)|do not|don't|danger of|suspected|would(?! not|n't)|watch (?:the|her|this)|mind (?:the|her)|ask (?:her )?about|easily|ought to|can (?:\\p{L}+ )*up and|" +
        '(?:asks?|asked|asking|wonders?|wondered) (?:if|whether) (?:it|that|this|bleach|the (?:colou?r|bleach|dye|tint|toner))|should (?:it|she|there|anything|the|he|they|any)|in case|unless|whenever|(?:it|this|that|bleach|colou?r|dye|toner|developer|lightener|which|they) (?:can|may|might|could)|may|might',
      '(?:told|tell|tells) (?:her|him|them) (?:that )?any|at the first|(?:the )?first sign of|read (?:her|him) the leaflet|thought (?:\\p{L}+ ){1,3}(?:saw|had)|(?:to|would|will) (?:avoid|prevent|stop it)|avoid(?:s|ed|ing)?|prevent(?:s|ed|ing)?|(?:protect(?:s|ed)?|guard\\p{L}*) (?:her |the |\\p{L}+ )*(?:from|against)|risks? of|fear(?:s|ed)? (?:of|for)?|afraid (?:of|it)|scared (?:of|it)|terrified of|worr(?:y|ied|ies) (?:about|it\\p{L}*|it.d|that)(?! (?:the|her|his|these|those))|nervous (?:of|about)|warn(?:ed|s)? (?:\\p{L}+ )?(?:about|of|that)|(?:watch(?:ed|ing)?|look(?:ed|ing)?) (?:out )?for|check(?:ed|s|ing)? for|asked about(?! (?:the|her|a))|asked for|(?:talked|spoke) (?:\\p{L}+ )?(?:about|through)|discussed|explain(?:ed|s)?|read about|(?:instead|rather) (?:of|than)|does (?:it|bleach)|tell (?:me|us|io|nia) (?:if|when|the)|call (?:us|me|if|at the first)|at the first sign|the moment it|as soon as it|before it|leaflet|what to do',
      'falls|sonst|nicht über|wenn (?:es|sie|die kopfhaut|etwas|irgend\\p{L}*|ihr)|sollte|um (?:\\p{L}+ )*zu|(?:verm|verh)\\p{L}+ zu|damit|angst vor|(?:kann|könnte|darf)(?: \\p{L}+){0,3}|bei|gegen|vor|sobald|ob (?:es|das)',
      "si (?:ça|cela|elle|la|le|les|jamais|vous|on)|s'il|dès que|au cas où|en cas|pour éviter|éviter|peur (?:de|que)|risque (?:de|d')|(?:peut|peuvent|pourrait)|contre|avertie? (?:de|que)",
      'se (?=\\p{L}+r(?:em)?(?!\\p{L}))|se (?:a|o|houver|tiver|sentir|der|aparecer|começar)|caso|em caso|para (?:evitar|não)|evitar|medo (?:de|que)|risco de|(?:pode|podem|poderia)|contra|assim que',
      'si (?:le|la|les|el|hay|siente|nota|algo|aparece|se|te|pica|arde|escuece)|en caso|para (?:evitar|que no)|miedo (?:a|de)|riesgo de|(?:puede|pueden|podría)|por si|en cuanto',
    ].join('|'),
  )}`,
  'iu',
);

/** Advice that begins its sentence covers it: `if it burns, rinse`; and `can heat up and melt`. */
const AND_NOT_YET = new RegExp(
  `^\\s*(?:if|in case|should|falls|bei|caso|em caso|en caso|en cas|au cas)\\s|${wholeWord('can|may|might|could|kann|könnte|peut|pode|puede')}\\s(?:\\p{L}+\\s){0,3}(?:and|und|et|e|y)\\s*$|${wholeWord('can|may|might|could')}\\s(?:\\p{L}+\\s)?$`,
  'iu',
);

/** What it is only like: `peeling like after a day on the beach`. */
const LIKE = new RegExp(`${wholeWord('like|as if|as though|wie|comme|como')}.*$`, 'iu');

/** Hair that burnt is no skin: `ends burned by the iron`. */
const HAIR_BURNT =
  /(?<!\p{L})(?:hair|ends|lengths|tips|fringe|strands?|haare?|spitzen|cheveux|pointes|cabelos?|pontas|pelo|puntas)\s(?:\p{L}+\s){0,2}(?:burn|verbrannt|brûl|queim|quem)\p{L}*$/iu;

/** A test is made where colour does not come. */
const TEST_SITE = new RegExp(wholeWord('tests?|tested|patch'), 'iu');

/** Hurt by the work itself, whatever else is named. */
const BY_WORK = new RegExp(
  `${wholeWord('from|by|after|to|under|off|where|with|since|post|following|during|in|durch|nach|unter|vom|von|après|par|avec|sous|depois|após|pela|pelo|com|sob|tras|por|con|bajo|después')}\\s(?:\\p{L}+\\s){0,3}(?:dye|tint|colou?r(?:ing)?|bleach|lightener|toner|gloss|developer|peroxide|foils?|patch|rinse|ammonia|fumes|perm|highlights|balayage|demi|permanent|appointment|visit|henna|farbe|färben|blondierung|coloration|couleur|teinture|décoloration|tinta|coloração|descoloração|tinte|coloración|decoloración)(?!\\p{L})`,
  'iu',
);

/** All over, or on a way that began at the head. */
const SPREADS = new RegExp(
  wholeWord(
    'spread(?:s|ing)?|all over|down (?:her|his|to)|whole body|everywhere|überall|partout|todo o corpo|todo el cuerpo',
  ),
  'iu',
);

const OWNER =
  '(?:an?|the|her|his|my|our|their|this|that|two|three|another|one of the|le|la|les|un|une|sa|son|o|a|os|as|um|uma|seu|sua|el|los|las|su|sus|una|den|die|das|der|einen?|eine|ihren?|ihre)';
/** What takes an object, or what anything can do. */
const OF_THINGS =
  /^(?:snap|br[eo]|melt|burn|scald|tear|tore|torn|ripp|lost|losing|cass|quebr|part|romp|rot[oa]|brûl|queim|quem|\p{L}*gebroch|brach|bricht|ri(?:ss|ß)|stung|sting|split)/iu;

/** What may stand after `her` and is no object of hers: `burned her with 40 vol`. */
const NO_OBJECT =
  /^(?:with|at|on|in|from|when|after|and|last|so|really|badly|by|under|to|for|off|up|too|again|twice|once|here|there)(?!\p{L})/iu;
const OBJECT = new RegExp(`^\\s+${OWNER}\\s+((?:\\p{L}+\\s+)?\\p{L}+)`, 'iu');
const SUBJECT = new RegExp(
  `(?<!\\p{L})(?:${OWNER}\\s+((?:\\p{L}+\\s+)?\\p{L}+)|((?:tint(?:ing)? |tail )?(?:comb|brush|clip|foil|nail|(?:hair ?)?grip|slide|bowl|chair|pump|lid|kettle|phone|heel|zip|strap|tube|scales|lamp|mirror|window|door|cape|glove|ice|chocolate|cup|mug|key|bottle)s?))\\s+(?:(?:has|had|have|was|were|is|just|then|finally|nearly|also|hat|ist|est|a|s'est|se)\\s+){0,2}$`,
  'iu',
);
/** Names of hair by where it is, and of no thing in particular. */
const HAIR_ITSELF = new RegExp(
  wholeWord(
    'rest|lot|whole|other|left|right|back|front|top|sides?|crown|nape|underneath|bottom|half|first|last|next|one|few|result|test|whites?|length|inch|inches|perimeter|head|centimetres?|cm|bit|bits|some|temples?|hairline|parting|centre|entire|same|money|middle|ear|extensions?|bonds?|area|beard|moustache|density|third|quarter|perm|highlights?|band|hand|handful',
  ),
  'iu',
);

const besideOf = (beside: Beside, text: string): boolean => {
  switch (beside) {
    case 'bare skin':
      return BARE_SKIN.test(text);
    case 'head':
      return HEAD_OR_SKIN.test(text);
    case 'head or work':
      return HEAD_OR_SKIN.test(text) || WORK.test(text) || SKIN_TOLD.test(text);
    case 'hair':
      return HAIR.test(text) || HAIR_TOLD.test(text);
    case 'nothing':
      return true;
  }
};

/** As she always is: no work did that. */
const BY_NATURE = new RegExp(
  wholeWord(
    'by nature|naturally|(?:has |have |was |were )?always (?:been|had)|since birth|from birth|born with|von natur|von natur aus|de nature|por natureza|por naturaleza',
  ),
  'iu',
);

/** Seen before anything was put on. */
const BEFORE_WORK = new RegExp(
  wholeWord(
    'before (?:we|i|he|she|they) (?:had )?(?:began|begun|started|touched|mixed|put)|when (?:she|he) (?:arrived|came in|sat down)|bevor wir (?:\\p{L}+ ){0,2}(?:anfingen|begannen)|avant (?:que nous|de) commenc\\p{L}+|antes de começar\\p{L}*|antes de empezar',
  ),
  'iu',
);

/** Any strong word for hurt skin: one word bears another out, as `burning` does a doctor. */
const SKIN_TOLD = new RegExp(
  SIGNS.filter(({ kind, beside }) => kind === 'skin' && beside === 'nothing')
    .map(({ words }) => words.source)
    .join('|'),
  'iu',
);

const spanAround = (text: string, ends: RegExp, from: number, to: number): { from: number; to: number } => {
  let start = 0;
  let end = text.length;
  for (const match of text.matchAll(ends)) {
    if (match.index + match[0].length <= from) start = match.index + match[0].length;
    else if (match.index >= to) {
      end = match.index;
      break;
    }
  }
  return { from: start, to: end };
};

/** Whether a thing that is neither hair nor head gave way: `the comb snapped`, `broke a cup`. */
const isOfAThing = (before: string, after: string): boolean => {
  const object = OBJECT.exec(after)?.[1];
  const isHers = (words: string): boolean => HAIR.test(words) || HEAD.test(words) || HAIR_ITSELF.test(words);
  if (object !== undefined && !NO_OBJECT.test(object)) return !isHers(object);
  const subject = SUBJECT.exec(before);
  const thing = subject?.[1] ?? subject?.[2];
  return thing !== undefined && !isHers(thing);
};

/** Whether the skin was hurt by something else, or elsewhere than where colour work comes. */
const isOfAnotherCause = (clause: string, sentence: string, before: string): boolean => {
  if (CAUSE_BEFORE.test(before)) return true;
  if (BY_WORK.test(sentence) || TEST_SITE.test(sentence)) return false;
  if (OTHER_CAUSE.test(clause.replace(LIKE, '')) || ANYWHERE.test(sentence)) return true;
  return ELSEWHERE.test(clause) && !HEAD.test(sentence.replace(ELSEWHERE, '')) && !SPREADS.test(sentence);
};

/**
 * Whether what stands in a text from one character up to another is elsewhere on the body, or of another cause with no word of the head: sunburn
 * on the parting is a sore scalp all the same.
 */
export function isAwayFromHead(text: string, from: number, to: number): boolean {
  const sentence = spanAround(text, SENTENCE_END, from, to);
  const clause = spanAround(text, CLAUSE_END, from, to);
  const own = { from: Math.max(sentence.from, clause.from), to: Math.min(sentence.to, clause.to) };
  const said = text.slice(sentence.from, sentence.to);
  return (
    !HEAD.test(said.replace(ELSEWHERE, '')) &&
    isOfAnotherCause(text.slice(own.from, own.to), said, text.slice(own.from, from))
  );
}

const tellsAt = (plain: string, from: number, to: number, { kind, beside }: Sign): boolean => {
  const sentence = spanAround(plain, SENTENCE_END, from, to);
  const clause = spanAround(plain, CLAUSE_END, from, to);
  const own = { from: Math.max(sentence.from, clause.from), to: Math.min(sentence.to, clause.to) };
  const before = plain.slice(own.from, from);
  const after = plain.slice(to, own.to);
  // Red is a colour of hair too: the skin stands in the same sentence.
  const [begin, end] = beside === 'bare skin' ? [sentence.from, sentence.to] : [0, plain.length];
  if (!besideOf(beside, `${plain.slice(begin, from)} ${plain.slice(to, end)}`)) return false;
  const clauseSaid = plain.slice(own.from, own.to);
  if (BY_NATURE.test(clauseSaid) || BEFORE_WORK.test(clauseSaid)) return false;
  if (NOT_YET.test(before) || AND_NOT_YET.test(plain.slice(sentence.from, from)) || OTHER_ONE.test(before))
    return false;
  const said = plain.slice(sentence.from, sentence.to);
  if (kind === 'skin' && HAIR_BURNT.test(plain.slice(own.from, to))) return false;
  if (kind === 'skin' && isOfAnotherCause(plain.slice(own.from, own.to), said, before)) return false;
  if (OF_THINGS.test(plain.slice(from, to)) && isOfAThing(before, after)) return false;
  return !isDenied(plain, from, to);
};

const firstOf = (plain: string, kind: HarmKind): HarmTold | undefined => {
  let first: HarmTold | undefined;
  for (const one of SIGNS) {
    if (one.kind !== kind) continue;
    for (const match of plain.matchAll(one.words)) {
      const to = match.index + match[0].length;
      if (first !== undefined && first.from <= match.index) break;
      if (!tellsAt(plain, match.index, to, one)) continue;
      first = { kind, word: match[0].toLowerCase(), from: match.index, to };
      break;
    }
  }
  return first;
};

/** Any word at all that could tell of harm: asked first, since a text seldom has one. */
const ANY = new RegExp(SIGNS.map(({ words }) => words.source).join('|'), 'iu');

const harmRead = (text: string): readonly HarmTold[] => {
  const typed = text.replace(/[’‘`´]/gu, "'");
  if (!ANY.test(typed)) return [];
  const plain = typed.replace(IDIOMS, (idiom) => '·'.repeat(idiom.length));
  return (['skin', 'fibre'] as const).flatMap((kind) => firstOf(plain, kind) ?? []);
};

/** The harm of one kind that a text tells of; undefined where it tells of none. */
export function harmOf(text: string, kind: HarmKind): HarmTold | undefined {
  return harmRead(text).find((harm) => harm.kind === kind);
}

/** Whether what stands in a text from one character up to another is said of a thing, as `the clip snapped`, and not of hair. */
export function isSaidOfAThing(text: string, from: number, to: number): boolean {
  const clause = spanAround(text, CLAUSE_END, from, to);
  return OF_THINGS.test(text.slice(from, to)) && isOfAThing(text.slice(clause.from, from), text.slice(to, clause.to));
}
