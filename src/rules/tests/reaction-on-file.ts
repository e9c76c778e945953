import type { VisitReckoned } from '../../reckon/model.ts';
import { isOxidative, type ReactionOnFile, reactionsOf, testsFor } from '../../reckon/state.ts';
import { bowlsPutOn } from '../applied.ts';
import { placeInBowl } from '../contents.ts';
import { defineRule, type Found } from '../rule.ts';
import { testedAt } from '../skin-tests.ts';

function* found(visit: VisitReckoned, reactions: readonly ReactionOnFile[]): Generator<Found> {
  const bowl = bowlsPutOn(visit).find(isOxidative);
  if (bowl === undefined) return;
  const { client, salon, date } = visit;
  const last = reactions.findLast((reaction) => reaction.date < date);
  if (last === undefined) return;
  // A positive test of what is put on is found as such.
  if (last.by === 'skin-test' && testedAt(visit).some(({ standing }) => standing.status === 'positive')) return;
  const clear = testsFor(client, salon.hours, date).findLast(({ kind, result, read, made }) => {
    const known = read ?? made;
    return kind === 'skin' && result === 'clear' && known !== undefined && known.date > last.date && known.date <= date;
  });
  const since = clear?.read ?? clear?.made;
  const what =
    last.by === 'skin-test'
      ? 'A positive skin test'
      : `A reaction${last.words.length > 0 ? ` (${last.words.join(' ')})` : ''}`;
  yield {
    place: placeInBowl(bowl, () => true),
    severity: clear === undefined ? 'stop' : 'mind',
    message:
      since === undefined
        ? `${what} of ${last.date} is on file, and no clear skin test since.`
        : `${what} of ${last.date} is on file; a skin test was read clear on ${since.date}.`,
    expected:
      'Labels of oxidative dyes name any earlier reaction as a reason not to colour (Regulation (EC) 1223/2009, Annex III).',
    todo:
      clear === undefined
        ? 'Write the skin test that was read since or what was really used; if it went on, why: `because reaction-on-file "…"`.'
        : 'Nothing, if medical advice was taken where it was needed.',
    also: [{ place: last.place, says: 'the reaction' }],
  };
}

export default defineRule({
  name: 'reaction-on-file',
  family: 'tests',
  severity: 'stop',
  bears: 'that-day',
  over: 'client',
  what: 'Oxidative colour is used after a reaction on file; `mind` once a skin test was read clear since.',
  why: 'A later reaction can be worse than the one before.',
  source: {
    kind: 'published',
    cites: 'Regulation (EC) 1223/2009, Annex III, label warnings of the oxidative hair dyes',
  },
  caution: 'reaction',
  *check(client, visits) {
    const [first] = visits;
    const reactions = first === undefined ? [] : reactionsOf(client, client.visits, first.salon.hours);
    if (reactions.length > 0) for (const visit of visits) yield* found(visit, reactions);
  },
  bad: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-03-04 wren-abbott
      reaction temple burning
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6
             ^^^^^^^`,
  good: `
    product dev-6 "Cream developer" developer 6%
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 40 clay + 80 dev-6`,
});
