/** Places on the head and face; `left` and `right` are the client's own. Trade terms; a salon or a head may add its own. */
export const ZONES = [
  'hairline',
  'fringe',
  'front',
  'parting',
  'top',
  'crown',
  'temples',
  'sides',
  'left',
  'right',
  'back',
  'occipital',
  'nape',
  'brow',
  'lashes',
  'beard',
  'off-head',
] as const;

/** Places along the hair, from the scalp outwards. */
export const ALONG = ['roots', 'mids', 'lengths', 'ends'] as const;

/** Words for several places at once. */
export const GROUPS = ['t-section', 'half-head', 'full-head', 'all', 'rest'] as const;

/** Places beside the eye: Regulation (EC) 1223/2009, Annex III has entries of its own for dyes on lashes (8b). */
export const EYE = ['brow', 'lashes'] as const;

/** Places that are not the hair of the head. */
export const OFF_SCALP_HAIR = ['brow', 'lashes', 'beard', 'off-head'] as const;

/** How colour is placed. Trade terms. */
export const TECHNIQUES = [
  'slice',
  'weave',
  'fine-weave',
  'babylight',
  'paint',
  'panel',
  'block',
  'apply',
  'comb-through',
  'melt',
] as const;

/** What lies over the hair while it takes. */
export const COVERS = ['foil', 'film', 'open'] as const;

export type Zone = (typeof ZONES)[number];
export type Along = (typeof ALONG)[number];
export type Group = (typeof GROUPS)[number];
export type Technique = (typeof TECHNIQUES)[number];
export type Cover = (typeof COVERS)[number];

/**
 * The places a group is made of. The T-section is the parting and the front hairline: a UK trade magazine's page "The
 * language of hair colour explained", and trade usage. Two published pages give `half-head` opposite halves, so a salon
 * says its own; `all` and `rest` depend on the line they stand in.
 */
export const GROUP_ZONES: Readonly<Record<Group, readonly Zone[] | undefined>> = {
  't-section': ['parting', 'hairline'],
  'half-head': undefined,
  'full-head': ZONES.filter((zone) => !(OFF_SCALP_HAIR as readonly Zone[]).includes(zone)),
  all: undefined,
  rest: undefined,
};

const PLACES: ReadonlySet<string> = new Set([...ZONES, ...ALONG, ...GROUPS]);
const ALONG_WORDS: ReadonlySet<string> = new Set(ALONG);
const TECHNIQUE_WORDS: ReadonlySet<string> = new Set(TECHNIQUES);
const COVER_WORDS: ReadonlySet<string> = new Set(COVERS);

/** Whether a word, in small letters, names a place: on the head, along the hair, or a group of places. */
export function isZone(word: string): word is Zone | Along | Group {
  return PLACES.has(word);
}

/** Whether a word, in small letters, is a place along the hair. */
export function isAlong(word: string): word is Along {
  return ALONG_WORDS.has(word);
}

/** Whether a word, in small letters, is a group of places. */
export function isGroup(word: string): word is Group {
  return Object.hasOwn(GROUP_ZONES, word);
}

/** Whether a word, in small letters, is a way of placing colour. */
export function isTechnique(word: string): word is Technique {
  return TECHNIQUE_WORDS.has(word);
}

/** Whether a word, in small letters, is a cover. */
export function isCover(word: string): word is Cover {
  return COVER_WORDS.has(word);
}
