import { lineName, placeOf } from '../cite.ts';
import { isLot, lastDayOf, lotsOf, lotUses } from '../lots.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'lot-past-date',
  family: 'shelf',
  severity: 'fix',
  over: 'visit',
  what: 'A lot is used on a day past the `use-by` that it came in with.',
  why: 'Past its date the maker no longer answers for what it does, and its peroxide may have weakened.',
  source: { kind: 'shelf', cites: 'the `use-by` of the line it came in by' },
  *check({ visit, date }, journal) {
    for (const use of lotUses(visit, journal)) {
      const came = lotsOf(journal).ins.find((move) => move.fact.useBy !== undefined && isLot(use, move));
      const useBy = came?.fact.useBy;
      if (came === undefined || useBy === undefined || lastDayOf(useBy.when) >= date) continue;
      const place = placeOf(came.stood, came.fact, useBy.at);
      yield {
        place: use.place,
        message: `Lot ${came.typed} of ${use.product} is used on ${date}; its date is ${useBy.when}.`,
        expected: `The date stands where it came in, ${lineName(place.file, place.line)}.`,
        todo: 'Correct the lot or its date, or take what is left off the shelf: `out … "past its date"`.',
        label: `use-by ${useBy.when}`,
        also: [{ place, says: 'its date' }],
      };
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-01-05
      in neon teal 200 g lot N118 use-by 2026-08
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118
                              ^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-01-05
      in neon teal 200 g lot N118 use-by 2026-09
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118`,
});
