import type { Journal } from '../journal/journal.ts';
import { type Finding, SEVERITIES } from '../text/finding.ts';

/** `1 visit`, `2 visits`. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count} ${count === 1 ? one : several}`;

const everywhere = (): boolean => true;

/** How many clients an entry describes, in the files given or in all; a misspelt name in a visit is none. */
export const clientCount = ({ clients }: Journal, has: (file: string) => boolean = everywhere): number =>
  [...clients.values()].filter(
    ({ entries, visits }) => entries.length > 0 && [...entries, ...visits].some(({ file }) => has(file)),
  ).length;

/**
 * The last line of a check: how many findings of each severity, in how many visits of how many clients, of the files
 * given or of all.
 */
export const summaryOf = (
  journal: Journal,
  findings: readonly Finding[],
  answered: readonly Finding[],
  has: (file: string) => boolean = everywhere,
): string => {
  const stoods = [...[...journal.clients.values()].flatMap((client) => client.visits), ...journal.unfiled];
  const visits = stoods.filter(({ file }) => has(file)).length;
  const where = `in ${counted(visits, 'visit')} of ${counted(clientCount(journal, has), 'client')}`;
  const open = findings.filter((finding) => finding.reason === undefined);
  const parts = SEVERITIES.flatMap((severity) => {
    const count = open.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}`];
  });
  const found = open.length === 0 ? 'No findings' : `${counted(open.length, 'finding')}: ${parts.join(', ')}`;
  const explained = answered.length === 0 ? '' : ` ${answered.length} explained by a \`because\` line.`;
  return `${found} ${where}.${explained}`;
};
