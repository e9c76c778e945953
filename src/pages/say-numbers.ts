import type { SalonSettings } from '../journal/salon.ts';
import { settleClock } from '../reckon/clock/settle.ts';
import { figure } from '../reckon/say.ts';
import type { Amount, Clock, Depth, Duration, Period, Strength } from '../records/schema/values.ts';
import { clockText } from '../text/dates.ts';
import { type Exact, exactOf } from '../text/exact.ts';
import { escapeText } from './escape.ts';

/** Figures of the notes in words: `about` before what the note hedges, the unit always said. */

export const hedged = (about: boolean | undefined, text: string): string => (about ? `about ${text}` : text);

/** A number of the notes, `6.5`, at most three decimals. */
export const plain = (value: number | Exact, places = 3): string =>
  figure(typeof value === 'number' ? exactOf(value) : value, places);

const span = (value: number, to: number | undefined): string =>
  to === undefined ? plain(value) : `${plain(value)}–${plain(to)}`;

const UNIT_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  p: ['part', 'parts'],
  pack: ['pack', 'packs'],
  drop: ['drop', 'drops'],
  each: ['piece', 'pieces'],
  min: ['minute', 'minutes'],
  h: ['hour', 'hours'],
  d: ['day', 'days'],
  w: ['week', 'weeks'],
  mo: ['month', 'months'],
};

/** `9 weeks`, `1 week`, `6–8 weeks`, `48 h` as hours; a unit without a word of its own stands as it is. */
export const counted = (value: number, unit: string, to?: number): string => {
  const [one = unit, many = one] = UNIT_WORDS[unit] ?? [];
  return spacedUnit(span(value, to), escapeText(value === 1 && to === undefined ? one : many));
};

const spacedUnit = (figures: string, unit: string): string => (unit === '' ? figures : `${figures} ${unit}`);

/** An amount with its unit; `bare` is the unit that a figure without one has. */
export const amountText = ({ value, to, unit, about }: Amount, bare = ''): string =>
  hedged(about, counted(value, unit === '' ? bare : unit, to));

export const durationText = ({ value, to, unit, about }: Duration): string => hedged(about, counted(value, unit, to));

/** `6 %`, `20 vol`. */
export const strengthText = ({ value, unit, about }: Strength): string => hedged(about, `${plain(value)} ${unit}`);

const HALVES: ReadonlyMap<number, string> = new Map([
  [0.25, '¼'],
  [0.5, '½'],
  [0.75, '¾'],
]);

const depthFigure = (value: number): string => {
  const whole = Math.floor(value);
  const part = HALVES.get(value - whole);
  return part === undefined ? plain(value) : `${whole === 0 ? '' : whole}${part}`;
};

/** `6`, `6½`, `7+`, `9–10`. */
export const depthText = ({ value, to, plus, about }: Depth): string =>
  hedged(about, `${depthFigure(value)}${plus ? '+' : ''}${to === undefined ? '' : `–${depthFigure(to)}`}`);

/** `14:35`; a time after the first on in words. A bare `2.38` is read by the salon's hours, as the reckoning does. */
export const timeText = (clock: Clock, hours: SalonSettings['hours']): string => {
  if (clock.head !== undefined) return hedged(clock.about, `${clock.head} minutes after zero`);
  if (clock.after !== undefined) return hedged(clock.about, `${clock.after} minutes after first on`);
  const { minute } = settleClock(clock, hours);
  return minute === undefined ? '' : hedged(clock.about, clockText(minute));
};

/** `14:35–14:55` or one time. */
export const periodText = ({ from, to }: Period, hours: SalonSettings['hours']): string => {
  const start = timeText(from, hours);
  return to === undefined ? start : `${start}–${timeText(to, hours)}`;
};
