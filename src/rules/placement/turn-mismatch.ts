import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { listed } from '../../reckon/say.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'turn-mismatch',
  family: 'placement',
  severity: 'fix',
  bears: 'that-day',
  over: 'visit',
  looksAt: { words: ['place'] },
  what: 'The bowls that take turns are not the bowls that the `place` line names.',
  why: 'The turn is what is laid foil by foil, so a bowl that is missing from it goes nowhere.',
  source: { kind: 'notation' },
  check: ({ visit }) =>
    foundEach(factsOf(visit, 'place'), ({ line, bowls, turn = [] }) => {
      const [first] = turn;
      if (first === undefined) return undefined;
      const named = [...new Set(bowls.map(({ name }) => name.toUpperCase()))];
      const turning = [...new Set(turn.map(({ name }) => name.toUpperCase()))];
      const stranger = turn.find(({ name }) => !named.includes(name.toUpperCase()));
      const idle = named.filter((name) => !turning.includes(name));
      if (stranger === undefined && idle.length === 0) return undefined;
      return {
        place: placeOf(visit, { line }, (stranger ?? first).at),
        message: `Bowls ${listed(named)} are placed, and bowls ${listed(turning)} take turns.`,
        todo: `Write \`${named.join('+')}\` and \`turn\` with the same bowls, in the order they were laid.`,
        label: stranger === undefined ? `no ${listed(idle)} in the turn` : 'not placed here',
      };
    }),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral, moss
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 30 neon coral
      bowl C 30 neon moss
      place A+B back weave x28 turn A C A
                                      ^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal, coral, moss
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal
      bowl B 30 neon coral
      bowl C 30 neon moss
      place A+B back weave x28 turn A B A`,
});
