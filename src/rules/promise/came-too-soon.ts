import { bowlsPutOn } from '../../reckon/bowl/applied.ts';
import { placeOf } from '../../reckon/cite.ts';
import { factsOf } from '../../reckon/facts-of.ts';
import { isColour } from '../../reckon/head/services.ts';
import type { FactsOf, VisitReckoned } from '../../reckon/model.ts';
import type { DateText } from '../../records/schema/values.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { defineRule, foundEach } from '../rule.ts';

type NotBefore = { readonly from: VisitReckoned; readonly fact: FactsOf<'next'>; readonly date: DateText };

const notBeforeOf = (from: VisitReckoned): NotBefore | undefined => {
  let latest: NotBefore | undefined;
  for (const fact of factsOf(from.visit, 'next'))
    if (fact.from && fact.date !== undefined && fact.date.date >= (latest?.date.date ?? ''))
      latest = { from, fact, date: fact.date };
  return latest;
};

export default defineRule({
  name: 'came-too-soon',
  family: 'promise',
  severity: 'fix',
  bears: 'never',
  over: 'client',
  what: 'Colour or lightener is put on before the day that the last visit’s `next from` names.',
  why: 'The day was set so that hair, skin or colour had its time.',
  source: { kind: 'notation' },
  check(_, visits) {
    let last: NotBefore | undefined;
    return foundEach(visits, (visit) => {
      const due = last !== undefined && bowlsPutOn(visit).some(isColour) ? last : undefined;
      // What puts no colour on leaves the day as it was.
      last = notBeforeOf(visit) ?? (due === undefined ? last : undefined);
      const { date } = visit.visit.entry;
      if (due === undefined || date === undefined || date.date >= due.date.date) return undefined;
      const place = placeOf(due.from.visit, due.fact, due.date.at);
      // What it says besides may be about another service than this one.
      const isOpen = due.fact.says !== undefined || due.fact.changes.length > 0;
      return {
        place: placeOf(visit.visit, { line: 0 }, date.at),
        message: `The visit is on ${date.date}, and the last one says not before ${due.date.date}.`,
        expected: sentence`It says so at ${lineName(place)}.`,
        todo: 'Correct the date, or write why it was sooner: `because came-too-soon "…"`.',
        also: [{ place, says: 'not before' }],
        ...(isOpen && { severity: 'mind' }),
      };
    });
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
