/**
 * Words by which a hand says, in the remark of the very line, that something is meant: they answer a rule as a `because`
 * line does, but for a `stop`. Which of them a rule accepts is data of the rule.
 *
 * Reads: a remark. Gives: whether it holds a reason. Wordings are a choice of ours, in the languages of the demo.
 */

const LANGUAGES = ['en', 'de', 'fr', 'pt', 'es'] as const;

/** Words of reason by language, in small letters, as they stand in a remark. */
export type ReasonWords = Readonly<Record<(typeof LANGUAGES)[number], readonly string[]>>;

/** That it was meant, or that the client asked for it: accepted by nearly every rule that accepts any. */
export const MEANT: ReasonWords = {
  en: ['on purpose', 'purposely', 'deliberate', 'deliberately', 'intended', 'intentionally', 'asked for', 'as asked'],
  de: ['absichtlich', 'mit absicht', 'bewusst', 'gewollt', 'so gewünscht', 'auf wunsch', 'wie gewünscht'],
  fr: ['exprès', 'à dessein', 'volontairement', 'volontaire', 'voulu', 'à sa demande', 'demandé'],
  pt: ['de propósito', 'propositado', 'propositadamente', 'a pedido', 'como pedido', 'intencional'],
  es: ['a propósito', 'adrede', 'intencionado', 'a petición', 'como pidió', 'lo pidió', 'queriendo'],
};

/** Several tables of words as one. */
export const wordsOf = (...tables: readonly ReasonWords[]): ReasonWords => {
  const all = (language: (typeof LANGUAGES)[number]): readonly string[] => tables.flatMap((table) => table[language]);
  return { en: all('en'), de: all('de'), fr: all('fr'), pt: all('pt'), es: all('es') };
};

/** Small letters without accents, one space between words: hands leave accents out. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Words that turn a reason into its opposite, up to two words before it. */
const DENIES =
  /\b(?:not|never|no|nicht|nie|kein|keine|keinen|pas|jamais|nao|nunca|sin|sem|ohne|sans|without|un)(?: \S+){0,2} $/;

/** Whether a remark holds one of the words of reason, and does not deny it. */
export const holdsReason = (remark: string, words: ReasonWords): boolean => {
  const text = ` ${plain(remark)} `;
  return LANGUAGES.some((language) =>
    words[language].some((word) => {
      const at = text.indexOf(` ${plain(word)} `);
      return at >= 0 && !DENIES.test(text.slice(0, at + 1));
    }),
  );
};
