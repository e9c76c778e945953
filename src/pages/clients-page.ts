import type { Journal } from '../journal/journal.ts';
import { awaitedAfter } from '../reckon/ahead/awaited.ts';
import type { DueWindow } from '../reckon/ahead/due-window.ts';
import { sayWindow } from '../reckon/ahead/say-window.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Finding } from '../text/finding.ts';
import { alertItems } from './alerts.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { joined } from './noted.ts';
import { type Column, table } from './tables.ts';
import { isUnderWay } from './visit-open.ts';

/** A client in the list of all: her last visit, when the next is due, how many alerts her card begins with. */
export type ClientRow = {
  readonly name: string;
  readonly full: string;
  /** Whether she has an entry of her own; else only visits name her, maybe misspelt. */
  readonly entry: boolean;
  readonly visits: number;
  readonly last: string | undefined;
  /** The days between which she is awaited. */
  readonly due: DueWindow | undefined;
  readonly alerts: number;
};

/** Every client of the journal as she stands on a day, by name. */
export const clientRows = (
  journal: Journal,
  reckoned: ReadonlyMap<string, readonly VisitReckoned[]>,
  findings: readonly Finding[],
  on: string,
): ClientRow[] => {
  const own = new Map<string, Finding[]>();
  for (const finding of findings) {
    const of = finding.client ?? '';
    const list = own.get(of);
    if (list === undefined) own.set(of, [finding]);
    else list.push(finding);
  }
  return [...journal.clients.values()].map((client) => {
    const all = reckoned.get(client.name) ?? [];
    const visits = all.filter(({ date }) => date <= on);
    const ahead = all.filter(({ date }) => date > on);
    // She is awaited as her last visit says, until the one under way is over.
    const awaited = awaitedAfter(
      all.filter((visit) => !isUnderWay(visit, on)),
      on,
    );
    const last = visits.at(-1);
    return {
      name: client.name,
      full: client.full,
      entry: client.entries.length > 0,
      visits: visits.length,
      last: last?.date,
      due: awaited && { first: awaited.first, last: awaited.last },
      alerts: alertItems({ journal, client, visits, ahead, findings: own.get(client.name) ?? [], on }).length,
    };
  });
};

const COLUMNS: readonly Column[] = [
  { head: 'Client' },
  { head: 'Name' },
  { head: 'Visits', figures: true },
  { head: 'Last visit' },
  { head: 'Next due' },
  { head: 'Alerts', figures: true },
];

/** The list of clients as Markdown. */
export const clientsMarkdown = ({ salon }: Journal, rows: readonly ClientRow[], on: string): string => {
  const own = rows.filter(({ entry }) => entry).length;
  const count = `${own} ${own === 1 ? 'client' : 'clients'}`;
  const cells = rows.map((row) => [
    escapeText(row.name),
    row.entry ? (row.full === row.name ? '' : escapeText(row.full)) : 'no `client` entry',
    `${row.visits}`,
    row.last ?? 'none',
    row.due === undefined ? '' : sayWindow(row.due),
    row.alerts === 0 ? '' : `${row.alerts}`,
  ]);
  const blocks = [
    '# Clients',
    joined([dayText(on), count, salon.full && escapeText(salon.full)], ' · '),
    ...(rows.length === 0 ? ['The notes name no client.'] : [table(COLUMNS, cells)]),
    'Alerts are counted as they stand at the head of each card.',
  ];
  return `${blocks.join('\n\n')}\n`;
};
