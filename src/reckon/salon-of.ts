import type { Journal } from '../journal/journal.ts';
import type { SalonSettings } from '../journal/salon.ts';
import type { Stood } from '../journal/source.ts';
import type { Visit } from '../records/schema/entry.ts';

/** The salon a visit is made in: the one it names, else its stylist's, else the journal's first. */
export const salonOf = (journal: Journal, { entry }: Stood<Visit>): SalonSettings => {
  const named = entry.salon && journal.salons.get(entry.salon.name);
  if (named !== undefined) return named;
  const stylists = entry.by && journal.stylists.get(entry.by.name)?.entry.salon;
  return (stylists && journal.salons.get(stylists.name)) ?? journal.salon;
};
