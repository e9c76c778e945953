import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { clientFile, SHELF } from '../bench/make-journal.ts';
import { randomFrom } from '../bench/random.ts';
import { CHAINS } from './chains.ts';

/** One way in which notes grow: how a journal of a size is made, and what is run on it. */
export type Dimension = {
  readonly name: string;
  /** What is counted. */
  readonly of: string;
  /** Sizes to measure at, the smaller first; the exponent is taken between the last two. */
  readonly sizes: readonly number[];
  /** The files of a journal of that size, by their names, less the shelf. */
  readonly files: (size: number) => Readonly<Record<string, string>>;
  /** Whether the files have a shelf of their own. */
  readonly ownShelf?: true;
  /** Command lines, `FOLDER` in the place of the journal's. `watch` is ended when its pages stand. */
  readonly runs: readonly (readonly string[])[];
};

/** The client that the dimensions of one client are about, and a day after all her visits. */
const HER = 'ana-grove';
const ON = ['--on', '9998-01-01'];
const DAY = '2026-05-05';

const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index)).join('\n');

const file = (...parts: readonly string[]): string => `${parts.join('\n')}\n`;

/** A bowl's name of letters alone: `A` to `Z`, `AA`, …; figures behind a letter are another mix of the same bowl. */
const bowlName = (index: number): string =>
  (index < 26 ? '' : bowlName(Math.floor(index / 26) - 1)) + String.fromCharCode(65 + (index % 26));

const minute = (index: number): string => `${10 + (Math.floor(index / 60) % 6)}:${String(index % 60).padStart(2, '0')}`;

const VISIT = `visit ${DAY} 10:00 ${HER} by io at quay`;
const CLIENT = `client ${HER} "Ana Grove"\n  natural 6`;

const oneVisit = (body: (size: number) => string) => (size: number) => ({
  'her.bowl': file(CLIENT, '', VISIT, body(size)),
});

const herVisits = (size: number): Readonly<Record<string, string>> => {
  const [, ...rest] = clientFile(randomFrom(1), 1, size);
  const named = rest.map((line) => line.replace(/^(visit \S+ \S+) \S+/, `$1 ${HER}`));
  return { 'her.bowl': file(CLIENT, named.join('\n')) };
};

const ONE_VISIT_RUNS = [
  ['check', 'FOLDER', ...ON],
  ['card', HER, 'FOLDER', ...ON],
  ['card', HER, 'FOLDER', '--html', ...ON],
  ['prep', HER, 'FOLDER', ...ON],
];

/** The chains of `chains.ts` that told of something: a name, the chain, and sizes. */
const TELLING: readonly (readonly [name: string, of: string, sizes: readonly number[]])[] = [
  ['again-visit', 'again in one visit, last to first', [25_000, 100_000]],
  ['again-visit-part', 'again at 83 % in one visit', [25_000, 100_000]],
  ['circle-visit', 'circle in one visit', [25_000, 100_000]],
  ['poured', 'poured into each other, last first', [25_000, 100_000]],
  ['more', 'more of more in one visit', [25_000, 100_000]],
  ['again-visits', 'again across visits', [25_000, 100_000]],
  ['again-visits-day', 'again across visits of one day', [5_000, 20_000]],
  ['circle-visits', 'circle across visits', [25_000, 100_000]],
  ['repeated', 'poured, all repeated later, last first', [25_000, 100_000]],
  ['again-clients', 'again across clients, last to first', [5_000, 20_000]],
  ['circle-clients', 'circle across clients', [5_000, 20_000]],
  ['not-mixed', 'lines of bowls that are not mixed', [25_000, 100_000]],
];

export const DIMENSIONS: readonly Dimension[] = [
  {
    name: 'visits',
    of: 'visits of one client',
    sizes: [2_500, 5_000, 10_000],
    files: herVisits,
    runs: [
      ...ONE_VISIT_RUNS,
      ['card', HER, 'FOLDER', '--json', ...ON],
      ['card', HER, 'FOLDER', '--summary', ...ON],
      ['due', 'FOLDER', ...ON],
      ['clients', 'FOLDER', ...ON],
      ['usage', 'FOLDER', '--from', '1900-01-01', '--to', '9998-01-01'],
      ['money', 'FOLDER', '--from', '1900-01-01', '--to', '9998-01-01'],
      ['shelf', 'FOLDER', ...ON],
      ['trace', 'FOLDER', '--client', HER],
      ['hindsight', 'lift', 'FOLDER'],
      ['watch', 'FOLDER', '--out', 'OUT', ...ON],
    ],
  },
  {
    name: 'unread',
    of: 'lines of a visit that cannot be read',
    sizes: [5_000, 20_000],
    files: oneVisit((size) => lines(size, (index) => `  qwz ${index} mumble`)),
    runs: ONE_VISIT_RUNS,
  },
  {
    name: 'lines',
    of: 'lines of a visit, of many words',
    sizes: [25_000, 100_000],
    files: oneVisit((size) =>
      lines(Math.ceil(size / 4), (index) =>
        [
          `  note ${index} went well`,
          `  care wash ${index} days on`,
          `  result lengths 8 gold "seen ${index}"`,
          `  home ${index} masks`,
        ].join('\n'),
      ),
    ),
    runs: ONE_VISIT_RUNS,
  },
  {
    name: 'bowls',
    of: 'bowls of a visit, mixed, put on, looked at and taken off',
    sizes: [500, 2_000],
    files: oneVisit((size) =>
      lines(size, (index) => {
        const bowl = bowlName(index);
        return [
          `  bowl ${bowl} 40 cream 7/1 + 6% 1:1.5`,
          `  on ${minute(index)} ${bowl} roots`,
          `  check ${minute(index + 20)} ${bowl} roots "taking"`,
          `  off ${minute(index + 35)} ${bowl} roots`,
        ].join('\n');
      }),
    ),
    runs: ONE_VISIT_RUNS,
  },
  {
    name: 'clients',
    of: 'clients, of two visits each, in files of fifty',
    sizes: [5_000, 20_000],
    files: (size) => {
      const random = randomFrom(1);
      const files: Record<string, string> = {};
      for (let from = 1; from <= size; from += 50) {
        const some = Array.from({ length: Math.min(50, size - from + 1) }, (_, index) => from + index);
        files[`clients-${from}.bowl`] = file(...some.flatMap((number) => clientFile(random, number, 2)));
      }
      return files;
    },
    runs: [
      ['check', 'FOLDER'],
      ['clients', 'FOLDER'],
      ['clients', 'FOLDER', '--html'],
      ['due', 'FOLDER'],
      ['watch', 'FOLDER', '--out', 'OUT'],
    ],
  },
  ...TELLING.map(([name, of, sizes]): Dimension => {
    const files = CHAINS[of];
    if (files === undefined) throw new Error(`no chain is called ${of}`);
    return { name, of, sizes, files, ownShelf: true, runs: [['check', 'FOLDER']] };
  }),
];

/** Writes a journal of a size. */
export const makeFolder = (folder: string, { files, ownShelf }: Dimension, size: number): void => {
  mkdirSync(folder, { recursive: true });
  if (ownShelf === undefined) writeFileSync(join(folder, 'shelf.bowl'), SHELF);
  for (const [name, text] of Object.entries(files(size))) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
};
