import { UNIT_WORDS } from '../../notation/words.ts';
import type { Amount, Depth, Duration, Ratio, Shade, Stage, Strength, When, Word } from '../schema/values.ts';
import type { Said } from './said.ts';

/** Parts of one that decimals hold badly: thirds have no end, eighths have three figures, which look like thousands. */
const SIGNS: readonly (readonly [number, string])[] = [
  [1 / 3, '⅓'],
  [2 / 3, '⅔'],
  [1 / 8, '⅛'],
  [3 / 8, '⅜'],
  [5 / 8, '⅝'],
  [7 / 8, '⅞'],
];
const QUARTERS: readonly (readonly [number, string])[] = [
  [1 / 4, '¼'],
  [1 / 2, '½'],
  [3 / 4, '¾'],
];

const withSign = (value: number, signs: readonly (readonly [number, string])[]): string | undefined => {
  const whole = Math.floor(value);
  const sign = signs.find(([part]) => whole + part === value)?.[1];
  return sign === undefined ? undefined : `${whole === 0 ? '' : whole}${sign}`;
};

/** Decimals without an exponent. */
const decimals = (value: number): string => {
  const text = String(value);
  const [figures = '', power] = text.split('e-');
  if (power === undefined) return text;
  const digits = figures.replace('.', '');
  return `0.${'0'.repeat(Number(power) - 1)}${digits}`;
};

/** A figure: `12`, `12.5`, `1⅓`. Three decimals get a nought behind them, since `1.250` is asked about. */
export const numberText = (value: number): string => {
  const signed = withSign(value, SIGNS);
  if (signed !== undefined) return signed;
  const text = decimals(value);
  return /^[1-9]\d{0,2}\.\d{3}$/.test(text) ? `${text}0` : text;
};

/** A depth or a strand's half: `6½`. */
const halfText = (value: number): string => withSign(value, QUARTERS) ?? numberText(value);

/** A sum of money: `38`, `9.50`. */
export const moneyText = (value: number): string => {
  const text = decimals(value);
  return /\.\d$/.test(text) ? `${text}0` : numberText(value);
};

type Hedged = { readonly about?: true | undefined };
const hedge = ({ about }: Hedged): string => (about ? '~' : '');

/** `30-45`; four figures stand apart from the dash, since `2000-10` is a month. */
const range = ({ value, to }: { value: number; to?: number | undefined }, text = numberText): string => {
  if (to === undefined) return text(value);
  const low = text(value);
  return /^\d{4}$/.test(low) ? `${low} - ${text(to)}` : `${low}-${text(to)}`;
};

const PLURAL: ReadonlySet<string> = new Set(['pack', 'drop']);
/** Units that touch their figure: of lengths, of parts, of shares and strengths. */
const TOUCHING: ReadonlySet<string> = new Set(['mm', 'cm', 'in', 'p', '%', 'vol']);

const unitText = (unit: string, value: number): string => {
  if (unit === '' || TOUCHING.has(unit)) return unit;
  return PLURAL.has(unit) && value !== 1 ? ` ${unit}s` : ` ${unit}`;
};

/** `30`, `60 g`, `4 packs`, `2cm`, `2p`, `80%`, `~22` */
export const amountText = (amount: Said<Amount>): string =>
  `${hedge(amount)}${range(amount)}${unitText(amount.unit, amount.to ?? amount.value)}`;

/** Whether an amount is measured by a unit of the notation, and by no measure of the product's own. */
export const isPlainUnit = ({ unit }: Said<Amount>): boolean => unit === '' || unit === '%' || UNIT_WORDS.has(unit);

/** `6-8w`, `20min`; on a leaflet's line `30-45 min`. */
export const durationText = (duration: Said<Duration>, space: '' | ' ' = ''): string =>
  `${hedge(duration)}${range(duration)}${space}${duration.unit}`;

/** `6%`, `20vol` */
export const strengthText = (strength: Said<Strength>): string =>
  `${hedge(strength)}${numberText(strength.value)}${strength.unit}`;

/** `1:2`, `1:1.5-1:2` */
export const ratioText = ({ colour, developer, to, ...hedged }: Said<Ratio>): string => {
  const far = to === undefined ? '' : colour === 1 ? `-1:${decimals(to)}` : `-${decimals(to)}`;
  return `${hedge(hedged)}${decimals(colour)}:${decimals(developer)}${far}`;
};

/** `6½`, `9-10`, `7+` */
export const depthText = (depth: Said<Depth>): string =>
  `${hedge(depth)}${range(depth, halfText)}${depth.plus ? '+' : ''}`;

/** `yellow`, `orange to yellow` */
export const stageText = ({ stage, to, about }: Said<Stage>): string =>
  `${stage}${to === undefined ? '' : ` to ${to}`}${about ? '?' : ''}`;

/** `patchy`, `yellow?` */
export const wordText = ({ word, about }: Said<Word>): string => `${word}${about ? '?' : ''}`;

/** Words with one space between them. */
export const wordsText = (words: readonly Said<Word>[]): string => words.map(wordText).join(' ');

/** `7/43`, `10V`, `clear` */
export const shadeText = ({ shade }: Said<Shade>): string => shade;

/** A day, a month or a year. */
export const whenText = ({ when }: Said<When>): string => when;
