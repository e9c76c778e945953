import { grouped } from './grouped.ts';
import type { LiftSeries } from './series.ts';

/** The lift of one client's visits on one day with one product. */
export type LiftVisit = { readonly client: string; readonly date: string; readonly series: readonly LiftSeries[] };

/**
 * So many of the salon's latest visits are gone by, beside all of the client's own: plenty for the course of a lift, and
 * an estimate stays as quick in a large salon. A choice.
 */
export const SALON_VISITS = 400;

const compareVisits = (a: LiftVisit, b: LiftVisit): number =>
  a.date < b.date || (a.date === b.date && a.client < b.client) ? -1 : 1;

/** The visits that lightened with a product, oldest first, of one day by the client's name. */
export const liftVisits = (all: readonly LiftSeries[], product: string): LiftVisit[] =>
  [
    ...grouped(
      all.filter((one) => one.product.name === product),
      ({ client, date }) => `${date} ${client}`,
    ).values(),
  ]
    .flatMap((series): LiftVisit[] => series.slice(0, 1).map(({ client, date }) => ({ client, date, series })))
    .sort(compareVisits);

/** Of visits in order, those an estimate for a client goes by: the latest of the salon, and all of hers. */
export const goneBy = (visits: readonly LiftVisit[], client: string): LiftVisit[] => {
  const first = visits.length - SALON_VISITS;
  return visits.filter((visit, index) => index >= first || visit.client === client);
};
