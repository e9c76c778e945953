import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { paintFor } from '../../src/cli/colour.ts';
import { startProgress } from '../../src/cli/progress.ts';
import { keepCurrent } from '../../src/cli/watch/keep-current.ts';
import { openPageFolder } from '../../src/cli/watch/page-folder.ts';
import { changeText, notedText, startText } from '../../src/cli/watch/watch-text.ts';
import { JOURNAL, useProgram } from '../journeys/program.ts';
import { runHere } from './run-here.ts';

const program = await useProgram();

/** What a terminal obeys: a screen wiped, a title set, in seven bits and in eight, a turned direction, a bell, a delete. */
const EVIL = '\x1b[2J\x1b]0;x\x07\u009b31m\u202egnp\u2066\u200f\x7f\b\x1b[91m';
/** The same where a name of a file can hold it, and a line that would look like one of ours. */
const NAME = `a${EVIL}\nINJECTED: all is well`;

const NOTES = `client ann-reed "Ann ${EVIL} Reed"
  natural 6
  allergy "nickel ${EVIL}"
visit 2026-11-20 10:00 ann-reed
  bowl A 44 cly${EVIL} lot K${EVIL} + 20vol 1:2
  chekc 10:30 ${EVIL}
  note "${EVIL}"
  charge foils${EVIL} 83.00
  next 12w "${EVIL}"
visit 2026-11-25 14:00 ann-reed
  bowl A 40 clay + 20vol 1:2
   on 14:20-14:30 A top
`;
const STOCK = `stock 2026-08-01
  in clay 2 packs 24.00 lot K1${EVIL}
`;

const folderOf = (): string => {
  const folder = join(program.folder(), NAME);
  mkdirSync(folder);
  const files = {
    ...JOURNAL,
    [`${NAME}.bowl`]: NOTES,
    'stock.bowl': STOCK,
    'latin.bowl': Buffer.from('note caf\xe9', 'latin1'),
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
};

/** Colour that is left then was typed by somebody. */
beforeAll(() => vi.stubEnv('NO_COLOR', '1'));
afterAll(() => vi.unstubAllEnvs());

const DAY = ['--on', '2026-11-25'];
const YEAR = ['--from', '2026', '--to', '2026'];

/** The program’s own line that is written over; without colour nothing else of its own is for the terminal. */
const OURS = '\r\x1b[K';

const expectHarmless = (said: string): void => {
  expect(said.replaceAll(OURS, '').replaceAll('\r\n', '\n')).not.toMatch(
    /(?![\n\t])[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u,
  );
  expect(said).not.toMatch(/^INJECTED/m);
};

/** Command lines with a hostile word at every place that takes one, and over hostile notes. */
const COMMANDS: readonly (readonly [string, (folder: string) => readonly string[]])[] = [
  ['check', (folder) => ['check', folder, ...DAY]],
  ['check --json', (folder) => ['check', folder, '--json', ...DAY]],
  ['check one file', (folder) => ['check', join(folder, `${NAME}.bowl`), ...DAY]],
  ['check --reasons', (folder) => ['check', folder, '--reasons', '--all', ...DAY]],
  ['check of nothing', (folder) => ['check', join(folder, `${NAME}x.bowl`)]],
  ['check --only', (folder) => ['check', folder, '--only', EVIL]],
  ['check --on', (folder) => ['check', folder, '--on', EVIL]],
  ['mix', (folder) => ['mix', `40 cly${EVIL} + 20vol 1:2`, '--shelf', folder]],
  ['mix that works', (folder) => ['mix', '40 clay + 20vol 1:2', '--shelf', folder]],
  ['mix --json', (folder) => ['mix', `40 cly${EVIL} + 20vol`, '--shelf', folder, '--json']],
  ['mix --scale', () => ['mix', '40 clay', '--scale', EVIL]],
  ['card', (folder) => ['card', 'ann-reed', folder, ...DAY]],
  ['card --json', (folder) => ['card', 'ann-reed', folder, '--json', ...DAY]],
  ['card --html', (folder) => ['card', 'ann-reed', folder, '--html', ...DAY]],
  ['card of nobody', (folder) => ['card', `bob${EVIL}`, folder]],
  ['card -o', (folder) => ['card', 'ann-reed', folder, '-o', join(folder, `${NAME}.md`), ...DAY]],
  ['card -o over notes', (folder) => ['card', 'ann-reed', folder, '-o', join(folder, `${NAME}.bowl`)]],
  ['card -o into no folder', (folder) => ['card', 'ann-reed', folder, '-o', join(folder, EVIL, 'x.md')]],
  ['clients', (folder) => ['clients', folder, ...DAY]],
  ['clients --json', (folder) => ['clients', folder, '--json', ...DAY]],
  ['due', (folder) => ['due', folder, '--weeks', '30', ...DAY]],
  ['due --csv', (folder) => ['due', folder, '--weeks', '30', '--csv', ...DAY]],
  ['due --ics', (folder) => ['due', folder, '--weeks', '30', '--ics', ...DAY]],
  ['due --json', (folder) => ['due', folder, '--weeks', '30', '--json', ...DAY]],
  ['due --weeks', (folder) => ['due', folder, '--weeks', EVIL]],
  ['money', (folder) => ['money', folder, ...YEAR]],
  ['money --csv', (folder) => ['money', folder, ...YEAR, '--csv']],
  ['money --json', (folder) => ['money', folder, ...YEAR, '--json']],
  ['money --by', (folder) => ['money', folder, '--by', EVIL]],
  ['usage', (folder) => ['usage', folder, ...YEAR]],
  ['usage --csv', (folder) => ['usage', folder, ...YEAR, '--csv', '--by', 'client']],
  ['usage --json', (folder) => ['usage', folder, ...YEAR, '--json']],
  ['usage --from', (folder) => ['usage', folder, '--from', EVIL]],
  ['shelf', (folder) => ['shelf', folder, ...DAY]],
  ['shelf --json', (folder) => ['shelf', folder, '--json', ...DAY]],
  ['order', (folder) => ['order', folder, ...DAY]],
  ['order --json', (folder) => ['order', folder, '--json', ...DAY]],
  ['trace', (folder) => ['trace', `K1${EVIL}`, folder]],
  ['trace --json', (folder) => ['trace', `K1${EVIL}`, folder, '--json']],
  ['trace --client', (folder) => ['trace', '--client', 'ann-reed', folder]],
  ['trace of a path', (folder) => ['trace', folder]],
  ['prep', (folder) => ['prep', '2026-11-25', folder]],
  ['prep of nobody', (folder) => ['prep', EVIL, folder]],
  ['rebook', (folder) => ['rebook', 'ann-reed', folder, '--on', '2026-12-20']],
  ['rebook --append', (folder) => ['rebook', 'ann-reed', folder, '--on', '2026-12-20', '--append', 'auto']],
  ['rebook --append to none', (folder) => ['rebook', 'ann-reed', folder, '--append', NAME]],
  ['hindsight lift', (folder) => ['hindsight', 'lift', folder]],
  ['hindsight mix --json', (folder) => ['hindsight', 'mix', folder, '--json']],
  ['hindsight of nothing', (folder) => ['hindsight', EVIL, folder]],
  ['now', (folder) => ['now', 'check A gold', folder, '--at', '14:40', ...DAY]],
  ['now that does not read', (folder) => ['now', `check A ${EVIL}`, folder, '--at', '14:40', ...DAY]],
  ['now without quotes', () => ['now', 'check', EVIL]],
  ['neaten --check', (folder) => ['neaten', '--check', folder]],
  ['neaten', (folder) => ['neaten', folder]],
  ['neaten of nothing', (folder) => ['neaten', join(folder, NAME)]],
  ['new', (folder) => ['new', join(folder, `new${NAME}`), ...DAY]],
  ['new where something is', (folder) => ['new', folder]],
  ['why', () => ['why', EVIL]],
  ['watch of a file', (folder) => ['watch', join(folder, `${NAME}.bowl`)]],
  ['watch of nothing', (folder) => ['watch', join(folder, NAME)]],
  ['watch --out among notes', (folder) => ['watch', folder, '--out', folder]],
  ['no command', () => [EVIL]],
  ['no option', () => ['check', `--${NAME}`]],
  ['two options', (folder) => ['card', EVIL, folder, '--json', '--html']],
  ['too much', () => ['why', EVIL, EVIL]],
  ['help of nothing', () => ['help', EVIL]],
  ['help', () => ['help']],
  ['help of a command', () => ['check', '--help']],
  ['the version', () => ['--version']],
];

describe('nothing that is printed is obeyed by a terminal', () => {
  test.each(COMMANDS)('%s', async (_says, words) => {
    const { code, out, err } = await runHere(words(folderOf()), true);
    expect([0, 1, 2]).toContain(code);
    expect((out + err).length).toBeGreaterThan(0);
    expectHarmless(out + err);
  });

  test('a fault in the program, whatever its message', async () => {
    vi.spyOn(Map.prototype, 'get').mockImplementationOnce(() => {
      throw new Error(`boom ${EVIL}`);
    });
    const { code, err } = await runHere(['check', folderOf()], true);
    vi.restoreAllMocks();
    expect(code).toBe(3);
    expectHarmless(err);
    expect(err).toContain('boom ␛[2J');
  });

  test('JSON to a terminal says the same as into a pipe', async () => {
    const folder = folderOf();
    for (const words of [
      ['card', 'ann-reed', folder, '--json', ...DAY],
      ['check', folder, '--json', ...DAY],
    ]) {
      const [shown, piped] = [await runHere(words, true), await runHere(words)];
      expect(shown.out).not.toBe(piped.out);
      expect(JSON.parse(shown.out)).toEqual(JSON.parse(piped.out));
    }
  });
});

test('progress is on one line, and ours', () => {
  const said: string[] = [];
  const before = process.stderr.isTTY;
  process.stderr.isTTY = true;
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => said.push(String(text)) > 0);
  vi.spyOn(performance, 'now').mockReturnValueOnce(0).mockReturnValueOnce(10_000);
  try {
    const progress = startProgress();
    progress.say(`reading ${NAME}`);
    progress.done();
  } finally {
    vi.restoreAllMocks();
    process.stderr.isTTY = before;
  }
  expect(said).toHaveLength(2);
  expectHarmless(said.join(''));
  expect(said.join('')).not.toContain('\n');
});

test('watching tells of files, findings and troubles without obeying them', async () => {
  const folder = folderOf();
  const troubles: string[] = [];
  const told = { progress: () => undefined, changed: () => undefined, trouble: (what: string) => troubles.push(what) };
  const pages = openPageFolder(join(folder, 'pages'), folder);
  const kept = await keepCurrent({ root: folder, folder: pages, dayOf: () => '2026-11-25', events: false, told });
  await kept.stop();
  const { settled } = kept.state();
  const paint = paintFor('stdout');
  const found = { gained: settled.all().findings, lost: [] };
  const files = [join(folder, `${NAME}.bowl`)];
  const change = { ...kept.state(), files, pages: [], took: 1, found };
  const lines = [
    changeText(change, { root: folder, at: '10:00', paint }),
    startText(settled.journal, { files: 1, pages: 1, root: folder, index: join(folder, 'x'), how: '' }),
    notedText({ line: EVIL, file: NAME, row: 1, from: '10.0.0.2' }),
    ...troubles,
  ];
  expect(found.gained.length).toBeGreaterThan(3);
  expectHarmless(lines.join('\n'));
});
