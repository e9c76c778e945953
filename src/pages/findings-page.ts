import type { Journal } from '../journal/journal.ts';
import { type Finding, SEVERITIES, sameFindings } from '../text/finding.ts';
import { type FilePlace, fromOf } from '../text/span.ts';
import { dayText } from './days.ts';
import { codeSpan, escapeText } from './escape.ts';
import { findingItem } from './finding-lines.ts';
import { joined } from './noted.ts';

/** Where the pages of a journal stand to one another. */
export type Links = {
  /** The address of a client's card from the page that links to it. */
  readonly cardOf: (client: string) => string;
  /** A file of notes as pages name it. */
  readonly fileOf: (file: string) => string;
};

/** `12 findings: 1 stop, 4 fix, 7 mind`, of those that no `because` line explains. */
export const findingsCount = (findings: readonly Finding[]): string => {
  const open = findings.filter(({ reason }) => reason === undefined);
  const parts = SEVERITIES.map((severity) => {
    const count = open.filter((finding) => finding.severity === severity).length;
    return count > 0 && `${count} ${severity}`;
  });
  if (open.length === 0) return 'no findings';
  return `${open.length} ${open.length === 1 ? 'finding' : 'findings'}: ${joined(parts, ', ')}`;
};

const placeItem = ({ fileOf }: Links, { file, line, at }: FilePlace): string =>
  codeSpan(`${fileOf(file)}:${line + 1}:${fromOf(at) + 1}`);

/** What is kept of the page from one drawing to the next: a client's part, with what it was made of. */
export type FindingsKept = Map<
  string,
  { readonly head: string; readonly group: readonly Finding[]; readonly part: string }
>;

/**
 * Everything found in the notes as Markdown: first what belongs to no client, then client by client. A part that is in
 * `kept`, made of the same findings, is not made again.
 */
export const findingsMarkdown = (
  { clients, salon }: Journal,
  findings: readonly Finding[],
  links: Links,
  on: string,
  kept: FindingsKept = new Map(),
): string => {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const of = finding.client ?? '';
    const group = groups.get(of);
    if (group === undefined) groups.set(of, [finding]);
    else group.push(finding);
  }
  const titleOf = (client: string): string =>
    client === '' ? 'Shelf, salon and other lines' : escapeText(clients.get(client)?.full ?? client);
  const blocks = [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([client, group]) => {
      const card = clients.has(client) ? `\n\n[The card](${links.cardOf(client)})` : '';
      const head = `## ${titleOf(client)}${card}`;
      const known = kept.get(client);
      if (known?.head === head && sameFindings(known.group, group)) return known.part;
      const items = group.map((finding) => `${findingItem(finding)} ${placeItem(links, finding.place)}`);
      const part = `${head}\n\n${items.join('\n')}`;
      kept.set(client, { head, group, part });
      return part;
    });
  for (const client of kept.keys()) if (!groups.has(client)) kept.delete(client);
  const head = joined([dayText(on), findingsCount(findings), salon.full && escapeText(salon.full)], ' · ');
  return `${['# Findings', head, ...blocks].join('\n\n')}\n`;
};
