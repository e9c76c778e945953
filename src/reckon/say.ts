import { type Exact, toFixed } from '../text/exact.ts';

/** An exact value as people write it: at most `places` decimals, no nought at the end. */
export const figure = (value: Exact, places = 2): string => {
  const text = toFixed(value, places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};

/** `12.5 g` */
export const grams = (value: Exact): string => `${figure(value)} g`;

/** `6 %` */
export const perCent = (value: Exact): string => `${figure(value)} %`;

/** `1:1.5` from developer to one of base. */
export const ratioText = (value: Exact): string => `1:${figure(value)}`;

/** `a, b and c`; with another last word `a, b or c`. */
export const listed = (names: readonly string[], last: 'and' | 'or' = 'and'): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`;

/** Names that a sentence gives of a list which may be as long as the notes. A choice of ours. */
const MOST_NAMED = 12;

/** Names for `listed`: all, or the first few and how many more there are. */
export const fewOf = (names: readonly string[], count = names.length): readonly string[] =>
  count <= MOST_NAMED ? names : [...names.slice(0, MOST_NAMED - 1), `${count - MOST_NAMED + 1} more`];

/** The first names of a list, as many as a sentence gives. */
export const firstOf = (names: Iterable<string>): string[] => {
  const first: string[] = [];
  for (const name of names) {
    if (first.length === MOST_NAMED) break;
    first.push(name);
  }
  return first;
};

/** The same between backquotes, as names typed in notes are shown. */
export const quoted = (names: readonly string[], last: 'and' | 'or' = 'and'): string =>
  listed(
    names.map((name) => `\`${name}\``),
    last,
  );
