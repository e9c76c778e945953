import { said } from './said.ts';

/** What a text says of metal in the hair, and whether it names it or only what it does. */
export type MetalTold = { readonly says: string; readonly sure: boolean };

/**
 * Plain words for metal in the hair: salts, compound henna, colour restorers, which hold lead or another metal. Common
 * practice, no source. English, German, French, Portuguese, Spanish.
 */
const SALTS =
  /(?<![\p{L}-])(?<!\bnon[-\s])(?:metal(?:lic)?[\s-](?:salts?|dyes?|colou?rs?|tint)|compound henna|(?:colou?r|hair|gr[ea]y|repigment\w*)[\s-]restor(?:er|ative)s?|progressive (?:hair )?(?:dye|colou?r(?:ing|ant)?|darkener)|(?:lead|copper|silver|iron|bismuth)[\s-](?:salts?|acetate|nitrate|citrate|sulphate|sulfate)|metallsalze?|metallfarben?|(?:blei|silber|kupfer)(?:acetat|azetat|nitrat|salze?)|(?:haar)?farbwiederhersteller|haarwiederhersteller|grauhaar-?wiederhersteller|sels? métalliques?|(?:acétate|sels?) de (?:plomb|cuivre)|nitrate d['’]argent|(?:restaurateur|régénérateur) de couleur|sais metálicos|acetato de chumbo|nitrato de prata|(?:restaurador|recuperador) d[ea] cor|sales metálicas|acetato de plomo|nitrato de plata|(?:restaurador|recuperador) del? color)(?!\p{L})(?!\s?-?free\b)/giu;

/** What metal does: it smells of sulphur when wet, and darkens with every use. Common practice, no source. */
const SMELL =
  /(?<!\p{L})(?:(?:rotten|bad|off)[\s-]eggs?|(?:smel\w+|stinks?|stank|reek\w*|whiff) (?:\p{L}+ ){0,3}(?:eggs?|sulph?ur|sulfur|matches|metal|pennies|gunpowder|schwefel|soufre|enxofre|azufre)|(?:riecht|stinkt|sent|cheira|huele) (?:\p{L}+ ){0,2}(?:schwefel|soufre|enxofre|azufre)|(?:sulph?ur|egg)y? smell|faulen? eiern?|schwefelgeruch|(?:œufs?|oeufs?) pourris?|ovos? podres?|huevos? podridos?)(?!\p{L})/giu;
const DARKENS =
  /(?<!\p{L})(?:darker (?:and darker|(?:every|each) (?:day|time|morning|week|use|application|wash)|day by day|by the day|with (?:every|each) use)|(?:every|each) (?:day|morning|time|use) (?:\p{L}+ ){0,3}(?:a bit |a little )?darker|darkens (?:\p{L}+ ){0,2}(?:gradually|daily|slowly|(?:every|each) (?:day|time|morning|week|use|application)|day by day|with (?:every|each) use|over (?:days|weeks))|(?:goes|gets|went|got|going|getting|turns) (?:a bit |a little |slowly )?darker (?:over|within|in) (?:time|days|weeks|(?:an?|one|two|three|the|some) (?:few |couple of )?(?:fortnight|weeks?|months?|days))|(?:gradually|daily|slowly) (?:\p{L}+ ){0,2}(?:darken|darker)\p{L}*|gr[ea]y (?:turns|goes|went|turned|comes out|came out) (?:\p{L}+ ){0,2}(?:yellow|brown|dark\p{L}*|black)|brings? (?:the |his |her |its )?(?:dark|colou?r|gr[ea]y) back|(?:jeden tag|täglich|von tag zu tag|mit jeder anwendung) (?:\p{L}+ ){0,2}dunkler|(?:plus foncée?s?|fonce) (?:\p{L}+ ){0,2}(?:chaque (?:jour|fois|application)|de jour en jour)|chaque (?:jour|fois) (?:un peu )?plus foncé\p{L}*|(?:cada (?:dia|vez|aplicação)|a cada (?:dia|aplicação)) (?:\p{L}+ ){0,2}(?:mais )?escur\p{L}*|escurece (?:\p{L}+ ){0,2}cada (?:dia|vez|aplicação)|cada (?:día|vez|aplicación) (?:\p{L}+ ){0,2}(?:más )?oscur\p{L}*|(?:se )?oscurece (?:\p{L}+ ){0,2}cada (?:día|vez))(?!\p{L})/giu;
const COMBED =
  /(?<!\p{L})(?:comb(?:s|ed|ing)?(?:[\s-](?:it|this|that|some|something))?[\s-](?:in|through)|comb-in|through the grey|restorer|for (?:his|her|the) gr[ea]y|kämmt (?:\p{L}+ ){0,3}(?:ein|durch)|(?:peigne|applique) (?:\p{L}+ ){0,4}chaque (?:jour|matin)|loção (?:para|contra) (?:os )?(?:cabelos )?brancos|loción (?:para|contra) (?:las )?canas|passa (?:\p{L}+ ){0,4}(?:todo|cada) (?:dia|manhã))(?!\p{L})/giu;

/** What smells so by itself: a perm, a relaxer, a remover, a spring; and what gets darker that is no hair. */
const OTHER =
  /(?<!\p{L})(?:perm(?:ed|s)?|lotion|thio\p{L}*|remover|unpick|relaxer|depilat\p{L}*|drains?|spa|spring|evenings?|sky|skin|tan|tans|tanned|dauerwelle|permanente|décapant|removedor|decapante)(?!\p{L})/iu;

const HENNA =
  /(?<!\p{L})(?:henna|henné|hena)(?:ed)?(?!\p{L})(?!\s(?:tattoos?|brows?|hands?|feet|party|night|artist|on (?:her|his|the) (?:hands?|arms?|feet|brows?|wrist)))/giu;

/**
 * What a text says of metal in the hair; undefined without it, and where it is denied. Two signs together name it (it
 * smells of eggs and gets darker every day); one alone is a sign. Henna is one too, since compound henna holds metal.
 */
export function metalTold(text: string): MetalTold | undefined {
  const salts = said(text, SALTS);
  if (salts !== undefined) return { says: salts, sure: true };
  const signs = [said(text, COMBED), ...(OTHER.test(text) ? [] : [said(text, SMELL), said(text, DARKENS)])].filter(
    (sign) => sign !== undefined,
  );
  const told = signs.filter((sign) => sign !== undefined && !COMBED_ONLY.test(sign));
  if (told.length > 0) return { says: signs.join(' and '), sure: signs.length > 1 };
  return undefined;
}

/** What is combed in may be anything; it counts beside another sign alone. */
const COMBED_ONLY = new RegExp(COMBED.source, 'iu');

/** Henna by what it looks like: a green or herbal powder, and what is done with it. Common practice, no source. */
const LEAF_POWDER =
  /(?<!\p{L})(?:(?:green|herbal|leaf|plant|mud-?like) (?:powder|paste|mud)|grünes pulver|pflanzenpulver|poudre (?:verte|de plantes)|pó verde|polvo verde)(?!\p{L})/giu;
const LEAF_USE =
  /(?<!\p{L})(?:teas?|hay|overnight|cling ?film|copper(?:y)?|orange|lemon|tee|heu|über nacht|thé|foin|chá|feno|té|heno)(?!\p{L})/iu;

/** The word for henna on the hair in a text, or what it looks like; undefined without, of tattoos and brows, and denied. */
export function hennaTold(text: string): string | undefined {
  if (/black[\s-]henna|schwarze\p{L}* henna|henné noir|hena preta|henna negra/iu.test(text)) return undefined;
  const henna = said(text, HENNA);
  return henna ?? (LEAF_USE.test(text) ? said(text, LEAF_POWDER) : undefined);
}
