import type { ClientFile, Journal } from '../journal/journal.ts';
import { lineText } from '../journal/where.ts';
import { plannedIn } from '../reckon/ahead/due-window.ts';
import { planVisit } from '../reckon/ahead/plan.ts';
import { askedVisit } from '../reckon/ahead/service-asked.ts';
import type { SalonMix } from '../reckon/forecast/forecast.ts';
import { putsOnColour } from '../reckon/head/services.ts';
import type { VisitReckoned } from '../reckon/model.ts';
import type { Stub } from './rebook-stub.ts';

/**
 * What the next visit of a client is begun from, on a day: the last visit that did what `next` asks for. `visits` are hers
 * before the day, oldest first, the last of them `last`; `mix` what the salon's bowls before the day teach.
 */
export const nextVisit = (
  journal: Journal,
  last: ClientFile['visits'][number],
  visits: readonly VisitReckoned[],
  on: string,
  mix: SalonMix,
): Stub => {
  const asks = plannedIn(visits);
  const asked = askedVisit(asks, visits);
  // The last with colour where nothing that she had is asked for: after a consultation her bowls are those before it.
  const like = asked?.visit ?? visits.findLast(putsOnColour) ?? visits.find((one) => one.visit === last);
  return {
    on,
    made: like?.visit ?? last,
    others: asked?.others ?? new Set(),
    plan: like && planVisit(like, visits, on, mix),
    asks: asks?.visit ?? last,
    last,
    typed: (visit, line) => lineText(journal, { in: visit, line }),
  };
};
