import type { ClientFile } from '../../journal/journal.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { recently } from '../../text/recently.ts';

const numbers = recently(
  ({ visits }: ClientFile) => new Map<Stood, number>(visits.map((visit, index): [Stood, number] => [visit, index])),
);

/** How many of a client's visits come before one of hers; all of them, where it is none of hers. */
export const numberOf = (client: ClientFile, visit: Stood<Visit>): number =>
  numbers(client).get(visit) ?? client.visits.length;
