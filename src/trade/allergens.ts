import { saidUndenied } from './denial.ts';

const PARA =
  'Picardo and others, "Study on cross-reactivity to the para group", Dermatologica 181, 1990; Contact Dermatitis 2012, doi:10.1111/j.1600-0536.2012.02149.x';

/** Where the cross-reactions below are published. */
export const CROSS_SOURCE = `${PARA}; black rubber and textile dyes: a patch-test leaflet on p-phenylenediamine`;

const from = (words: string): RegExp => new RegExp(`(?<!\\p{L})(?:${words})`, 'giu');

const TEXTILE = from(
  '(?:(?:clothing|clothes|textile|fabric|nylon|tights?|stockings?|denim|jeans|leather|shoe|fur|azo|disperse)[\\s-](?:\\p{L}+[\\s-]){0,3}?dyes?|(?:tights|stockings|jeans|clothes|clothing|fabrics?)(?:[\\s,]+\\p{L}+){0,3}?[\\s,]+dyes?|disperse (?:blue|orange|yellow|red|black)|dyed? (?:clothes|clothing|fabrics?|tights|stockings|textiles?)|dyes? in (?:\\p{L}+\\s){0,2}(?:clothes|clothing|fabrics?|tights|stockings|textiles?|jeans)|textilfarb\\p{L}*|kleiderfarb\\p{L}*|(?:teintures?|colorants?) (?:textiles?|des? (?:vêtements|tissus))|corantes? (?:têxt\\p{L}*|de roupa)|tintes? (?:textil\\p{L}*|de (?:la )?ropa)|colorantes? textil\\p{L}*)',
);

/**
 * Allergens whose owners can react to hair dyes as well, since their molecules are kin of p-phenylenediamine (the para
 * group). Procaine and PABA: from memory of the same group.
 */
const CROSS: readonly (readonly [string, RegExp])[] = [
  ['benzocaine', from('benzoca[ií]n')],
  ['procaine', from('proca[ií]n|novoca[ií]n')],
  [
    'PABA',
    from('paba(?!\\p{L})|(?:para|p|4)[\\s-]?amino[\\s-]?benzo|acide para-?aminobenzo|ácido (?:para-?)?aminobenzo'),
  ],
  [
    'black rubber',
    from(
      'ippd(?!\\p{L})|black[\\s-]rubber|schwarz(?:er|es|em)? ?gummi|caoutchoucs? noirs?|borracha (?:preta|negra)|(?:goma|caucho) negr[ao]',
    ),
  ],
];

/** What a text says of hair dyes that were tested and did nothing: `hair dyes clear`. */
const CLEARED =
  /(?<!\p{L})(?:hair )?(?:dyes?|colou?rs?) (?:(?:was|were|is|are|all|tested|test|patch tests?) )*(?:clear|negative|fine|ok(?:ay)?|no reaction)(?!\p{L})/giu;

/** What a text says of the allergen just named: `was tried by the clinic and is fine`. */
const TOLERATED =
  /^[^;.,]*(?<!\p{L})(?:(?:is|was|are|were|tested|tried)(?!\p{L})[^;.,]*(?<!\p{L})(?:fine|ok(?:ay)?|clear|negative|no reaction)|tolerat\p{L}*|vertr(?:ä|a)gt|toléré\p{L}*|tolera\p{L}*)(?!\p{L})/iu;

const isNamed = (text: string, pattern: RegExp): boolean => {
  const match = saidUndenied(text, pattern);
  return match !== undefined && !TOLERATED.test(text.slice(match.index + match[0].length));
};

/** The allergens by which a text lets expect more than it names; none where they are denied, or tried and tolerated. */
export function crossAllergens(text: string): readonly string[] {
  const names = CROSS.filter(([, pattern]) => isNamed(text, pattern)).map(([name]) => name);
  return isNamed(text, TEXTILE) ? [...names, 'textile dye'] : names;
}

const OF_HAIR =
  /(?<!\p{L})(?:ppd|ptd|p-?phenylene\p{L}*|para-?phenylene\p{L}*|toluene\p{L}*|resorcinol|aminophenol\p{L}*|(?:hair|permanent|oxidative)[\s-](?:colou?r|dye|tint)s?)(?!\p{L})/iu;

/** Whether a text names hair dye itself, and not dyes of clothes or hair dyes that it calls clear. */
export function namesHairDye(text: string): boolean {
  return OF_HAIR.test(withoutOtherDyes(text));
}

/** A text without the dyes that are none of hair, and the hair dyes that it calls clear. */
export function withoutOtherDyes(text: string): string {
  return text.replace(TEXTILE, ' ').replace(CLEARED, ' ');
}
