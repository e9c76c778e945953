import type { Journal } from '../journal/journal.ts';
import type { Correction } from '../reckon/money/corrections.ts';
import { figure, perCent } from '../reckon/say.ts';
import { exact, roundTo } from '../text/exact.ts';
import { escapeText } from './escape.ts';
import { minorFigure, minorText } from './money-words.ts';
import { clientName, joined, stylistName } from './noted.ts';
import { table } from './tables.ts';

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

const byOf = (journal: Journal, name: string | undefined): string =>
  name === undefined ? '' : stylistName(journal, { name });

const whatOf = (journal: Journal, { kind, of, ofStylist }: Correction): string =>
  kind === 'correction'
    ? 'correction'
    : joined([`redo${of === undefined ? '' : ` of ${of}`}`, ofStylist && `by ${byOf(journal, ofStylist)}`], ' ');

const summary = (journal: Journal, found: readonly Correction[], visits: number): string => {
  const redos = found.filter(({ kind }) => kind === 'redo');
  if (redos.length === 0) return '';
  const known = redos.flatMap(({ cost }) => cost ?? []);
  const share = perCent(roundTo(exact(100 * redos.length, Math.max(1, visits)), exact(1, 10)));
  const cost = minorText(
    known.reduce((whole, one) => whole + one, 0),
    journal.salon.currency,
  );
  const of = known.length < redos.length ? ` of the ${known.length} whose prices are all known` : '';
  return `${counted(redos.length, 'redo')} in ${counted(visits, 'visit')}, ${share}; products${of} ${cost}.`;
};

/** Corrections and redos as blocks of Markdown; `visits` is how many visits the period had. */
export const correctionsBlocks = (journal: Journal, found: readonly Correction[], visits: number): string[] => {
  if (found.length === 0) return [];
  const { currency, scale } = journal.salon;
  const unit = currency === undefined ? '' : ` ${escapeText(currency)}`;
  const rows = found.map((one) => [
    one.visit.date,
    clientName(journal, one.visit.client),
    byOf(journal, one.visit.visit.entry.by?.name),
    whatOf(journal, one),
    figure(roundTo(one.mixed, scale)),
    one.cost === undefined ? 'no price' : minorFigure(one.cost, currency),
    minorFigure(one.visit.money.charged, one.visit.money.currency),
  ]);
  const columns = [
    { head: 'Day' },
    { head: 'Client' },
    { head: 'Stylist' },
    { head: 'What' },
    { head: 'Mixed g', figures: true },
    { head: `Cost${unit}`, figures: true },
    { head: `Charged${unit}`, figures: true },
  ];
  return [
    '## Corrections and redos',
    ...[summary(journal, found, visits)].filter((text) => text !== ''),
    table(columns, rows),
  ];
};
