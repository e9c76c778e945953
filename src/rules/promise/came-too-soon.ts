import type { FactsOf, VisitReckoned } from '../../reckon/model.ts';
import { isColour } from '../../reckon/services.ts';
import type { DateText } from '../../records/schema/values.ts';
import { bowlsPutOn } from '../applied.ts';
import { lineName, placeOf } from '../cite.ts';
import { defineRule } from '../rule.ts';

type NotBefore = { readonly from: VisitReckoned; readonly fact: FactsOf<'next'>; readonly date: DateText };

const notBeforeOf = (from: VisitReckoned): NotBefore | undefined => {
  const fact = from.visit.entry.facts.findLast((one): one is FactsOf<'next'> => one.word === 'next');
  return fact?.from && fact.date !== undefined ? { from, fact, date: fact.date } : undefined;
};

export default defineRule({
  name: 'came-too-soon',
  family: 'promise',
  severity: 'fix',
  over: 'client',
  what: 'Colour or lightener is put on before the day that the last visit’s `next from` names.',
  why: 'The day was set so that hair, skin or colour had its time.',
  source: { kind: 'notation' },
  *check(_, visits) {
    let last: NotBefore | undefined;
    for (const visit of visits) {
      const coloured = bowlsPutOn(visit).some(isColour);
      const { date } = visit.visit.entry;
      if (coloured && date !== undefined && last !== undefined && date.date < last.date.date) {
        const place = placeOf(last.from.visit, last.fact, last.date.at);
        // What it says besides may be about another service than this one.
        const isOpen = last.fact.says !== undefined || last.fact.changes.length > 0;
        yield {
          place: placeOf(visit.visit, { line: 0 }, date.at),
          message: `The visit is on ${date.date}, and the last one says not before ${last.date.date}.`,
          expected: `It says so at ${lineName(place.file, place.line)}.`,
          todo: 'Correct the date, or write why it was sooner: `allow came-too-soon "…"`.',
          also: [{ place, says: 'not before' }],
          ...(isOpen && { severity: 'mind' }),
        };
      }
      last = notBeforeOf(visit) ?? (coloured ? undefined : last);
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      bowl A 40 neon teal
      next from 2026-10-01
    visit 2026-09-04 wren-abbott
          ^^^^^^^^^^
      bowl A 40 neon teal`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    client wren-abbott "Wren Abbott"
    visit 2026-06-16 wren-abbott
      bowl A 40 neon teal
      next from 2026-09-01
    visit 2026-09-04 wren-abbott
      bowl A 40 neon teal`,
});
