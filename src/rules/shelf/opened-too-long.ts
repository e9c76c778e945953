import { citeLine } from '../../reckon/cite.ts';
import { dayAfter } from '../../reckon/when.ts';
import { sentence } from '../../text/sentence.ts';
import { type LotUse, lotUses } from '../lots.ts';
import { defineRule } from '../rule.ts';

export default defineRule({
  name: 'opened-too-long',
  family: 'shelf',
  severity: 'mind',
  bears: 'never',
  over: 'client',
  what: 'A lot is used on a client longer after its first use on that client than the product keeps once opened.',
  why: 'An opened pack weakens or dries out, and a second pack of the lot may be another tale.',
  source: { kind: 'shelf', cites: 'its `keeps` line' },
  *check(_, visits, journal) {
    const opened = new Map<string, { readonly date: string; readonly use: LotUse }>();
    const said = new Set<string>();
    for (const { visit, date } of visits) {
      for (const use of lotUses(visit, journal)) {
        const item = journal.shelf.get(use.product);
        if (item?.keeps === undefined) continue;
        const key = `${use.product}\n${use.lot}`;
        const first = opened.get(key);
        if (first === undefined) opened.set(key, { date, use });
        else if (!said.has(key) && dayAfter(first.date, item.keeps.keeps) < date) {
          said.add(key);
          yield {
            place: use.place,
            message: `Lot ${use.lot.toUpperCase()} of ${use.product} was open on ${first.date} and is used on ${date}.`,
            expected: sentence`Opened, it keeps until ${dayAfter(first.date, item.keeps.keeps)} (${citeLine(item, item.keeps)}).`,
            todo: 'Correct the lot, or write why it stands: `because opened-too-long "a new pack of the lot"`.',
            label: `open since ${first.date}`,
            also: [{ place: first.use.place, says: 'open then' }],
          };
        }
      }
    }
  },
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
      keeps 6mo
    client wren-abbott "Wren Abbott"
    visit 2026-01-16 wren-abbott
      bowl A 30 neon teal lot N118
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118
                              ^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
      keeps 6mo
    client wren-abbott "Wren Abbott"
    visit 2026-04-16 wren-abbott
      bowl A 30 neon teal lot N118
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118`,
});
