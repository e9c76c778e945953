import { isDate, isMonth, monthEnd } from '../text/dates.ts';
import { refusal } from './refusal.ts';
import { dayOf } from './today.ts';

export type PeriodOptions = { readonly from?: string; readonly to?: string; readonly on?: string };

/** A day, or the first or last day of a month or a year. Throws a refusal for anything else. */
const edgeOf = (option: 'from' | 'to', typed: string): string => {
  if (isDate(typed)) return typed;
  if (isMonth(typed)) return option === 'from' ? `${typed}-01` : monthEnd(typed);
  if (/^\d{4}$/.test(typed)) return option === 'from' ? `${typed}-01-01` : `${typed}-12-31`;
  throw refusal(
    `\`--${option} ${typed}\` is no day, month or year.`,
    `Write it as in \`--${option} 2026-09-04\`, \`--${option} 2026-09\` or \`--${option} 2026\`.`,
  );
};

/**
 * The first and last day that `--from` and `--to` name; the year of the other, or of today, where one is not given.
 * Throws a refusal for anything else, or when it ends before it begins.
 */
export const periodOf = ({ from, to, on }: PeriodOptions): { from: string; to: string } => {
  const year = (to ?? from ?? dayOf(on)).slice(0, 4);
  const period = { from: edgeOf('from', from ?? year), to: edgeOf('to', to ?? year) };
  if (period.from > period.to)
    throw refusal(`The period ends on ${period.to}, before it begins on ${period.from}.`, 'Change `--from` or `--to`.');
  return period;
};
