import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { itemsIn, placeInBowl } from '../../reckon/bowl/contents.ts';
import { stillHanging, zonesOfBowl } from '../../reckon/client/state.ts';
import { anyMeetLoosely } from '../../reckon/head/hair-meets.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { defineRule, type Found } from '../rule.ts';

const NOT_TAKEN: ReadonlySet<string> = new Set(['direct-dye', 'henna', 'metallic']);

function* found(visit: VisitReckoned): Generator<Found> {
  for (const bowl of bowlsPutOn(visit)) {
    const item = itemsIn(bowl).find(({ kind }) => kind === 'remover');
    if (item === undefined) continue;
    const under = stillHanging(visit).find(
      ({ kind, zones }) =>
        NOT_TAKEN.has(kind) && anyMeetLoosely(zonesOfBowl(visit, bowl.name), zones, visit.salon.zones),
    );
    if (under === undefined) continue;
    yield {
      place: placeInBowl(bowl, (portion) => portion.item === item),
      message: `Bowl ${bowl.name} holds ${item.name}, a remover, and ${under.kind} is on file there.`,
      expected: 'A remover takes out oxidative dye, and little of anything else (common practice).',
      todo: 'Write what the strand test showed, or the zones it really went on.',
      label: `on ${under.kind}`,
      also: [{ place: under.place, says: 'went in before' }],
    };
  }
}

export default defineRule({
  name: 'remover-on-direct-dye',
  family: 'condition',
  severity: 'mind',
  bears: 'that-day',
  over: 'visit',
  looksAt: { kinds: ['remover'] },
  what: 'A remover goes where direct dye, henna or metal salts are on file.',
  why: 'A remover shrinks oxidative dye; other colour it leaves, shifts in tone, or drives deeper.',
  source: { kind: 'common practice' },
  check: found,
  bad: `
    product unpick "Unpick" remover
      mix none
    client wren-abbott "Wren Abbott"
      history 2026-05 direct-dye lengths
    visit 2026-09-04 wren-abbott
      test strand unpick 20min orange
      bowl U 60 unpick
             ^^^^^^^^^
      place U lengths`,
  good: `
    product unpick "Unpick" remover
      mix none
    client wren-abbott "Wren Abbott"
      history 2026-05 salon-colour lengths
    visit 2026-09-04 wren-abbott
      test strand unpick 20min orange
      bowl U 60 unpick
      place U lengths`,
});
