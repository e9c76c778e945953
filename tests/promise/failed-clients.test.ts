import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { startDrawing } from '../../src/cli/watch/draw.ts';
import * as alerts from '../../src/pages/alerts.ts';
import { livePart } from '../../src/pages/live-page.ts';
import * as bowls from '../../src/reckon/bowl/bowls.ts';
import * as clock from '../../src/reckon/clock/clock.ts';
import { RULES } from '../../src/rules/all.ts';
import { openSession } from '../../src/rules/session.ts';
import { JOURNAL, useProgram } from '../journeys/program.ts';
import { runHere } from './run-here.ts';

const program = await useProgram();

const FULL = 'Bess *Tarn*';
const SHOWN = 'Bess \\*Tarn\\*';

/** The notes of one at whose bowls the program fails, and of one who is sound: as much of everything as the other has. */
const broken = (file: string): string => `client bess-tarn "${FULL}"
  natural 6
visit 2026-09-01 10:00 bess-tarn by io at quay
  bowl A 33 clay + 20vol 1:2
  again B from A 50%
  on 10:20 A roots
  off 10:50 A
  left A 7 binned
  charge foils 61.00
  deposit 20 for 2026-12-12
  next 9w roots
${file}`;

const SOUND = `client ann-reed "Ann Reed"
  natural 6
visit 2026-09-02 10:00 ann-reed by io at quay
  bowl A 44 clay lot K1 + 20vol 1:2
  place A top weave x6 off-scalp 1cm foil
  on 10:20-10:25 A top
  check 10:35 top orange
  check 10:45 top gold
  off 10:50 A
  left A 3 binned
  result top 9
  charge foils 83.00
  next 12w roots
visit 2026-11-25 14:00 ann-reed by io at quay
  bowl A 40 clay lot K1 + 20vol 1:2
  on 14:20-14:30 A top
`;

const STOCK = `stock 2026-08-01 at quay
  in clay 2 packs 24.00 lot K1 use-by 2028-01
  in dev-6 3 packs 7.50
`;

const FILES = { ...JOURNAL, 'ann.bowl': SOUND, 'stock.bowl': STOCK };
const DAY = ['--on', '2026-11-25'];
const FAULT = 'the bowl\nis cracked.';
const SAID =
  'A fault in the program while the notes of `bess-tarn` were worked out: the bowl␊is cracked. Nothing is said of her, and no sum counts her; the others are as they should be.\n';
const ON_PAGE = `**${SHOWN} is left out here, and no sum counts her: the program failed at her notes.**`;

/** Lets the working out of her bowls fail, as a mistake of the program would. */
const breakBowls = (): void => {
  const { reckonBowls } = bowls;
  vi.spyOn(bowls, 'reckonBowls').mockImplementation((journal, salon, client, visit, memo) => {
    if (client.name === 'bess-tarn') throw new RangeError(FAULT);
    return reckonBowls(journal, salon, client, visit, memo);
  });
};

/** Two folders with the same notes, one with hers too. */
const folders = (more = ''): { readonly whole: string; readonly without: string } => ({
  whole: program.folder({ ...FILES, 'bess.bowl': broken(more) }),
  without: program.folder(FILES),
});

beforeEach(() => breakBowls());
afterEach(() => vi.restoreAllMocks());

const PERIOD = ['--from', '2026-01', '--to', '2026-12'];

/** Every command that reads a journal, as words after its name. */
const REPORTS: readonly (readonly string[])[] = [
  ['due', '--weeks', '30', ...DAY],
  ['clients', ...DAY],
  ['money', ...PERIOD],
  ['money', ...PERIOD, '--by', 'service'],
  ['usage', ...PERIOD],
  ['usage', ...PERIOD, '--by', 'client'],
  ['shelf', ...DAY],
  ['order', ...DAY],
  ['prep', '2026-11-25'],
  ['prep', 'ann-reed', ...DAY],
  ['hindsight', 'lift'],
  ['hindsight', 'mix'],
  ['trace', 'K1'],
  ['trace', '--client', 'ann-reed'],
];

/** The words with a folder where paths stand. */
const at = (words: readonly string[], folder: string): string[] => {
  const paths = words[0] === 'hindsight' || words[0] === 'prep' || words[1] === 'K1' ? 2 : 1;
  return [...words.slice(0, paths), folder, ...words.slice(paths)].filter((word) => word !== '');
};

describe.each(REPORTS.map((words) => [words.join(' '), words] as const))('%s', (_says, words) => {
  test('answers for the others as if she were not there, and names her', async () => {
    const { whole, without } = folders();
    const sound = await runHere(at(words, without));
    expect(sound.code).toBe(0);
    const { code, out, err } = await runHere(at(words, whole));
    expect([code, err]).toEqual([3, SAID]);
    const block = words[0] === 'hindsight' ? ON_PAGE.replace(/\*\*|\\/g, '') : ON_PAGE;
    expect(out).toContain(`${block}\n\n`);
    expect(out.replace(`${block}\n\n`, '').replaceAll(whole, without)).toBe(sound.out);
    // The sentence stands before the first sum.
    if (out.startsWith('# ')) expect(out.split('\n').slice(0, 3)).toEqual([sound.out.split('\n')[0], '', block]);
  });

  test('names her in JSON and on the page', async () => {
    const { whole, without } = folders();
    const page = join(whole, 'page.html');
    if (words[0] !== 'hindsight') {
      expect((await runHere([...at(words, whole), '-o', page])).code).toBe(3);
      expect(readFileSync(page, 'utf8')).toContain(
        `<p><strong>${FULL} is left out here, and no sum counts her: the program failed at her notes.</strong></p>`,
      );
    }
    if (words[0] === 'prep') return;
    const { code, out } = await runHere([...at(words, whole), '--json']);
    const { failedClients, ...others } = JSON.parse(out.replaceAll(whole, without));
    expect([code, failedClients]).toEqual([3, [{ client: 'bess-tarn', fault: FAULT }]]);
    expect(others).toEqual(JSON.parse((await runHere([...at(words, without), '--json'])).out));
  });
});

/** What a check says without the folder’s name and how many there are. */
const uncounted = (out: string): string =>
  out.replaceAll(/folder-\d+/g, 'folder').replace(/\d+ visits of \d+ clients/, '');

describe('commands about one client', () => {
  test('check says everything of the others', async () => {
    const { whole, without } = folders();
    const sound = await runHere(['check', without, ...DAY]);
    const { code, out, err } = await runHere(['check', whole, ...DAY]);
    expect([code, err]).toEqual([3, SAID]);
    expect(uncounted(out)).toBe(uncounted(sound.out));
  });

  test.each([
    ['the card', ['card', 'ann-reed'], []],
    ['the card, as JSON', ['card', 'ann-reed'], ['--json']],
    ['the next visit', ['rebook', 'ann-reed'], ['--on', '2026-12-20']],
  ])('%s of the sound one is whole', async (_says, words, more) => {
    const { whole, without } = folders();
    const day = words[0] === 'card' ? DAY : [];
    const sound = await runHere([...words, without, ...more, ...day]);
    expect(sound.code).toBe(0);
    const { code, out, err } = await runHere([...words, whole, ...more, ...day]);
    expect(out.replaceAll(whole, without)).toBe(sound.out);
    // Nobody else is looked at for her card alone.
    expect([code, err.replaceAll(whole, without)]).toEqual(words[0] === 'card' ? [0, ''] : [3, sound.err + SAID]);
  });

  test.each([['card'], ['rebook'], ['prep']])('%s of the other is a fault, and nothing is shown', async (command) => {
    const { code, out, err } = await runHere([command, 'bess-tarn', folders().whole, ...DAY]);
    expect([code, out]).toEqual([3, '']);
    expect(err).toContain('A fault in the program, not in the notes');
    expect(err).toContain('is cracked');
  });

  test('a line is written in the sound one’s visit, and what is said of it is true', async () => {
    const { whole } = folders();
    const { code, out, err } = await runHere(['now', 'check A gold', whole, '--at', '14:40', ...DAY]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('check 14:40 A gold');
    expect(readFileSync(join(whole, 'ann.bowl'), 'utf8').endsWith('\n  check 14:40 A gold\n')).toBe(true);
  });

  test('where the clock of the other cannot be told, a line is not guessed onto one of the two', async () => {
    const { reckonClock } = clock;
    vi.spyOn(clock, 'reckonClock').mockImplementation((visit, salon) => {
      if (visit.entry.client?.name === 'bess-tarn') throw new Error(FAULT);
      return reckonClock(visit, salon);
    });
    const { whole } = folders('visit 2026-11-25 13:00 bess-tarn by io at quay\n  on 14:10 A roots\n');
    const words = ['now', 'check A gold', whole, '--at', '14:40', ...DAY];
    const { code, err } = await runHere(words);
    expect([code, err]).toEqual([2, expect.stringContaining('`--client ann-reed` or `--client bess-tarn`')]);
    expect((await runHere([...words, '--client', 'ann-reed'])).out).toContain('check 14:40 A gold');
  });

  test('a file that is named and holds her alone shows nobody else’s sums', async () => {
    const { whole } = folders();
    const { out } = await runHere(['money', join(whole, 'bess.bowl'), ...PERIOD]);
    expect(out).toContain(ON_PAGE);
    expect(out).not.toMatch(/83\.00|95\.00/);
  });
});

test('one whose notes cannot be judged is left out of the list, and stays in the sums', async () => {
  vi.restoreAllMocks();
  const rule = RULES.find(({ over }) => over === 'client');
  if (rule?.over !== 'client') throw new Error('no rule over a client');
  const { check } = rule;
  vi.spyOn(rule, 'check').mockImplementation((client, visits, journal, on) => {
    if (client.name === 'bess-tarn') throw new Error(FAULT);
    return check(client, visits, journal, on);
  });
  const { whole, without } = folders();
  const sound = await runHere(['clients', without, ...DAY]);
  const { code, out } = await runHere(['clients', whole, ...DAY]);
  expect([code, out.replace(`${ON_PAGE}\n\n`, '')]).toEqual([3, sound.out]);
  const { code: done, out: sums } = await runHere(['money', whole, ...PERIOD]);
  expect([done, sums]).toEqual([0, expect.stringContaining('61.00')]);
});

describe('pages that are kept current', () => {
  const take = () => {
    const session = openSession();
    for (const [path, text] of Object.entries({ ...FILES, 'bess.bowl': broken('') }))
      session.put(path, Buffer.from(text));
    const drawing = startDrawing('.');
    drawing.take(session.settle('2026-11-25'), '2026-11-25');
    return drawing;
  };

  const named = `<strong>${FULL} is left out here, and no sum counts her: the program failed at her notes.</strong>`;

  test('the lists name her, have no row for her, and the others’ cards are drawn', () => {
    const drawing = take();
    const index = drawing.page('index.html') ?? '';
    expect(index).toContain(named);
    expect(index).not.toContain('clients/bess-tarn.html');
    expect(index).toContain('clients/ann-reed.html');
    expect(drawing.page('findings.html')).toContain(named);
    expect(drawing.page('clients/ann-reed.html')).toContain('Ann Reed');
    expect(() => drawing.page('clients/bess-tarn.html')).toThrow('is cracked');
  });

  test('the live page names her', () => {
    const leftOut = take().leftOut();
    const part = livePart({ on: '2026-11-25', now: 870, visits: [], salon: undefined, leftOut });
    expect(part).toContain(named);
  });

  test('one at whose row in the list the program fails costs no other her page', () => {
    vi.restoreAllMocks();
    const { alertItems } = alerts;
    vi.spyOn(alerts, 'alertItems').mockImplementation((view) => {
      if (view.client.name === 'bess-tarn') throw new Error(FAULT);
      return alertItems(view);
    });
    const drawing = take();
    expect(drawing.page('index.html')).toContain(named);
    expect(drawing.page('clients/ann-reed.html')).toContain('Ann Reed');
    expect(() => drawing.page('clients/bess-tarn.html')).toThrow('is cracked');
  });
});
