import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { findFiles } from '../../../src/journal/find.ts';
import { type Journal, joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { lotJournal, type NoteFile } from '../../../src/reckon/stock/lot-notes.ts';
import { stockMoves } from '../../../src/reckon/stock/stock-entries.ts';
import { touchingVisits } from '../../../src/reckon/stock/touching.ts';
import { traceable, traceLot } from '../../../src/reckon/stock/trace.ts';
import { simulateStudio } from '../../simulate/studio.ts';

const whole = (files: readonly NoteFile[]): Journal =>
  joinSources(files.map(({ path, bytes }) => readSource(path, bytes)));

const tracedIn = (journal: Journal, lot: string): string[] => {
  const { wares, traced } = traceLot(traceable(journal, touchingVisits(journal)), lot);
  return [
    ...wares.map(({ item, shade, arrived, gone }) => `${item.name} ${shade} ${arrived} ${gone}`),
    ...traced.map(
      ({ touch, certainty }) =>
        `${touch.place.file}:${touch.place.line} ${touch.date} ${journal.clients.get(touch.client)?.full} ${touch.label} ${certainty} ${touch.amount?.n}`,
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
    const cut = lotJournal(files, lot);
    expect(cut && tracedIn(cut, lot)).toEqual(tracedIn(journal, lot));
  }
});

const SHELF = `salon quay
range cream permanent
  mix 1:1
  tones 0 natural, 3 gold, 4 copper
product clay lightener
  mix 1:2
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
    'a merge conflict',
    '<<<<<<< ours\nvisit 2026-02-02 wren\n bowl A 40 clay\n=======\n>>>>>>> theirs\nvisit 2026-02-03 wren\n bowl A 40 clay + 80 dev-6\n',
  ],
  [
    'a misspelt header before',
    'visit 2026-02-02 wren\n bowl A 40 cream 7/0 + 40 dev-9\nvist 2026-02-03 ines\n bowl A 40 clay + 80 dev-6\n',
  ],
])('%s: the lines cut out say what the whole says', (_, notes) => {
  const files = [fileOf('a.bowl', SHELF), fileOf('b.bowl', notes)];
  for (const lot of ['K1', 'd1', 'C1']) {
    const cut = lotJournal(files, lot);
    expect(cut && tracedIn(cut, lot)).toEqual(tracedIn(whole(files), lot));
  }
});

test('a lot that only bowls name is for the whole journal to trace', () => {
  expect(
    lotJournal([fileOf('a.bowl', `${SHELF}visit 2026-02-02 wren\n bowl A 40 clay lot K9\n`)], 'K9'),
  ).toBeUndefined();
});

test('what cannot bear on the lot is not read: neither idle lines, nor visits of other products', () => {
  const notes =
    'visit 2026-02-02 wren\n  note x\n  bowl A 40 clay + 80 dev-6\nvisit 2026-02-03 ines\n  bowl A 40 cream 7/0 + 40 dev-9\n';
  const cut = lotJournal([fileOf('a.bowl', SHELF), fileOf('b.bowl', notes)], 'K1');
  expect([...(cut?.clients.keys() ?? [])]).toEqual(['wren']);
  expect(cut?.sources.get('b.bowl')?.lines.slice(0, 3)).toEqual([
    'visit 2026-02-02 wren',
    '',
    '  bowl A 40 clay + 80 dev-6',
  ]);
});
