import { type Exact, sum } from '../../text/exact.ts';
import { compareText } from '../../text/fold.ts';
import type { VisitReckoned } from '../model.ts';
import { isWithin, type Period } from '../use/period.ts';

/**
 * Visits that put colour right: free of charge after our own work (`redo`), or as a service (an aim or a charge that
 * speaks of a correction).
 *
 * Reads: reckoned visits. Gives: rows for pages and files. Runs again: when one of the visits changes.
 */
export type Correction = {
  readonly visit: VisitReckoned;
  readonly kind: 'redo' | 'correction';
  /** The day of the visit put right, and whose it was, where the notes have it. */
  readonly of: string | undefined;
  readonly ofStylist: string | undefined;
  /** Exact grams mixed. */
  readonly mixed: Exact;
  /** Minor units; undefined when a price is missing. */
  readonly cost: number | undefined;
};

/** The trade's word for it: `correction`, `colour-correction`, `correct the band`. */
const CORRECTS = /(^|[^\p{L}])correct(ion|ions|ing|ive|s|ed)?(?=$|[^\p{L}])/iu;

const isCorrection = ({ visit }: VisitReckoned): boolean =>
  visit.entry.facts.some(
    (fact) => (fact.word === 'aim' && CORRECTS.test(fact.text)) || (fact.word === 'charge' && CORRECTS.test(fact.item)),
  );

/** The corrections and redos of a period, by day and then by client. */
export const corrections = (reckoned: Iterable<VisitReckoned>, period: Period): Correction[] =>
  [...reckoned]
    .filter(({ date }) => isWithin(date, period))
    .flatMap((visit): Correction[] => {
      const redo = visit.visit.entry.facts.find((fact) => fact.word === 'redo');
      const of = redo?.word === 'redo' ? redo.date.date : undefined;
      if (redo === undefined && !isCorrection(visit)) return [];
      const earlier = visit.client.visits.find(({ entry }) => entry.date?.date === of && of !== undefined);
      return [
        {
          visit,
          kind: redo === undefined ? 'correction' : 'redo',
          of,
          ofStylist: earlier?.entry.by?.name,
          mixed: sum(visit.uses.filter(({ pieces }) => !pieces).map(({ mixed }) => mixed)),
          cost: visit.money.cost,
        },
      ];
    })
    .sort((a, b) => compareText(a.visit.date, b.visit.date) || compareText(a.visit.client.name, b.visit.client.name));
