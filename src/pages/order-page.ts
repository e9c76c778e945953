import type { Journal } from '../journal/journal.ts';
import { sayWindow } from '../reckon/ahead/say-window.ts';
import type { Expected } from '../reckon/stock/expected.ts';
import type { OrderRow } from '../reckon/stock/order.ts';
import { PACE_LEAST_DAYS } from '../reckon/stock/shelf-state.ts';
import { add, sign, ZERO } from '../text/exact.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { minorFigure, minorText } from './money-words.ts';
import { joined } from './noted.ts';
import { durationText } from './say-numbers.ts';
import { stockAmount, wareText } from './stock-words.ts';
import { type Column, table } from './tables.ts';

const figuresColumns = (...heads: string[]): Column[] => heads.map((head) => ({ head, figures: true }));

const orderTable = (journal: Journal, rows: readonly OrderRow[]): string => {
  const { currency } = journal.salon;
  const unit = currency === undefined ? '' : ` ${escapeText(currency)}`;
  return table(
    [
      { head: 'Product' },
      ...figuresColumns('Packs', `Cost${unit}`, 'On hand', 'At the pace', 'For who is awaited', 'Kept back'),
    ],
    rows.map(({ row, packs, cost, byPace, byClients }) => [
      wareText(row.line, journal.salons),
      packs === undefined ? 'no pack on the shelf' : `${packs}`,
      cost === undefined ? 'no price' : minorFigure(cost, currency),
      row.line.kept ? stockAmount(row.line, row.usable) : 'not counted',
      sign(byPace) === 0 ? '' : stockAmount(row.line, byPace),
      sign(byClients) === 0 ? '' : stockAmount(row.line, byClients),
      row.reorderAt === undefined ? '' : stockAmount(row.line, row.reorderAt),
    ]),
  );
};

/** What is named and not bought. */
const outlivingTable = (journal: Journal, rows: readonly OrderRow[]): string =>
  table(
    [
      { head: 'Product' },
      ...figuresColumns('Pack', 'Keeps once open', 'Its use in that time', 'On hand', 'For who is awaited'),
    ],
    rows.map(({ row, byClients }) => [
      wareText(row.line, journal.salons),
      row.pack === undefined ? '' : stockAmount(row.line, row.pack),
      row.line.item.keeps === undefined ? '' : durationText(row.line.item.keeps.keeps),
      row.inKeeps === undefined ? '' : stockAmount(row.line, row.inKeeps),
      row.line.kept ? stockAmount(row.line, row.usable) : 'not counted',
      sign(byClients) === 0 ? '' : stockAmount(row.line, byClients),
    ]),
  );

const OUTLIVING =
  'At the pace of as long a time before, a pack of these would be past its time after opening before it is used up. They are not in the sum: a whole pack for a client is the colourist’s to say.';

const clientsTable = (expected: readonly Expected[]): string =>
  table(
    [{ head: 'Client' }, { head: 'Awaited' }, { head: 'How' }, { head: 'Times', figures: true }],
    [...expected]
      .sort((a, b) => (a.first < b.first ? -1 : a.first > b.first ? 1 : 0))
      .map((one) => [escapeText(one.client.full), sayWindow(one), one.why, `${one.times}`]),
  );

const BY_BOTH =
  'The need is the larger of two: the pace of the last eight weeks, and what the clients awaited are likely to take. What is past its date is not counted on, and the reorder level is kept back.';

const BY_CLIENTS = 'What is past its date is not counted on, and the reorder level is kept back.';

/** Why somebody awaited comes nought times. */
const GIVEN_UP_TEXT = 'Whose day is past by more than eight weeks is named and not bought for.';

/** Why nothing is ordered by the pace. */
const youngText = (days: number): string =>
  `The notes of the shelf cover ${days} ${days === 1 ? 'day' : 'days'}, and a pace needs ${PACE_LEAST_DAYS}: the order is for the clients awaited and the reorder levels alone.`;

/** What to buy for the weeks ahead, as Markdown. `noted` is how many days of notes there are to tell a pace from. */
export const orderMarkdown = (
  journal: Journal,
  rows: readonly OrderRow[],
  expected: readonly Expected[],
  { on, until, noted }: { readonly on: string; readonly until: string; readonly noted: number },
): string => {
  const paced = noted >= PACE_LEAST_DAYS;
  const outliving = rows.filter(({ outlives }) => outlives);
  const bought = rows.filter(({ outlives }) => !outlives);
  const total = bought.reduce((whole, { cost }) => add(whole, cost ?? ZERO), ZERO);
  const unpriced = bought.filter(({ cost }) => cost === undefined).length;
  const blocks = [
    '# To order',
    joined([`${dayText(on)}, to ${dayText(until)}`, journal.salon.full && escapeText(journal.salon.full)], ' · '),
    ...(paced ? [] : [youngText(noted)]),
    ...(bought.length === 0
      ? [
          outliving.length === 0
            ? 'By the notes the shelf lasts.'
            : 'Nothing to buy beside what would outlive its time.',
        ]
      : [
          joined(
            [
              `- **In all** ${minorText(total, journal.salon.currency)}`,
              unpriced > 0 && `- **No price** for ${unpriced} of the lines: the sum leaves them out`,
            ],
            '\n',
          ),
          paced ? BY_BOTH : BY_CLIENTS,
          '## To buy',
          orderTable(journal, bought),
        ]),
    ...(outliving.length === 0 ? [] : ['## Would outlive its time', OUTLIVING, outlivingTable(journal, outliving)]),
    ...(expected.length === 0 ? [] : ['## Who is awaited', clientsTable(expected)]),
    ...(expected.some(({ times }) => times === 0) ? [GIVEN_UP_TEXT] : []),
  ];
  return `${blocks.join('\n\n')}\n`;
};
