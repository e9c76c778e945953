import type { ClientFile, Journal } from '../journal/journal.ts';
import { fold } from '../text/fold.ts';
import { nearNames } from '../text/near.ts';
import { offered, refusal } from './refusal.ts';

const said = ({ name, full }: ClientFile): string => (full === name ? `\`${name}\`` : `\`${name}\` (${full})`);

/** Most clients listed when a part of a name fits several. */
const MOST = 8;

/**
 * The client that a name, a full name or a part of either stands for. Throws a refusal that offers names when none
 * or more than one fits.
 */
export const findClient = (journal: Journal, typed: string): ClientFile => {
  const word = fold(typed.trim());
  const exact = journal.clients.get(word);
  if (exact !== undefined) return exact;
  const clients = [...journal.clients.values()];
  const named = clients.filter(({ full }) => fold(full) === word);
  const fitting = named.length > 0 ? named : clients.filter(({ name, full }) => `${name} ${fold(full)}`.includes(word));
  const [only] = fitting;
  if (word !== '' && only !== undefined && fitting.length === 1) return only;
  if (word !== '' && fitting.length > 1) {
    const more = fitting.length > MOST ? ` and ${fitting.length - MOST} more` : '';
    throw refusal(
      `${fitting.length} clients fit \`${typed}\`: ${fitting.slice(0, MOST).map(said).join(', ')}${more}.`,
      'Write the whole name of one.',
    );
  }
  // A near part of a name (`wrenn`) leads to its whole name.
  const wholes = new Map<string, string>();
  for (const { name, full } of clients)
    for (const part of [name, full, ...name.split('-'), ...full.split(/\s+/)]) wholes.set(fold(part), name);
  const near = [...new Set(nearNames(word, wholes.keys(), 6).map((part) => wholes.get(part) ?? part))].slice(0, 3);
  throw refusal(
    `No client goes by \`${typed}\` in these notes.`,
    near.length > 0 ? `Near names: ${offered(near)}.` : 'A client is named as in the header of the `client` entry.',
  );
};
