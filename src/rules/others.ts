import type { ClientFile } from '../journal/journal.ts';

/** Other clients whose bowls are made again in this one's visits. */
export const othersOf = (client: ClientFile): string[] =>
  client.visits.flatMap(({ entry }) =>
    entry.facts.flatMap((fact) =>
      fact.word === 'again' && fact.from.client !== undefined ? [fact.from.client.name] : [],
    ),
  );
