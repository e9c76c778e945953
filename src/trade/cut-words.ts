/**
 * What a price list calls a cut, a trim or a blow-dry, for which no colour is mixed, in English, German, French, Portuguese
 * and Spanish. Common practice, no source.
 */
const CUTS: ReadonlySet<string> = new Set([
  ...['cut', 'haircut', 'trim', 'restyle', 'finish', 'blow', 'dry', 'blowdry', 'blowout', 'styling', 'style', 'set'],
  ...['schnitt', 'haarschnitt', 'schneiden', 'föhnen', 'föhn', 'spitzen'],
  ...['coupe', 'brushing', 'corte', 'escova', 'secado', 'peinado', 'brushing'],
]);

/** Words that may stand beside them and change nothing of that. */
const BESIDE: ReadonlySet<string> = new Set([
  ...['and', 'with', 'the', 'a', 'und', 'mit', 'et', 'de', 'e', 'y', 'com', 'con'],
  ...['fringe', 'neck', 'short', 'long', 'medium', 'wet', 'ladies', 'gents', 'mens', 'womens', 'child', 'kids', 'out'],
  ...['pony', 'kurz', 'lang', 'damen', 'herren', 'frange', 'court', 'longue', 'franja', 'curto', 'corto', 'flequillo'],
]);

/**
 * Whether an item charged for is a cut or a blow-dry and nothing else: every word says so or changes nothing of it. `cut and
 * colour` is not.
 */
export const isCutAlone = (item: string): boolean => {
  const words = item
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
  return words.some((word) => CUTS.has(word)) && words.every((word) => CUTS.has(word) || BESIDE.has(word));
};
