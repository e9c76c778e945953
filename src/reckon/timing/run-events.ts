import type { PutOn, VisitReckoned } from '../model.ts';
import { matchZones } from '../zone-match.ts';

/** Whether a `reaction` or `stopped` line of the visit speaks of a run: of its bowl and zone, or of everything. */
export const speaksOfRun = ({ visit, salon }: VisitReckoned, run: PutOn): boolean =>
  visit.entry.facts.some((fact) => {
    if (fact.word !== 'reaction' && fact.word !== 'stopped') return false;
    const bowl = fact.bowls.length === 0 || fact.bowls.some(({ name }) => name.toUpperCase() === run.bowl);
    const zone =
      fact.zones.length === 0 ||
      run.zone === '' ||
      fact.zones.some(({ zone: named }) => matchZones(named, run.zone, salon.zones) !== undefined);
    return bowl && zone;
  });
