/** Names of months by their first letters, in English, German, French, Portuguese and Spanish. */
const MONTHS: readonly string[] = [
  'jan(?:uary|uar|eiro)?|janvier|enero|jänner',
  'feb(?:ruary|ruar|rero)?|février|fevereiro',
  'mar(?:ch|ço|zo|s)?|märz',
  'apr(?:il)?|avril|abril',
  'may|mai|maio|mayo',
  'june?|juni|juin|junho|junio',
  'july?|juli|juillet|julho|julio',
  'aug(?:ust)?|août|agosto',
  'sept?(?:ember|embre|iembre)?|setembro|septiembre',
  'oct(?:ober|obre|ubre)?|oktober|outubro',
  'nov(?:ember|embre|embro|iembre)?',
  'dec(?:ember)?|dezember|décembre|dezembro|diciembre',
];

const PATTERNS = MONTHS.map(
  (month) =>
    new RegExp(
      `(?<![\\p{L}\\d])(?:(\\d{1,2})(?:st|nd|rd|th|\\.|º)?\\s(?:of |de )?)?(?:${month})(?!\\p{L})(?:\\s(\\d{1,2})(?!\\d))?`,
      'iu',
    ),
);

const two = (figure: number): string => String(figure).padStart(2, '0');

/**
 * The day that a text names by its month (`since 21 September`, `begun in July`), as the last such day up to `by` (ISO
 * date); the month's first day where it names no other. Undefined without one. `may` counts beside a figure or a
 * preposition alone.
 */
export function monthTold(text: string, by: string): string | undefined {
  for (const [index, pattern] of PATTERNS.entries()) {
    const match = pattern.exec(text);
    if (match === null) continue;
    const day = match[1] ?? match[2];
    const isVerb =
      /^may$|^mar$|^mars$/iu.test(match[0]) &&
      !/(?:in|since|from|seit|im|en|depuis|desde|em)\s$/iu.test(text.slice(0, match.index));
    if (isVerb) continue;
    const rest = `-${two(index + 1)}-${two(Math.min(28, Number(day ?? 1)) || 1)}`;
    const year = Number(by.slice(0, 4));
    return `${year}${rest}` <= by ? `${year}${rest}` : `${year - 1}${rest}`;
  }
  return undefined;
}
