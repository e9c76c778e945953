import { fold } from '../../text/fold.ts';
import { type MixChange, mixChangeIn, saysTheSame, saysWhen } from '../../trade/change-words.ts';
import { kindFacts } from '../../trade/kinds.ts';
import { isTone } from '../../trade/tone.ts';
import { isZone } from '../../trade/zones.ts';
import { zonesOfBowl } from '../head/services.ts';
import type { BowlReckoned, VisitReckoned } from '../model.ts';

/** Which bowls of a visit a text speaks of, where it speaks of a change: by name, shade, product, place or kind. */

const WORD = /[\p{L}\p{N}]/u;

/** Clauses of a text: what stands between commas, full stops and dashes, but for those inside a figure. */
const clausesOf = (text: string): string[] =>
  text
    .split(/[,;](?!\d)|[.!?](?=\s|$)|\s[–—-]\s|\s(?:but|aber|pero)\s/u)
    .map((clause) => clause.trim())
    .filter((clause) => WORD.test(clause));

/** Words before which a capital at the beginning is a bowl, and no article. */
const LETTER_BEFORE =
  /^(?:less|more|no|without|with|and|in|to|on|at|for|from|more|m[áa]s|mais|plus|too|went|was|came|half|only|as|same|mit|war|zu|und|weniger|mehr|ohne|moins|sans|avec|trop|était|et|menos|sem|sin|com|con|muito|muy|demasiado|ficou|quedó|mix)$/iu;

/** An article at the beginning, `A raiz`, `A softer look`: a capital before a word that says nothing of a mix. */
const isArticle = (clause: string, name: string): boolean => {
  if (!/^[AEIOY]$/.test(name) || !clause.startsWith(`${name} `)) return false;
  const [, word = '', after = ''] = clause.split(/\s+/u);
  if (!/^\p{Ll}/u.test(word)) return false;
  if (LETTER_BEFORE.test(word)) return false;
  return (
    (mixChangeIn(word, true) === undefined && !isTone(word)) ||
    /^(?:look|tone|shade|finish|result|colour|blonde?|brown|one|feel)$/iu.test(after)
  );
};

const namesIn = (clause: string, bowls: readonly BowlReckoned[]): BowlReckoned[] =>
  bowls.filter(({ name }) => {
    const found = new RegExp(`(?<![\\p{L}\\p{N}])${name}(?![\\p{L}\\p{N}'’])`, name.length > 1 ? 'iu' : 'u');
    // A hand that types small letters: `t less ash`; of letters that are words as well only the capital is a bowl.
    if (/^[^AEIOUY]$/.test(name) && new RegExp(`^${name}[\\s:]`, 'iu').test(clause)) return true;
    return found.test(clause) && !isArticle(clause, name);
  });

const everyPortion = ({ portions, poured }: BowlReckoned): BowlReckoned['portions'] => poured ?? portions;

const plainShade = (shade: string): string => fold(shade).replace(/[.,-]/g, '/');

const colours = (bowl: BowlReckoned): boolean =>
  everyPortion(bowl).some(({ item }) => item?.kind !== undefined && kindFacts(item.kind).colours);
const lightens = (bowl: BowlReckoned): boolean =>
  everyPortion(bowl).some(({ item }) => item?.kind !== undefined && kindFacts(item.kind).lightens);
const hasDeveloper = (bowl: BowlReckoned): boolean => everyPortion(bowl).some(({ role }) => role === 'developer');

/** The hair along its length in the other languages that are read; from memory. */
const ALONG: readonly (readonly [RegExp, string])[] = [
  [/^(?:ansatz|ansätze|racines?|ra[ií]z|ra[ií]zes|ra[ií]ces)$/u, 'roots'],
  [/^(?:längen?|longueurs?|comprimentos?|largos|medios)$/u, 'lengths'],
  [/^(?:spitzen?|pointes?|pontas?|puntas?)$/u, 'ends'],
];

/** The places that a clause names. */
const placesIn = (clause: string): string[] =>
  fold(clause)
    .split(/[^\p{L}\p{N}-]+/u)
    .flatMap((word) => (isZone(word) ? word : (ALONG.find(([words]) => words.test(word))?.[1] ?? [])));

type Meant = { readonly meant: readonly BowlReckoned[]; readonly pins: boolean };

/** Those of some bowls that a change can be about, by what is to change. */
const open = (
  { shades, tone, depth, strength, amount }: MixChange,
  bowls: readonly BowlReckoned[],
): readonly BowlReckoned[] => {
  if (amount) return bowls;
  if (shades.length > 0 || tone) return bowls.some(colours) ? bowls.filter(colours) : tone ? bowls : [];
  if (depth) return bowls.filter((bowl) => colours(bowl) || lightens(bowl));
  return strength ? bowls.filter(hasDeveloper) : [];
};

/** The bowls that a change without a bowl's name is about: by shade, by product, by place, else by what is to change. */
const meantBy = (change: MixChange, clause: string, visit: VisitReckoned, bowls: readonly BowlReckoned[]): Meant => {
  const shades = new Set(change.shades.map(plainShade));
  const byShade = bowls.filter((bowl) =>
    everyPortion(bowl).some(({ shade }) => shade !== undefined && shades.has(plainShade(shade))),
  );
  if (byShade.length > 0) return { meant: byShade, pins: true };
  const said = ` ${fold(clause).replace(/[^\p{L}\p{N}/.-]+/gu, ' ')} `;
  const byProduct = bowls.filter((bowl) =>
    everyPortion(bowl).some(({ item }) => item !== undefined && said.includes(` ${fold(item.name)} `)),
  );
  if (byProduct.length > 0) return { meant: byProduct, pins: true };
  const places = placesIn(clause);
  const there = bowls.filter(({ name }) =>
    zonesOfBowl(visit, name).some((zone) => zone.split(' ').some((word) => places.includes(word))),
  );
  const meant = open(change, there);
  return meant.length > 0 ? { meant, pins: true } : { meant: open(change, bowls), pins: false };
};

const LINKS = /(?<!\p{L})(?:and|then|und|dann|et|puis|y|e|luego|depois)(?!\p{L})/giu;

/** Whether a clause says more than the names of bowls: `then B` does not. */
const saysMore = (clause: string, bowls: readonly BowlReckoned[]): boolean =>
  WORD.test(
    bowls.reduce(
      (left, { name }) => left.replace(new RegExp(`(?<![\\p{L}\\p{N}])${name}(?![\\p{L}\\p{N}])`, 'giu'), ''),
      clause.replace(LINKS, ''),
    ),
  );

/** Words, whether they stand in a plan for next time, and whether a letter in them is a bowl of the visit. */
export type Spoken = { readonly text: string; readonly planned: boolean; readonly own: boolean };

/**
 * The bowls of a visit that words speak of, by name. Where one clause pins its bowls, by their names, a shade, a product or a
 * place, the vaguer ones are about the same: `go softer, 6/1 instead of 6/3`.
 */
export const spokenOf = ({ text, planned, own }: Spoken, visit: VisitReckoned): Set<string> => {
  const { bowls } = visit;
  const pinned = new Set<string>();
  const vague = new Set<string>();
  let named: readonly BowlReckoned[] = [];
  let waiting: readonly BowlReckoned[] = [];
  for (const clause of clausesOf(text)) {
    const names = [...waiting, ...(own ? namesIn(clause, bowls) : [])];
    const change = mixChangeIn(clause, planned);
    // `A, T cooler`: a clause of names alone waits for what is said of them.
    waiting = names.length > 0 && !saysMore(clause, names) ? names : [];
    if (waiting.length > 0) continue;
    if (names.length > 0) {
      named = names;
      const isChange = planned ? !saysTheSame(clause) && !saysWhen(clause) : change !== undefined;
      if (isChange) for (const { name } of names) pinned.add(name);
    } else if (change !== undefined && named.length > 0) for (const { name } of named) pinned.add(name);
    else if (change !== undefined) {
      const { meant, pins } = meantBy(change, clause, visit, bowls);
      for (const { name } of meant) (pins ? pinned : vague).add(name);
    }
  }
  return pinned.size > 0 ? pinned : vague;
};
