import { itemsIn } from '../../reckon/bowl/contents.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { bowlOf, endOf } from '../../reckon/timing/timed-runs.ts';
import { clockText } from '../../text/dates.ts';
import { defineRule, type Found } from '../rule.ts';

function* found(visit: VisitReckoned): Generator<Found> {
  const washed = visit.visit.entry.facts.some(({ word }) => word === 'wash' || word === 'rinse');
  if (washed) return;
  for (const run of visit.clock.runs) {
    const bowl = bowlOf(visit, run);
    const item = bowl && itemsIn(bowl).find(({ kind }) => kind === 'remover');
    if (item === undefined || run.off === undefined) continue;
    yield {
      place: endOf(run),
      message: `Bowl ${run.bowl}, ${item.name}, a remover, came off at ${clockText(run.off)}, and no wash is noted.`,
      expected: 'A remover is washed out, more than once, before anything else goes on (common practice).',
      todo: `Write the wash, as in \`wash ${clockText(run.off)} "twice"\`.`,
      label: 'no wash after it',
    };
    return;
  }
}

export default defineRule({
  name: 'remover-unwashed',
  family: 'condition',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['remover'] },
  what: 'A remover comes off and no `wash` or `rinse` line follows.',
  why: 'What a remover shrinks stays in the hair until it is washed out, and darkens again under peroxide or air.',
  source: { kind: 'common practice' },
  check: found,
  bad: `
    product unpick "Unpick" remover
      mix none
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      test strand unpick 20min orange
      bowl U 60 unpick
      on 14:00 U lengths
      off 14:20 U
          ^^^^^`,
  good: `
    product unpick "Unpick" remover
      mix none
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      test strand unpick 20min orange
      bowl U 60 unpick
      on 14:00 U lengths
      off 14:20 U
      wash 14:20 "twice"`,
});
