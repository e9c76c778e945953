import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import type { VisitReckoned } from '../../reckon/model.ts';
import { defineRule } from '../rule.ts';

/** Lines that say why a visit costs nothing, or that it was not finished. */
const NOT_CHARGED: ReadonlySet<string> = new Set(['redo', 'declined', 'stopped', 'reaction', 'paid']);

const isUncharged = ({ visit }: VisitReckoned): boolean =>
  factsOf(visit, 'charge').length === 0 &&
  visit.entry.facts.some(({ word }) => word === 'result') &&
  !visit.entry.facts.some(({ word }) => NOT_CHARGED.has(word));

export default defineRule({
  name: 'charge-missing',
  family: 'money',
  severity: 'mind',
  bears: 'never',
  over: 'client',
  what: 'A finished visit has bowls and no charge, where the client’s other visits are charged.',
  why: 'The work is missing from the day’s money.',
  source: { kind: 'notation' },
  *check(_, visits) {
    if (!visits.some(({ money }) => money.items.length > 0)) return;
    for (const visit of visits) {
      if (!isUncharged(visit) || bowlsPutOn(visit).length === 0) continue;
      const { length } = bowlsPutOn(visit);
      yield {
        place: placeOf(visit.visit, { line: 0 }, visit.visit.entry.date?.at),
        message: `The visit of ${visit.date} has ${length === 1 ? 'a bowl' : `${length} bowls`} and a result, and no charge.`,
        todo: 'Write what was charged, `charge gloss 0` where it was free, or `redo` with the day that was put right.',
      };
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      charge cut 42
    visit 2026-09-04 wren-abbott
          ^^^^^^^^^^
      bowl A 40 neon teal
      result lengths 8 even`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      charge cut 42
    visit 2026-09-04 wren-abbott
      bowl A 40 neon teal
      result lengths 8 even
      charge teal 38`,
});
