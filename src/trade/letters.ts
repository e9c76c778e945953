/** Ways of saying yes with a word that denies: `no objection`, `not allergic`, `keine Einwände`. */
const GRANTS =
  /\b(?:no (?:objections?|contra-?indications?|allerg(?:y|ies)|reactions?|reason (?:not|against)|restrictions?|limits?|evidence|sign|further tests?|longer)|not (?:(?:from )?the (?:hair )?(?:dye|colou?r|tint)|allergic|a dye allergy|an? allergy|caused by|due to|related)|nothing against|without (?:restrictions?|limits?)|no need (?:to|for)|keine? (?:einwände|bedenken|allergie|kontraindikation(?:en)?)|nicht allergisch|nichts dagegen|aucune (?:objection|allergie|contre-indication|contre indication)|pas (?:d['’]allergie|allergique|de contre-indication)|sem (?:objeç(?:ão|ões)|alergia|contraindicaç(?:ão|ões))|não (?:é alérgica|é alérgico|há alergia)|sin (?:objeci(?:ón|ones)|alergia|contraindicaciones)|no (?:es alérgic[ao]|hay alergia|tiene alergia))/giu;

/** What keeps dye off her still, or settles nothing yet. */
const REFUSES =
  /\b(?:no|not|never|none|avoid(?:s|ed|ing)?|must(?:n['’]t| not)|can['’]?t|cannot|don['’]t|do not|refrain|forbid(?:s|den)?|await(?:s|ing)?|pending|waiting|referred|until|unless|only|allergic|positive|confirm(?:s|ed)|kein(?:e|en|er)?|nicht|nie|vermeiden|meiden|allergisch|positiv|nur|ne|pas|jamais|éviter|évite|aucune?|allergique|seulement|uniquement|não|nunca|evitar|alérgic[ao]|positiv[ao]|só|apenas|solo|sólo|únicamente|ningún|ninguna)(?!\p{L})/iu;

/**
 * Whether a doctor's letter lets her have hair colour, by its words: one that refuses, awaits something or gives leave
 * for one thing only lifts nothing. English, German, French, Portuguese, Spanish. A reading of ours.
 */
export function grantsColour(text: string): boolean {
  return !REFUSES.test(text.replace(GRANTS, ' '));
}
