import { placeOf } from '../../reckon/cite.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import { isLot, lotsOf, lotUses } from '../lots.ts';
import { defineRule, foundEach } from '../rule.ts';

export default defineRule({
  name: 'lot-not-in-yet',
  family: 'shelf',
  severity: 'fix',
  bears: 'never',
  over: 'visit',
  what: 'A lot is used on a day before the stock line by which it came in.',
  why: 'One of the two dates is wrong, or the lot is; a recall would be traced by it.',
  source: { kind: 'notation' },
  check: ({ visit, date }, { journal }) =>
    foundEach(lotUses(visit, journal), (use) => {
      // Entries stand in order of their dates, so the first is the earliest.
      const came = lotsOf(journal).ins.find((move) => isLot(use, move));
      if (came === undefined || came.date <= date) return undefined;
      const place = placeOf(came.stood, came.fact, came.fact.lot?.at);
      return {
        place: use.place,
        message: `Lot ${came.typed} of ${use.product} is used on ${date} and came in on ${came.date}.`,
        expected: sentence`It came in at ${lineName(place)}.`,
        todo: 'Correct the lot or one of the dates.',
        label: `came in ${came.date}`,
        also: [{ place, says: 'came in here' }],
      };
    }),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-10-05
      in neon teal 200 g lot N118
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118
                              ^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-01-05
      in neon teal 200 g lot N118
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118`,
});
