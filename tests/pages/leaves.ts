import { figure } from '../../src/reckon/say.ts';
import { clockText } from '../../src/text/dates.ts';
import { exactOf } from '../../src/text/exact.ts';

/** Everything that a fact says, each as the texts of which one at least has to stand on a page. */
export type Leaf = { readonly path: string; readonly any: readonly string[] };

/** Said otherwise on a page: bookkeeping, a stylist by what she is called, words of ours for a choice of ours. */
const NOT_SAID: ReadonlySet<string> = new Set(['at', 'line', 'by', 'client', 'unit']);

const HALVES: ReadonlyMap<number, string> = new Map([
  [0.25, '¼'],
  [0.5, '½'],
  [0.75, '¾'],
]);

const numbers = (value: number): string[] => {
  const whole = Math.floor(value);
  const half = HALVES.get(value - whole);
  return [figure(exactOf(value), 3), ...(half === undefined ? [] : [`${whole || ''}${half}`])];
};

type ClockLike = { readonly minutes?: number; readonly after?: number; readonly other?: number };

const isClock = (value: object): value is ClockLike =>
  ('minutes' in value && typeof value.minutes === 'number') || 'after' in value;

/** A time is shown as the reckoning reads it; one after the first on is looked for nowhere. */
const clockTexts = ({ minutes, other }: ClockLike): string[] =>
  [minutes, other].flatMap((one) => (one === undefined ? [] : [clockText(one)]));

const walk = (value: unknown, path: string, out: Leaf[]): void => {
  if (typeof value === 'string') {
    if (value.trim() !== '') out.push({ path, any: [value] });
  } else if (typeof value === 'number') out.push({ path, any: numbers(value) });
  else if (Array.isArray(value)) for (const [index, one] of value.entries()) walk(one, `${path}[${index}]`, out);
  else if (value !== null && typeof value === 'object') {
    if (isClock(value)) {
      out.push({ path, any: clockTexts(value) });
      return;
    }
    for (const [key, one] of Object.entries(value)) if (!NOT_SAID.has(key)) walk(one, `${path}.${key}`, out);
  }
};

/** What a fact says, leaf by leaf, without its first word. */
export const leavesOf = (fact: { readonly word: string }): Leaf[] => {
  const out: Leaf[] = [];
  const { word, ...rest } = fact;
  walk(rest, word, out);
  return out;
};

/** Text as it is looked for: small letters, plain quotation marks, no dashes, single spaces, none before a per cent. */
export const foldedText = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[-\u2010-\u2015\u2212]/g, ' ')
    .replace(/[“”„«»]/g, '"')
    .replace(/[\u2018\u2019\u02bc]/g, "'")
    .replace(/\s+/g, ' ')
    .replace(/ %/g, '%')
    .toLowerCase();
