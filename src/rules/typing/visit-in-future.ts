import { placeOf } from '../../reckon/cite.ts';
import { defineRule, NONE } from '../rule.ts';

/** Lines that say that the visit has been; what is only planned may stand under a day to come. */
const HAS_BEEN: ReadonlySet<string> = new Set(['check', 'off', 'left', 'result', 'paid', 'reaction', 'stopped']);

export default defineRule({
  name: 'visit-in-future',
  family: 'typing',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'A visit that has been, by its lines, is dated after the day of the check.',
  why: 'A mistyped date puts the visit after those to come, and tests, holds and growth are reckoned by it.',
  source: { kind: 'notation' },
  check({ visit, date }, { on }) {
    if (on === undefined || date <= on) return NONE;
    const done = visit.entry.facts.find(({ word }) => HAS_BEEN.has(word));
    if (done === undefined) return NONE;
    return [
      {
        place: placeOf(visit, { line: 0 }, visit.entry.date?.at),
        message: `The visit is dated ${date}, and today is ${on}; its \`${done.word}\` line says that it has been.`,
        todo: 'Correct the date.',
        also: [{ place: placeOf(visit, done), says: 'has been' }],
      },
    ];
  },
  bad: `
    client wren-abbott "Wren Abbott"
    visit 2029-09-04 wren-abbott
          ^^^^^^^^^^
      charge cut 42
      paid 42 card`,
  good: `
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      charge cut 42
      paid 42 card`,
});
