import type { Fact } from '../records/schema/entry.ts';
import { clockText } from '../text/dates.ts';
import { namesInFact } from './named.ts';
import type { Stood } from './stood.ts';

/**
 * What makes an entry or a line the same one in two states of the notes, wherever it stands and whatever else it says:
 * findings are compared by it, and so can two versions of a journal be.
 *
 * Reads: a record. Gives: a name for it. Runs again: nothing is kept here.
 */

/** What names an entry among those of its kind: a visit by its client, day and time, a product by its name. */
export const entryIdentity = ({ file, entry }: Stood): string => {
  switch (entry.kind) {
    case 'visit': {
      const minutes = entry.time?.minutes;
      const time = minutes === undefined ? [] : [clockText(minutes)];
      return ['visit', entry.client?.name ?? file, entry.date?.date ?? 'no date', ...time].join(' ');
    }
    case 'stock':
      return `stock ${entry.date?.date ?? file}`;
    case 'orphan':
      return `lines of ${file}`;
    default:
      return `${entry.kind} ${entry.name?.name ?? file}`;
  }
};

/** The bowls that a line is about; those that others of its names are of, such as a bowl taken out of, are not. */
const isSubject = (key: string | undefined): boolean => key === 'bowl' || key === 'bowls';

/** What names a line among those of its entry: its first word, its bowls in capitals, and its places on the head. */
export const factIdentity = (fact: Fact): string => {
  const bowls = namesInFact(fact, 'bowl').filter(({ path }) => path.length === 1 && isSubject(path[0]));
  const zones = namesInFact(fact, 'zone').filter(({ path }) => path.length === 1);
  return [fact.word, ...bowls.map(({ name }) => name.toUpperCase()), ...zones.map(({ name }) => name)].join(' ');
};
