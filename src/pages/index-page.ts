import type { Journal } from '../journal/journal.ts';
import { sayWindow } from '../reckon/ahead/say-window.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import { clockText } from '../text/dates.ts';
import { type Finding, SEVERITIES } from '../text/finding.ts';
import type { ClientRow } from './clients-page.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { findingsCount, type Links } from './findings-page.ts';
import { CLIENTS_HEADING } from './headings.ts';
import { commas, joined } from './noted.ts';
import { type Column, table } from './tables.ts';

/** A client in the index: her row of the list, and what was found in her notes. */
export type IndexRow = { readonly row: ClientRow; readonly findings: readonly Finding[] };

const COLUMNS: readonly Column[] = [
  { head: 'Client' },
  { head: 'Last visit' },
  { head: 'Next due' },
  { head: 'Alerts', figures: true },
  { head: 'Findings' },
];

const foundCell = (findings: readonly Finding[]): string =>
  commas(
    SEVERITIES.map((severity) => {
      const count = findings.filter((one) => one.severity === severity && one.reason === undefined).length;
      return count > 0 && `${count} ${severity}`;
    }),
  );

const cardLink = ({ cardOf }: Links, { name, full }: { readonly name: string; readonly full: string }): string =>
  `[${escapeText(full)}](${cardOf(name)})`;

const cellsOf = ({ row, findings }: IndexRow, links: Links): string[] => [
  row.entry ? cardLink(links, row) : `${cardLink(links, row)}, no \`client\` entry`,
  row.last ?? 'none',
  row.due === undefined ? '' : sayWindow(row.due),
  row.alerts === 0 ? '' : `${row.alerts}`,
  foundCell(findings),
];

const todayItem = ({ client, visit }: VisitReckoned, links: Links): string => {
  const { time } = visit.entry;
  const at = time?.minutes === undefined ? '' : `${clockText(time.minutes)} `;
  return `- ${at}${cardLink(links, client)}`;
};

/** Clients in one table; more stand under the letters they begin with. */
const MOST_TOGETHER = 200;

/** The letter a client stands under, without its accent. */
const letterOf = ({ row }: IndexRow): string => row.full.normalize('NFD').slice(0, 1).toUpperCase();

/** The tables of clients: one, or one a letter under its heading. */
const clientTables = (rows: readonly IndexRow[], links: Links): string[] => {
  const tableOf = (some: readonly IndexRow[]): string =>
    table(
      COLUMNS,
      some.map((one) => cellsOf(one, links)),
    );
  if (rows.length <= MOST_TOGETHER) return rows.length === 0 ? ['The notes name no client.'] : [tableOf(rows)];
  const byLetter = new Map<string, IndexRow[]>();
  for (const one of rows) {
    const letter = letterOf(one);
    const group = byLetter.get(letter);
    if (group === undefined) byLetter.set(letter, [one]);
    else group.push(one);
  }
  return [...byLetter]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([letter, group]) => [`### ${escapeText(letter)}`, tableOf(group)]);
};

/**
 * The index of a journal's pages as Markdown: today's visits, how much was found, every client with her alerts.
 * `today` holds the visits of the day, in the order of their times.
 */
export const indexMarkdown = (
  { salon }: Journal,
  rows: readonly IndexRow[],
  today: readonly VisitReckoned[],
  findings: readonly Finding[],
  { findingsAt, ...links }: Links & { readonly findingsAt: string },
  on: string,
): string => {
  const own = rows.filter(({ row }) => row.entry).length;
  const alerts = rows.reduce((sum, { row }) => sum + row.alerts, 0);
  const counted = `${alerts} ${alerts === 1 ? 'alert' : 'alerts'} on the cards`;
  const blocks = [
    `# ${escapeText(salon.full ?? 'Journal')}`,
    joined([dayText(on), `${own} ${own === 1 ? 'client' : 'clients'}`], ' · '),
    '## Today',
    today.length === 0 ? 'No visit is noted for the day.' : today.map((visit) => todayItem(visit, links)).join('\n'),
    '## Findings and alerts',
    `[${findingsCount(findings).replace(/^n/, 'N')}](${findingsAt}); ${counted}.`,
    `## ${CLIENTS_HEADING}`,
    'Alerts are counted as they stand at the head of each card.',
    ...clientTables(rows, links),
  ];
  return `${blocks.join('\n\n')}\n`;
};
