import { cardFile } from '../../src/cli/watch/card-file.ts';
import { dueCalendar, dueCsv } from '../../src/exchange/due-calendar.ts';
import { moneyCsv } from '../../src/exchange/money-csv.ts';
import { lotCsv, orderCsv, shelfCsv } from '../../src/exchange/stock-csv.ts';
import { usageCsv } from '../../src/exchange/usage-csv.ts';
import type { Journal } from '../../src/journal/journal.ts';
import { clientRows, clientsMarkdown } from '../../src/pages/clients-page.ts';
import { dueMarkdown } from '../../src/pages/due-page.ts';
import { figureSheet } from '../../src/pages/figures/sheet.ts';
import { findingsMarkdown } from '../../src/pages/findings-page.ts';
import { pageHtml } from '../../src/pages/html.ts';
import { moneyMarkdown } from '../../src/pages/money-page.ts';
import { orderMarkdown } from '../../src/pages/order-page.ts';
import { prepMarkdown, salonLiftOf } from '../../src/pages/prep.ts';
import { shelfMarkdown } from '../../src/pages/shelf-page.ts';
import { clientTraceMarkdown, lotMarkdown } from '../../src/pages/trace-page.ts';
import { usageMarkdown } from '../../src/pages/usage-page.ts';
import { dueClients } from '../../src/reckon/ahead/due.ts';
import { lapsingTests } from '../../src/reckon/ahead/lapsing.ts';
import { needsBefore, salonMix } from '../../src/reckon/forecast/forecast.ts';
import { depositsHeld } from '../../src/reckon/money/deposits.ts';
import { takingsBy } from '../../src/reckon/money/takings.ts';
import { expectedVisits } from '../../src/reckon/stock/expected.ts';
import { stockLedger } from '../../src/reckon/stock/ledger.ts';
import { orderRows } from '../../src/reckon/stock/order.ts';
import { daysNoted, PACE_LEAST_DAYS, shelfState } from '../../src/reckon/stock/shelf-state.ts';
import { touchingVisits } from '../../src/reckon/stock/touching.ts';
import { traceable, traceClient, traceLot } from '../../src/reckon/stock/trace.ts';
import { usageBy } from '../../src/reckon/use/usage-by.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import { addDays } from '../../src/text/dates.ts';

type Page = readonly [name: string, text: string];

/** Every report but the cards, as the commands make them: Markdown, one as a whole page, the open formats. */
export const allPages = (journal: Journal, on: string): Page[] => {
  const all = reckonAll(journal);
  const { findings } = judge(journal, on).all();
  const reckoned = [...all.values()].flat();
  const until = addDays(on, 28);
  const period = { from: '2026-01-01', to: '2026-12-31' };
  const list = { ...dueClients(all, on, until), lapsing: lapsingTests(journal, all, on, until) };
  const ledger = stockLedger(journal, reckoned, on);
  const rows = shelfState(ledger, on);
  const noted = daysNoted(ledger, on);
  const expected = expectedVisits(journal.shelf, all, on, until);
  const toOrder = orderRows(rows, expected, on, until, noted >= PACE_LEAST_DAYS);
  const { sheet, figures } = figureSheet();
  const usage = usageMarkdown(journal, reckoned, period, { sheet });
  const money = moneyMarkdown(journal, reckoned, depositsHeld(reckoned, period.to), period, { sheet });
  const trace = traceable(journal, touchingVisits(journal));
  const lot = traceLot(trace, 'K2231');
  const mix = salonMix(needsBefore(all, on));
  const lift = salonLiftOf(all);
  const links = { cardOf: (client: string) => encodeURI(cardFile(client)), fileOf: (file: string) => file };
  return [
    ['clients', clientsMarkdown(journal, clientRows(journal, all, findings, on), on)],
    ['findings', findingsMarkdown(journal, findings, links, on)],
    ['due', dueMarkdown(journal, list, { on, until })],
    ['due.ics', dueCalendar(list.due, list.lapsing, on)],
    ['due.csv', dueCsv(list.due)],
    ['shelf', shelfMarkdown(journal, ledger, rows, { on, charged: [] })],
    ['shelf.csv', shelfCsv(rows)],
    ['order', orderMarkdown(journal, toOrder, expected, { on, until, noted })],
    ['order.csv', orderCsv(toOrder)],
    ['usage', usage],
    ['usage.html', pageHtml({ title: 'Products', markdown: usage, figures })],
    ['usage.csv', usageCsv(journal, 'shade', usageBy(reckoned, period, journal.shelf, 'shade'))],
    ['money', money],
    ['money.html', pageHtml({ title: 'Money', markdown: money, figures })],
    ['money.csv', moneyCsv(journal, 'visit', takingsBy(reckoned, period, 'visit'))],
    ['lot', lotMarkdown(journal, lot)],
    ['lot.csv', lotCsv(journal, lot)],
    ...[...journal.clients.values()].flatMap((client): Page[] => [
      ['client trace', clientTraceMarkdown(journal, client, traceClient(trace, client))],
      [
        'prep',
        prepMarkdown(
          journal,
          client,
          all.get(client.name) ?? [],
          findings.filter((finding) => finding.client === client.name),
          lift,
          { on, mix, sheet },
        ),
      ],
    ]),
  ];
};
