import type { ShelfItem } from '../../journal/shelf.ts';
import { placeOf } from '../../reckon/cite.ts';
import { lineName, sentence } from '../../text/sentence.ts';
import type { CautionTopic } from '../../trade/cautions.ts';
import { isLot, lotsOf, lotUses } from '../lots.ts';
import { defineRule, foundEach } from '../rule.ts';

const RECALLED = /\brecall|\bwithdrawn|\btaken back\b/iu;

const topicOf = (item: ShelfItem | undefined): CautionTopic =>
  item?.kind === 'lightener' ? 'lightener' : item?.kind === 'developer' ? 'peroxide' : 'skin-test';

export default defineRule({
  name: 'lot-recalled',
  family: 'shelf',
  severity: 'stop',
  bears: 'always',
  over: 'visit',
  what: 'A lot is used after an `out` line of the stock says that it was recalled.',
  why: 'A lot is called back because something in it is wrong, and what is wrong cannot be seen in the bowl.',
  source: { kind: 'shelf', cites: 'the `out` line of the recall' },
  caution: 'skin-test',
  check: ({ visit, date }, { journal }) =>
    foundEach(lotUses(visit, journal), (use) => {
      const recall = lotsOf(journal).outs.find(
        (move) => move.date < date && isLot(use, move) && RECALLED.test(move.fact.says?.text ?? ''),
      );
      if (recall === undefined) return undefined;
      const place = placeOf(recall.stood, recall.fact, recall.fact.lot?.at);
      return {
        place: use.place,
        message: `Lot ${recall.typed} of ${use.product} is used on ${date}; it went out on ${recall.date}, "${recall.fact.says?.text}".`,
        expected: sentence`The recall stands at ${lineName(place)}.`,
        todo: 'Correct the lot, or write `note` what was done when it was noticed.',
        label: 'recalled',
        also: [{ place, says: 'the recall' }],
        caution: topicOf(journal.shelf.get(use.product)),
      };
    }),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-01-05
      in neon teal 200 g lot N118
    stock 2026-06-01
      out neon teal 150 g lot N118 "recalled by the maker"
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
      in neon teal 100 g lot N131
    stock 2026-06-01
      out neon teal 150 g lot N118 "recalled by the maker"
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N131`,
});
