import type { Stood } from '../../journal/source.ts';
import { mixesLightening } from '../../reckon/bowl/kinds-mixed.ts';
import { placeOf } from '../../reckon/cite.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import type { Client, ClientFact, Visit, VisitFact } from '../../records/schema/entry.ts';
import type { Seen, Stage } from '../../records/schema/values.ts';
import { capital } from '../../text/fold.ts';
import { STAGES, stageIndex } from '../../trade/stages.ts';
import { defineRule, type Found } from '../rule.ts';

const PALE_YELLOW = STAGES.indexOf('pale-yellow');

const isBeyond = (stage: string): boolean => Number(stageIndex(stage)) > PALE_YELLOW;

const isPast = ({ stage, to }: Stage): boolean => isBeyond(stage) || (to !== undefined && isBeyond(to));

const NOTHING: readonly Seen[] = [];

const seenOn = (fact: ClientFact | VisitFact, lightened: boolean): readonly Seen[] => {
  if (fact.word === 'test') return fact.test.name === 'strand' ? fact.result : NOTHING;
  // White hair that nothing lightened is grey, and no stage of lift.
  return lightened && (fact.word === 'check' || fact.word === 'result') ? fact.seen : NOTHING;
};

/** Whether any stage is past, which the rest is for; hardly ever one is. */
const isPastIn = ({ entry }: Stood<Client> | Stood<Visit>, lightened: boolean): boolean => {
  for (const fact of entry.facts)
    for (const { stage } of seenOn(fact, lightened)) if (stage !== undefined && isPast(stage)) return true;
  return false;
};

function* found(stood: Stood<Client> | Stood<Visit>, lightened: boolean): Generator<Found> {
  for (const fact of stood.entry.facts) {
    for (const { stage, zones } of seenOn(fact, lightened)) {
      if (stage === undefined || !isPast(stage)) continue;
      const where = zones.map(({ zone }) => zone).join(', ') || (fact.word === 'test' ? 'The strand' : 'The hair');
      yield {
        place: placeOf(stood, fact, stage.at),
        message: `${capital(where)} is past pale yellow: ${stage.to ?? stage.stage}.`,
        expected: 'Pale yellow is the last stage with pigment left to take (common practice).',
        todo: 'Take it off and write when; `hold lightener to` a date keeps the next visit from lightening it again.',
        label: 'the fibre itself is going',
      };
    }
  }
}

export default defineRule({
  name: 'past-pale-yellow',
  family: 'lift',
  severity: 'stop',
  bears: 'always',
  over: 'client',
  what: 'A check, a strand test or a result on lightened hair shows a stage beyond pale yellow.',
  why: 'No pigment is left to take, and what lightens further takes the fibre itself: hair breaks.',
  source: { kind: 'common practice' },
  caution: 'lightener',
  *check(client, visits: readonly VisitReckoned[]) {
    for (const stood of client.entries) yield* found(stood, false);
    for (const one of visits) {
      const lightened = mixesLightening(one);
      if (isPastIn(one.visit, lightened)) yield* found(one.visit, lightened);
    }
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:30 A white
                    ^^^^^
      off 14:31 A`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
      on 14:00 A top
      check 14:20 A yellow
      off 14:21 A`,
});
