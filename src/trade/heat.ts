/**
 * What is said of heat put on a head, in the words of the chair (en, de, fr, pt, es): common practice and from memory, no
 * source. A dryer, hood or lamp is `strong`; a warm towel, a cap or the room is `mild`; cool air is none.
 */
export type HeatSaid = 'strong' | 'mild' | 'none' | 'unsaid';

const STRONG =
  /\b(?:dry(?:er|ers|ing)?|dried|diffus\w*|hair ?dry|blow|hood|hooded|climazon|infra ?red|lamp|steam(?:er)?|iron|tongs|hot|heat (?:cap|lamp|gun)|bonnet|rollerball|accelerator|high)|haube|föhn|foehn|fön|heiß|heiss|heizstrahl|lampe|dampf|glätteisen|casque|sèche-?cheveux|séchoir|chaud\b|chauffant|vapeur|infrarouge|secador|secadora|casco|gorro térmic|touca térmic|vaporizador|vapor\b|lâmpada|lámpara|infravermelh|infrarroj|quente\b|caliente\b|plancha|chapinha|calor (?:alto|fuerte|forte)/iu;

const MILD =
  /\b(?:towel|body ?heat|own heat|room|lukewarm|tepid|warm|gentle|cling ?film|film|cap|low|sun)\b|handtuch|lauwarm|körperwärme|raumwärme|warm(?:es|e|em)?\b|serviette|tiède|toalha|morn[ao]\b|toalla|tibi[ao]\b|templad[ao]\b|suave|doux|douce|sanft/iu;

const COOL =
  /\b(?:cool|cold|no heat|without heat|off)\b|\bkalt|\bkühl|froid|frais|\bfri[ao]\b|\bfrí[ao]\b|fresc[ao]\b/iu;

/** Words that make a warm thing of a strong one: a hot towel is a towel, whatever it is called. */
const TOWEL = /towel|handtuch|serviette|toalha|toalla/iu;

/** What the words of a `heat` line say of it. */
export const heatSaid = (says: string): HeatSaid => {
  if (COOL.test(says)) return 'none';
  if (TOWEL.test(says)) return 'mild';
  if (STRONG.test(says)) return 'strong';
  if (MILD.test(says)) return 'mild';
  return 'unsaid';
};
