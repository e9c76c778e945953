import type { ClientFile, Journal } from '../journal/journal.ts';
import { fold } from '../text/fold.ts';
import { nearNames } from '../text/near.ts';
import { offered, refusal } from './refusal.ts';

const said = ({ name, full }: ClientFile): string => (full === name ? `\`${name}\`` : `\`${name}\` (${full})`);

/** A name as it is looked for: folded, and without the accents that a keyboard may lack, `zoe-harrow` for `zoë-harrow`. */
const bare = (text: string): string =>
  fold(text.normalize('NFD').replace(/\p{M}/gu, '')).replace(/[łøđı]/g, (letter) => PLAIN[letter] ?? letter);

/** Letters of names that are no plain letter with an accent. */
const PLAIN: Readonly<Record<string, string>> = { ł: 'l', ø: 'o', đ: 'd', ı: 'i' };

/** Most clients listed when a part of a name fits several. */
const MOST = 8;

/**
 * The client that a name, a full name or a part of either stands for, with or without its accents. Throws a refusal that
 * offers names when none or more than one fits.
 */
export const findClient = (journal: Journal, typed: string): ClientFile => {
  const word = fold(typed.trim());
  const exact = journal.clients.get(word);
  if (exact !== undefined) return exact;
  const clients = [...journal.clients.values()];
  const sought = bare(word);
  const fits = [
    ({ full }: ClientFile): boolean => fold(full) === word,
    ({ name, full }: ClientFile): boolean => bare(name) === sought || bare(full) === sought,
    ({ name, full }: ClientFile): boolean => bare(`${name} ${full}`).includes(sought),
  ];
  const fitting = fits.map((fit) => clients.filter(fit)).find((found) => found.length > 0) ?? [];
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
