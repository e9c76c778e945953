import { clockText } from '../../text/dates.ts';
import type { Awaited } from './awaited.ts';
import type { DueWindow, Rhythm } from './due-window.ts';

type Said = DueWindow & { readonly time?: Awaited['time'] };

/** `2026-12-01 to 2026-12-15`, `from 2026-12-02`, `2026-12-19 14:00`. */
export const sayWindow = ({ first, last, time }: Said): string => {
  if (last === undefined) return `from ${first}`;
  if (last !== first) return `${first} to ${last}`;
  return time === undefined ? first : `${first} ${clockText(time)}`;
};

/** `roots every 42 days` */
export const sayRhythm = ({ service, days }: Rhythm): string => `${service} every ${days} days`;
