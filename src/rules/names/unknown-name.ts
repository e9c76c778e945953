import type { Journal } from '../../journal/journal.ts';
import { lineAt } from '../../reckon/cite.ts';
import { sliceOf } from '../../text/span.ts';
import { problemsOf } from '../problems.ts';
import { defineRule, type Found } from '../rule.ts';
import { unknownInClient, unknownInVisit, unknownOnShelf } from '../unknown-names.ts';

/** One finding a name, at its first place; its mend puts the name right wherever the visit has it. */
const onePerName = (all: readonly Found[], journal: Journal): Iterable<Found> => {
  const byName = new Map<string, Found>();
  for (const found of all.toSorted((a, b) => a.place.line - b.place.line || a.place.at - b.place.at)) {
    const name = sliceOf(lineAt(journal, found.place), found.place.at).toLowerCase();
    const first = byName.get(name);
    if (first === undefined) byName.set(name, found);
    else if (first.mend !== undefined && found.mend !== undefined) {
      const edits = [...first.mend.edits, ...found.mend.edits];
      byName.set(name, { ...first, mend: { ...first.mend, edits } });
    }
  }
  return byName.values();
};

export default defineRule({
  name: 'unknown-name',
  family: 'names',
  severity: 'fix',
  bears: 'never',
  over: 'shelf and clients',
  what: 'A product, client, stylist or salon is named that no entry of the journal describes.',
  why: 'Under a slip of a name the strength, the tests and the cautions of the right one are not found.',
  source: { kind: 'notation' },
  shared: unknownOnShelf,
  *check(client, visits, journal): Generator<Found> {
    yield* unknownInClient(client, journal);
    const reckoned = new Map(visits.map((visit) => [visit.visit, visit]));
    for (const visit of client.visits) {
      const bowls = reckoned.get(visit);
      const unsettled = bowls === undefined ? [] : problemsOf(bowls);
      const inBowls = unsettled.filter(({ kind }) => kind === 'unknown-name').map(({ found }) => found);
      const beside = unknownInVisit(visit, client, journal);
      if (beside.length > 0 || inBowls.length > 0) yield* onePerName([...beside, ...inBowls], journal);
    }
  },
  bad: `
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 caly
                ^^^^`,
  good: `
    product clay "Peregrine clay" lightener
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 clay`,
});
