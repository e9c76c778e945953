import { placeName } from '../../reckon/head/seen-at.ts';
import { isLightening } from '../../reckon/head/services.ts';
import type { Run, VisitReckoned } from '../../reckon/model.ts';
import { BACK, goesBack, placeOfStage, type SeenStage, stagesOf } from '../../reckon/timing/stages-seen.ts';
import { bowlOf } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { stageIndex } from '../../trade/stages.ts';
import { defineRule, type Found } from '../rule.ts';

const goesBackIn = (visit: VisitReckoned, run: Run): boolean => {
  const bowl = bowlOf(visit, run);
  return bowl !== undefined && isLightening(bowl) && goesBack(stagesOf(run));
};

function* found(visit: VisitReckoned): Generator<Found> {
  const told = new Set<number>();
  for (const run of visit.clock.runs) {
    if (!goesBackIn(visit, run)) continue;
    const seen = stagesOf(run);
    const most = new Map<string, SeenStage>();
    // A look at bowls that were on together may have been at the other one.
    const shared = visit.clock.runs.filter((other) => other.bowl !== run.bowl).flatMap(({ checks }) => checks);
    for (const now of seen) {
      if (shared.some(({ place }) => place.line === now.look.place.line)) continue;
      const before = most.get(now.zone);
      const place = placeOfStage(now);
      const back = before === undefined ? 0 : Number(stageIndex(before.stage.stage)) - now.end;
      if (before !== undefined && back >= BACK && !told.has(place.line)) {
        told.add(place.line);
        yield {
          place,
          message: `${placeName(now.zone)}: ${before.stage.stage} at ${clockText(before.look.at)}, ${now.stage.stage} at ${clockText(now.look.at)}.`,
          expected: 'Hair that is being lightened goes on from stage to stage, never back (common practice).',
          todo: 'Write the stage or the time as it was, or the zone that was looked at.',
          label: 'less lifted than before',
          also: [{ place: placeOfStage(before), says: 'seen earlier' }],
        };
      }
      if (back <= 0) most.set(now.zone, now);
    }
  }
}

export default defineRule({
  name: 'stage-goes-back',
  family: 'lift',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['lightener', 'high-lift'] },
  what: 'A later check shows a place two stages or more less lifted than an earlier one, under the same bowl.',
  why: 'A stage or a time is mistyped, and the pace reckoned from these checks would be wrong.',
  source: { kind: 'common practice' },
  check: (visit) =>
    // Asked first, since none nearly ever does.
    visit.clock.runs.some((run) => goesBackIn(visit, run)) ? found(visit) : [],
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:10 A top gold
      check 14:20 A top red
                        ^^^
      off 14:30 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:10 A top red
      check 14:20 A top gold
      off 14:30 A`,
});
