import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findFiles } from '../../../src/journal/find.ts';
import { type Journal, joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { pathAndLine } from '../../../src/journal/where.ts';
import { lotNotes, traceNotes } from '../../../src/reckon/stock/lot-notes.ts';
import type { NoteFile } from '../../../src/reckon/stock/note-chunks.ts';
import { stockMoves } from '../../../src/reckon/stock/stock-entries.ts';
import { touchingVisits } from '../../../src/reckon/stock/touching.ts';
import { type LotTrace, traceable, traceLot } from '../../../src/reckon/stock/trace.ts';
import { budget, LIMIT } from '../../fuzz/budget.ts';
import { simulateStudio } from '../../simulate/studio.ts';

const whole = (files: readonly NoteFile[]): Journal =>
  joinSources(files.map(({ path, bytes }) => readSource(path, bytes)));

type Found = { readonly journal: Journal; readonly trace: LotTrace };

const inWhole = (journal: Journal, lot: string): Found => ({
  journal,
  trace: traceLot(traceable(journal, touchingVisits(journal)), lot),
});

const told = ({ journal, trace: { wares, traced } }: Found): string[] => {
  return [
    ...wares.map(({ item, shade, arrived, gone }) => `${item.name} ${shade} ${arrived} ${gone}`),
    ...traced.map(
      ({ touch, certainty }) =>
        `${pathAndLine(journal, touch.place)}:${JSON.stringify(touch.place.at)} ${touch.date} ${journal.clients.get(touch.client)?.full ?? touch.client} ${touch.how} ${touch.bowl} ${touch.label} ${touch.lot} ${touch.open} ${touch.salon} ${certainty} ${touch.amount?.n}/${touch.amount?.d}`,
    ),
  ];
};

const lotsOf = (journal: Journal): string[] => [
  ...new Set(stockMoves(journal).moves.flatMap(({ kind, lot }) => (kind === 'in' && lot !== undefined ? [lot] : []))),
];

const DEMO: readonly NoteFile[] = findFiles('journals/harbour-row').map((path) => ({
  path,
  bytes: readFileSync(path),
}));
const fileOf = (path: string, text: string): NoteFile => ({ path, bytes: Buffer.from(text) });
const STUDIO = [
  fileOf('s.bowl', simulateStudio({ seed: 9, days: 40, leak: 30, hushed: 0.5, miscounts: true, countEvery: 14 }).text),
];

test.each([
  ['the demo', DEMO],
  ['a simulated studio', STUDIO],
])('the lines cut out of %s say of every lot what the whole of it says', (_, files) => {
  const journal = whole(files);
  const lots = lotsOf(journal);
  expect(lots.length).toBeGreaterThan(5);
  for (const lot of lots) {
    const cut = traceNotes(files, lot);
    expect(cut && told(cut)).toEqual(told(inWhole(journal, lot)));
  }
});

const SHELF = `salon quay
range cream permanent
  mix 1:1
  tones 0 natural, 3 gold, 4 copper
product clay lightener
  mix 1:2
  pack 500 g 24.00
  pack 400 g 24.00 from 2026-03-01
product dev-6 developer 6%
product dev-9 developer 9%
stock 2026-02-01
  in clay 500 g lot K1
  in dev-6 1 kg lot D1
  in cream 7/43 60 g lot C1
`;

test.each([
  ['a header in capitals and an indented one', '  VISIT 2026-02-02 wren\n\tBOWL A 40 Clay + 80 dev-6\n'],
  ['Windows line ends', 'visit 2026-02-02 wren\r\n  note x\r\n  bowl A 40 clay + 80 dev-6\r\n  on 10:00 A\r\n'],
  ['a misspelt product', 'visit 2026-02-02 wren\n  bowl A 40 caly + 80 dev-6\n'],
  ['a bowl whose part has no name', 'visit 2026-02-02 wren\n  bowl A 40 + 80 dev-6\n'],
  ['a bowl without parts', 'visit 2026-02-02 wren\n  bowl A\n'],
  [
    'the shade in another spelling',
    'visit 2026-02-02 wren\n  bowl A 30 cream 7.43 + 30 dev-9\nvisit 2026-02-03 ines\n  bowl A 7-43 30 cream + 30 dev-9\n',
  ],
  [
    'two shades in one bowl',
    'visit 2026-02-02 wren\n  bowl A 15 cream 7/0 + 15 7/43 + 30 dev-9\nvisit 2026-02-03 ines\n  bowl A 15 cream 7/0 15 cream 7/43 + dev-9\n',
  ],
  [
    'another shade, and none',
    'visit 2026-02-02 wren\n  bowl A 30 cream 7/0 + 30 dev-9\nvisit 2026-02-03 ines\n  bowl A 30 cream + 30 dev-9\n',
  ],
  ['a strength alone', 'visit 2026-02-02 wren\n  bowl A 40 cream 7/0 + 20vol 1:1\n'],
  ['a strength no developer has', 'visit 2026-02-02 wren\n  bowl A 40 cream 7/0 + 12 % 1:1\n'],
  ['a blend', 'visit 2026-02-02 wren\n  bowl A 40 cream 7/0 + 7.5% from dev-6 dev-9 1:1\n'],
  [
    'a bowl made again from before',
    'visit 2026-01-02 wren\n bowl A 40 clay + 80 dev-6\nvisit 2026-02-02 wren\n again A from 2026-01-02\n',
  ],
  [
    'another client’s bowl made again',
    'visit 2026-01-02 ines\n bowl A 40 clay + 80 dev-6\nvisit 2026-02-02 wren\n again A from ines 2026-01-02 A\n',
  ],
  [
    'a further mix and a bowl out of it',
    'visit 2026-02-02 wren\n bowl A 40 clay + 80 dev-6\n more A 60\n bowl B 20 from A + 5 cream 7/0\n',
  ],
  [
    'a test under the client and one under an early visit',
    'client wren\n test skin 2026-02-03 clay\nvisit 2026-01-30 wren\n test strand 2026-02-04 clay\n',
  ],
  [
    'a bowl that nothing mixes',
    'visit 2026-02-02 wren\n left T 14\nvisit 2026-02-03 ines\n plus B 3 cream 7/0\nvisit 2026-02-04 ida\n bowl A 40 cream 7/0 + 40 dev-9\n plus B 3 cream 7/0\n',
  ],
  ['two bowls of one name', 'visit 2026-02-02 wren\n bowl A 40 cream 7/0 + 40 dev-9\n bowl a 40 clay + 80 dev-6\n'],
  [
    'lines with list marks',
    '• visit 2026-02-02 wren\n - bowl A 40 clay + 80 dev-6\n* visit 2026-02-03 ines\n – bowl A 40 clay\n',
  ],
  [
    'what was weighed, and what came on top',
    'visit 2026-02-02 wren\n bowl A 40 clay + 80 dev-6\n weighed A 41 clay, 82 dev-6\n bowl B 40 cream 7/0 + 40 dev-9\n plus B 3 clay\n',
  ],
  [
    'an early test and a late one',
    'client wren\n test skin 2026-01-03 clay read 2026-01-05 clear\nvisit 2026-02-03 ines\n test strand clay\n test skin 2026-01-03 clay\n',
  ],
  [
    'packs and a day that is none',
    'visit 2026-02-02 wren\n bowl A ½ pack clay + 80 dev-6\nvisit 2026-02-30 ines\n bowl A 40 clay\n',
  ],
  ['two clients in one header', 'visit 2026-02-02 Wren Abbott by io\n bowl A 40 clay + 80 dev-6\n'],
  [
    'a merge conflict',
    '<<<<<<< ours\nvisit 2026-02-02 wren\n bowl A 40 clay\n=======\n>>>>>>> theirs\nvisit 2026-02-03 wren\n bowl A 40 clay + 80 dev-6\n',
  ],
  [
    'a visit without a day',
    'visit wren\n bowl A 40 clay + 80 dev-6\nvisit 2026-02-02 ines\n bowl A 40 clay + 80 dev-6\n',
  ],
  ['a bowl without a name', 'visit 2026-02-02 wren\n bowl 40 clay + 80 dev-6\n'],
  [
    'a client described twice',
    'client wren "Wren A"\nclient wren "Wren B"\nvisit 2026-02-02 wren\n bowl A 40 clay + 80 dev-6\n',
  ],
  ['a header alone on the last line', 'visit 2026-02-02 wren\n bowl A 40 clay + 80 dev-6\nvisit 2026-02-03 ines'],
  [
    'a bowl made again from a day',
    'visit 2026-02-01 wren\n bowl A 40 clay\nvisit 2026-02-03 wren\n again 2026-02-01\n',
  ],
  ['a visit that names nobody', 'visit 2026-02-02 by io\n bowl A 40 clay + 80 dev-6\n again A\n'],
  ['lines before any header', ' bowl A 40 clay\nvisit 2026-02-02 wren\n bowl A 40 clay + 80 dev-6\n'],
  [
    'a misspelt header before',
    'visit 2026-02-02 wren\n bowl A 40 cream 7/0 + 40 dev-9\nvist 2026-02-03 ines\n bowl A 40 clay + 80 dev-6\n',
  ],
])('%s: the lines cut out say what the whole says', (_, notes) => {
  const files = [fileOf('a.bowl', SHELF), fileOf('b.bowl', notes)];
  for (const lot of ['K1', 'd1', 'C1']) {
    const cut = traceNotes(files, lot);
    expect(cut && told(cut)).toEqual(told(inWhole(whole(files), lot)));
  }
});

const HEADERS = [
  ...['visit 2026-02-03 wren', 'visit 2026-02-03 14:00 ines by io at quay', 'visit 2026-01-20 wren by nia'],
  ...['visit 2026-03-02 Wren at pier', 'Visit 2026-02-04 zoë', 'vist 2026-02-04 wren', '- visit 2026-02-05 ines'],
  ...['visit 2026-02-31 wren', 'visit wren 2026-02-06', 'visit 2026-02-06 ines "late"', 'visit 2026-02-07 at quay'],
  ...['client wren "Wren Abbott"', 'client ines', 'stock 2026-02-20', '# a remark', '', 'client wren "W. A."'],
  ...['client ines "Inês Vale"', 'client zoë "Zoë  H"', 'client wren', '<<<<<<< ours', '>>>>>>> theirs', '======='],
];
const LINES = [
  ...[
    '  bowl A 40 clay + 80 dev-6',
    '  bowl A 40 clay lot K1 + 80 dev-6',
    '  bowl B 30 cream 7.43 + 20vol',
    '\tbowl b clay',
  ],
  ...['  bowl T 20 cream 7/0 + 20 dev-9', '  bowl A 40 caly + 6% 1:2', '  bowl C 20 from A + 5 cream 7/0', 'bowl D'],
  ...[
    '  bowl A 1 pack clay + 80 dev-6',
    '  - bowl E 4 scoop clay + 80 dev-6',
    '  bowl F clay lot D1 40',
    '  bowl G 40 + 80',
  ],
  ...[
    '  plus A 3 clay',
    '  plus T 3 dev-6',
    '  weighed A 41 clay, 82 dev-6',
    '  weighed B 31',
    '  more A 60',
    '  left A 4',
  ],
  ...[
    '  left T 4 binned',
    '  home A 4',
    '  home 20 cream 7/43',
    '  wash 10 clay',
    '  test skin clay',
    '  fit 2 packs clay',
  ],
  ...[
    '  test skin 2026-01-10 clay read 2026-01-12 clear',
    '  test strand 2026-02-09 20 clay + 40 dev-6',
    '  note a lot of clay',
  ],
  ...[
    '  again A from 2026-02-03',
    '  again A from 2026-01-20 80%',
    '  again B from wren 2026-02-03 A',
    '  again T from A 50%',
  ],
  ...[
    '  on 14:00 A',
    '  zone band "left"',
    '  allergy "nickel"',
    '  bowel A 40 clay',
    '# bowl A 40 clay',
    '',
    '  count clay 0 g',
  ],
  ...['  count dev-6 0 g', '  in clay 1 pack lot K2'],
];
const randomNotes = fc
  .array(fc.tuple(fc.constantFrom(...HEADERS), fc.array(fc.constantFrom(...LINES), { maxLength: 6 })), {
    maxLength: 12,
  })
  .map((entries) => entries.map(([head, lines]) => [head, ...lines].join('\n')).join('\n'));

test(
  'of random journals the lines cut out say of every lot what the whole says',
  () => {
    const shelf = `${SHELF}salon pier\nstylist nia at pier\nrange gloss demi\n  mix 1:2\n`;
    fc.assert(
      fc.property(randomNotes, randomNotes, (one, other) => {
        const files = [fileOf('a.bowl', shelf), fileOf('b.bowl', one), fileOf('c.bowl', other)];
        const journal = whole(files);
        for (const lot of ['K1', 'K2', 'd1', 'C1']) {
          const cut = traceNotes(files, lot);
          if (cut !== undefined) expect(told(cut)).toEqual(told(inWhole(journal, lot)));
        }
      }),
      budget(300),
    );
  },
  LIMIT,
);

test('a lot that only bowls name is for the whole journal to trace', () => {
  expect(lotNotes([fileOf('a.bowl', `${SHELF}visit 2026-02-02 wren\n bowl A 40 clay lot K9\n`)], 'K9')).toBeUndefined();
});

test('what cannot bear on the lot is not read: neither idle lines, nor visits of other products', () => {
  const notes =
    'visit 2026-02-02 wren\n  note x\n  bowl A 40 clay + 80 dev-6\n  home 5 clay\nvisit 2026-02-03 ines\n  bowl A 40 cream 7/0 + 40 dev-9\n';
  const cut = lotNotes([fileOf('a.bowl', SHELF), fileOf('b.bowl', notes)], 'K1');
  expect([...(cut?.journal.clients.keys() ?? [])]).toEqual(['wren']);
  expect(cut?.journal.sources.get('b.bowl')?.lines.slice(0, 4)).toEqual([
    'visit 2026-02-02 wren',
    '',
    '  bowl A 40 clay + 80 dev-6',
    '  home 5 clay',
  ]);
});

test('a plain visit is worked out from the lines of its bowls, as far as they bear on the lot, and not read', () => {
  const notes =
    'client wren "Wren Abbott"\n  allergy nickel\nvisit 2026-02-02 wren\n  note x\n  bowl A 40 clay + 80 dev-6\n  left A 3\n  plus A 3 clay\n';
  const cut = lotNotes([fileOf('a.bowl', SHELF), fileOf('b.bowl', notes)], 'K1');
  expect([...(cut?.journal.sources.keys() ?? [])]).toEqual(['a.bowl']);
  expect(cut?.journal.clients.get('wren')?.full).toBe('Wren Abbott');
  expect(cut?.plain.map(({ client, date, label, place }) => [client, date, label, place.line])).toEqual([
    ['wren', '2026-02-02', 'clay', 4],
    ['wren', '2026-02-02', 'clay', 6],
  ]);
});
