import type { VisitReckoned } from '../reckon/model.ts';
import { testsFor } from '../reckon/state.ts';

/**
 * Whether a strand or stretch test that does not speak against going on was made from a day (ISO date; '' for ever) up to
 * a visit, at the visit itself included.
 */
export const triedSince = ({ client, salon, date }: VisitReckoned, from: string): boolean =>
  testsFor(client, salon.hours, date).some(
    ({ kind, result, notNeeded, made }) =>
      (kind === 'strand' || kind === 'stretch') &&
      result !== 'adverse' &&
      !notNeeded &&
      made !== undefined &&
      made.date >= from,
  );
