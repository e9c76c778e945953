import type { Kind } from './kinds.ts';

/**
 * Which kinds are never mixed into one bowl, though each may go on the same head: common practice, no source. Lightener
 * bleaches the dye beside it; a remover undoes it; what colours brows is made for brows alone. Direct dye with peroxide is
 * another matter, and a wash of lightener and shampoo is sound.
 */
const DYED: readonly Kind[] = ['permanent', 'demi', 'toner', 'high-lift'];
const APART: readonly (readonly [Kind, readonly Kind[]])[] = [
  ['lightener', [...DYED, 'brow', 'filler', 'remover']],
  ['remover', [...DYED, 'brow', 'filler', 'semi', 'temporary']],
  ['brow', [...DYED, 'filler', 'semi', 'temporary']],
];

/** Whether two kinds do not belong in one bowl. */
export const areKeptApart = (a: Kind, b: Kind): boolean =>
  APART.some(([kind, others]) => (kind === a && others.includes(b)) || (kind === b && others.includes(a)));

/** Kinds that are mixed with a developer of their line, so that one bowl of two lines has the right one for neither. */
export const HAVE_OWN_DEVELOPER: ReadonlySet<Kind | undefined> = new Set<Kind | undefined>([
  ...DYED,
  'lightener',
  'brow',
]);

/** A shade that only thins another: `clear`, `pastel`, as ranges name it (en, de, fr, pt, es). From memory. */
export const isThinner = (shade: string): boolean =>
  /clear|klar|clair|incolor|claro|transpar|kristall|crystal|pastel|dilut|mixer|neutral/iu.test(shade);
