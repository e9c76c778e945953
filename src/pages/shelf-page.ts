import type { Journal } from '../journal/journal.ts';
import { pathAndLine } from '../journal/where.ts';
import { figure, listed } from '../reckon/say.ts';
import type { ChargedGoods } from '../reckon/stock/charged-goods.ts';
import type { Ledger } from '../reckon/stock/ledger.ts';
import { AHEAD_DAYS, PACE_DAYS, type Passing, type ShelfRow, shelfValue } from '../reckon/stock/shelf-state.ts';
import { compare, type Exact, isZero, max, neg, sign } from '../text/exact.ts';
import { dayText } from './days.ts';
import { escapeText } from './escape.ts';
import { minorText } from './money-words.ts';
import { clientName, joined } from './noted.ts';
import { packsText, stockAmount, wareText } from './stock-words.ts';
import { type Column, table } from './tables.ts';

const WHY = {
  'not-on-shelf': 'no such product on the shelf',
  'no-shade': 'no shade',
  'no-weight': 'no weight for its unit',
  'no-amount': 'no amount',
} as const;

const figuresColumns = (...heads: string[]): Column[] => heads.map((head) => ({ head, figures: true }));

const weeks = (days: number): string => `${days / 7} weeks`;

const handTable = (journal: Journal, rows: readonly ShelfRow[]): string =>
  table(
    [
      { head: 'Product' },
      ...figuresColumns('On hand', 'Packs', `Used in ${weeks(PACE_DAYS)}`, 'Days of cover'),
      { head: 'Last counted' },
    ],
    rows.map((row) => [
      wareText(row.line, journal.salons),
      stockAmount(row.line, row.line.onHand),
      packsText(row),
      stockAmount(row.line, row.recent),
      row.cover === undefined ? '' : `${row.cover}`,
      row.countedOn ?? 'not yet',
    ]),
  );

const reorderTable = (journal: Journal, rows: readonly ShelfRow[]): string =>
  table(
    [{ head: 'Product' }, ...figuresColumns('On hand', 'Reorder at', 'Days of cover')],
    rows.map((row) => [
      wareText(row.line, journal.salons),
      stockAmount(row.line, row.line.onHand),
      row.reorderAt === undefined ? '' : stockAmount(row.line, row.reorderAt),
      row.cover === undefined ? '' : `${row.cover}`,
    ]),
  );

const passingCells = (journal: Journal, { line }: ShelfRow, { batch, by, last, passed }: Passing): string[] => [
  wareText(line, journal.salons),
  batch.lot === undefined ? 'not noted' : escapeText(batch.lot),
  stockAmount(line, batch.left),
  by === 'use-by' ? 'use by' : `open since ${batch.openedOn}`,
  passed ? `${last}, passed` : last,
];

const passingTable = (journal: Journal, rows: readonly ShelfRow[]): string =>
  table(
    [{ head: 'Product' }, { head: 'Lot' }, ...figuresColumns('Left of it'), { head: 'By' }, { head: 'Last day' }],
    rows
      .flatMap((row) => row.passing.map((passing) => ({ row, passing })))
      .sort((a, b) => (a.passing.last < b.passing.last ? -1 : a.passing.last > b.passing.last ? 1 : 0))
      .map(({ row, passing }) => passingCells(journal, row, passing)),
  );

/** A difference with its sign, to a tenth: a count never hides what is too small for the scales. */
const signed = (value: Exact): string => `${sign(value) > 0 ? '+' : ''}${figure(value, 1)}`;

const unexplainedTable = (journal: Journal, rows: readonly ShelfRow[]): string =>
  table(
    [
      { head: 'Product' },
      ...figuresColumns('Unexplained', 'Give or take', 'Counts'),
      { head: 'Since' },
      { head: 'Until' },
    ],
    rows.map((row) => {
      const { line } = row;
      return [
        wareText(line, journal.salons),
        `${signed(line.unexplained)} ${line.pieces ? 'pieces' : 'g'}`,
        stockAmount(line, line.unexplainedWithin),
        `${line.counts.length}`,
        line.counts[0]?.date ?? '',
        line.counts.at(-1)?.date ?? '',
      ];
    }),
  );

const countsTable = (journal: Journal, rows: readonly ShelfRow[]): string =>
  table(
    [{ head: 'Product' }, { head: 'Counted on' }, ...figuresColumns('By the notes', 'Counted', 'Difference')],
    rows.flatMap((row) =>
      row.line.counts
        .filter(({ first, difference }) => !first && !isZero(difference))
        .map(({ date, expected, counted, difference, lot }) => [
          wareText(row.line, journal.salons) + (lot === undefined ? '' : `, lot ${escapeText(lot)}`),
          date,
          stockAmount(row.line, expected),
          stockAmount(row.line, counted),
          signed(difference),
        ]),
    ),
  );

const isBeyond = ({ line }: ShelfRow): boolean =>
  compare(max(line.unexplained, neg(line.unexplained)), line.unexplainedWithin) > 0;

/** How much less than nothing the notes say is there: more was used than came in. */
const shortTable = (journal: Journal, rows: readonly ShelfRow[]): string =>
  table(
    [{ head: 'Product' }, ...figuresColumns('Used beyond what came in'), { head: 'Last used' }],
    rows.map((row) => [wareText(row.line, journal.salons), stockAmount(row.line, row.line.short), row.lastUsed ?? '']),
  );

const summary = (journal: Journal, rows: readonly ShelfRow[]): string => {
  const { value, unpriced } = shelfValue(rows);
  const below = rows.filter((row) => row.below && !row.dormant).length;
  const passed = rows.flatMap(({ passing }) => passing.filter((one) => one.passed)).length;
  return joined(
    [
      `- **Worth** ${minorText(value, journal.salon.currency)} at what was paid, first expired first out`,
      below > 0 && `- **To reorder** ${below} at or below their level`,
      passed > 0 && `- **Past their date** ${passed}`,
      unpriced.length > 0 &&
        `- **No price** on the shelf for ${listed(unpriced.map(escapeText))}: the sum leaves it out`,
    ],
    '\n',
  );
};

/**
 * The shelf as it stands at the end of a day, as Markdown. A count closes its day; what it does not agree with is shown,
 * and how far off the counts themselves may be.
 */
export const shelfMarkdown = (
  journal: Journal,
  ledger: Ledger,
  rows: readonly ShelfRow[],
  { on, charged }: { readonly on: string; readonly charged: readonly ChargedGoods[] },
): string => {
  const { salon } = journal;
  const kept = rows.filter(({ line }) => line.kept);
  const unkept = rows.filter(({ line }) => !line.kept);
  const below = kept.filter((row) => row.below && !row.dormant);
  const resting = kept.filter((row) => row.below && row.dormant);
  const short = kept.filter(({ line }) => sign(line.short) > 0);
  const uneven = kept.filter(({ line }) => line.counts.some(({ first, difference }) => !first && !isZero(difference)));
  const beyond = uneven.filter(isBeyond);
  const section = (head: string, rows_: readonly unknown[], ...body: string[]): string[] =>
    rows_.length === 0 ? [] : [`## ${head}`, ...body];
  const blocks = [
    '# The shelf',
    joined([dayText(on), salon.full && escapeText(salon.full)], ' · '),
    ...(rows.length === 0
      ? ['The notes show nothing that came in, was counted or was used.']
      : [summary(journal, rows)]),
    ...section('To reorder', below, reorderTable(journal, below)),
    ...(resting.length === 0
      ? []
      : [
          `At or below their level, and not used for half a year: ${listed(resting.map(({ line }) => wareText(line, journal.salons)))}.`,
        ]),
    ...section(
      `Past its date, or within ${weeks(AHEAD_DAYS)}`,
      rows.flatMap(({ passing }) => passing),
      passingTable(journal, rows),
    ),
    ...section(
      'Unexplained',
      beyond,
      'Counted, less what the notes make it, over all counts after the first. A minus is gone and no note says where. Listed where it is more than the counts themselves may be off.',
      unexplainedTable(journal, beyond),
    ),
    ...section(
      'Less than nothing',
      short,
      'More left the shelf than the notes say came in.',
      shortTable(journal, short),
    ),
    ...section(
      'Charged and not taken off',
      charged,
      'Goods charged by name since their last count, with no `fit` or `home` line that takes them off: what stands on hand is too high by as much.',
      table(
        [{ head: 'Date' }, { head: 'Client' }, { head: 'Product' }, { head: 'Line' }],
        charged.map(({ item, client, date, place }) => [
          date,
          clientName(journal, { name: client }),
          escapeText(item.name),
          escapeText(pathAndLine(journal, place)),
        ]),
      ),
    ),
    ...section('On hand', kept, handTable(journal, kept)),
    ...section('Every count that differs', uneven, countsTable(journal, uneven)),
    ...section(
      'Never counted',
      unkept,
      `Used, and neither counted nor come in: ${listed(unkept.map(({ line }) => wareText(line, journal.salons)))}.`,
    ),
    ...section(
      'Stock lines left out',
      ledger.unmoved,
      table(
        [{ head: 'Line' }, { head: 'Product' }, { head: 'Why' }],
        ledger.unmoved.map(({ place, name, why }) => [
          escapeText(pathAndLine(journal, place)),
          escapeText(name),
          WHY[why],
        ]),
      ),
    ),
  ];
  return `${blocks.join('\n\n')}\n`;
};
