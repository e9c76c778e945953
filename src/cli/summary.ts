import type { Journal } from '../journal/journal.ts';
import { type Finding, SEVERITIES } from '../text/finding.ts';

/** `1 visit`, `2 visits`. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count} ${count === 1 ? one : several}`;

/** How many clients an entry describes; a misspelt name in a visit is none. */
export const clientCount = ({ clients }: Journal): number =>
  [...clients.values()].filter(({ entries }) => entries.length > 0).length;

/** The last line of a check: how many findings of each severity, in how many visits of how many clients. */
export const summaryOf = (journal: Journal, findings: readonly Finding[], answered: readonly Finding[]): string => {
  const clients = [...journal.clients.values()];
  const visits = clients.reduce((sum, client) => sum + client.visits.length, journal.unfiled.length);
  const where = `in ${counted(visits, 'visit')} of ${counted(clientCount(journal), 'client')}`;
  const open = findings.filter((finding) => finding.reason === undefined);
  const parts = SEVERITIES.flatMap((severity) => {
    const count = open.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}`];
  });
  const found = open.length === 0 ? 'No findings' : `${counted(open.length, 'finding')}: ${parts.join(', ')}`;
  const explained = answered.length === 0 ? '' : ` ${answered.length} explained by a \`because\` line.`;
  return `${found} ${where}.${explained}`;
};
