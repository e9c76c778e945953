import { placeOf } from '../../reckon/cite.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { isLot, lastDayOf, lotsOf, lotUses } from '../lots.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'lot-past-date',
  family: 'shelf',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'A lot is used on a day past the `use-by` that it came in with.',
  why: 'Past its date the maker no longer answers for what it does, and its peroxide may have weakened.',
  source: { kind: 'shelf', cites: 'the `use-by` of the line it came in by' },
  check: ({ visit, date }, { journal }) =>
    foundEach(lotUses(visit, journal), (use) => {
      const came = lotsOf(journal).ins.find((move) => move.fact.useBy !== undefined && isLot(use, move));
      const useBy = came?.fact.useBy;
      if (came === undefined || useBy === undefined || lastDayOf(useBy.when) >= date) return undefined;
      const place = placeOf(came.stood, came.fact, useBy.at);
      return {
        place: use.place,
        message: `Lot ${came.typed} of ${use.product} is used on ${date}; its date is ${useBy.when}.`,
        expected: sentence`The date stands where it came in, ${lineName(place)}.`,
        todo: 'Correct the lot or its date, or take what is left off the shelf: `out … "past its date"`.',
        label: `use-by ${useBy.when}`,
        also: [{ place, says: 'its date' }],
      };
    }),
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
