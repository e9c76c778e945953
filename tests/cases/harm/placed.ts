import { readFileSync } from 'node:fs';
import { joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { judge } from '../../../src/rules/judging.ts';

/** One sentence of the list: its number, what it is about, and its words. */
export type Sentence = { readonly id: string; readonly kind: string; readonly text: string };

/** The sentences of a list in this folder, as id, kind and text with tabs between. */
export const sentencesOf = (name: string): Sentence[] =>
  readFileSync(`tests/cases/harm/${name}`, 'utf8')
    .split('\n')
    .filter((line) => /\t/.test(line))
    .map((line) => line.split('\t'))
    .map(([id = '', kind = '', text = '']) => ({ id, kind, text }))
    .filter(({ id }) => id !== 'id');

/** Every way in which a line of a visit takes a sentence; `S` stands for it. */
export const WAYS: readonly string[] = [
  'aim S',
  'note S',
  'note "S"',
  'start roots 5 "S"',
  'place A roots apply on-scalp "S"',
  'on 10:10-10:20 A roots "S"',
  'check 10:40 roots 5 "S"',
  'off 10:52 A "S"',
  'rinse 10:52 "S"',
  'left A 2 binned "S"',
  'stopped 10:52 A "S"',
  'declined lightener "S"',
  'result roots 5 "S"',
  'charge roots 55 "S"',
  'paid 55 card "S"',
  'next 6w roots "S"',
  'call 2026-08-12 09:00 "S"',
  'about 2026-06-10 "S"',
];

const SHELF = `
product dev-6 "Cream developer" developer 6%
range cream "Larkfield cream" permanent
  mix 1:1.5
`;

const visitOf = (client: string, way: string, text: string): string[] => {
  const said = way.replace('S', () => text.replace(/["“”„«»]/g, "'"));
  const lines = [
    'start roots 5',
    'bowl A 20 cream 5/0 + 6% 1:1.5',
    'place A roots apply on-scalp',
    'on 10:10-10:20 A roots',
    'off 10:52 A',
    'left A 2 binned',
    'result roots 5',
    'charge roots 55',
    'paid 55 card',
  ];
  const word = said.split(' ')[0] ?? '';
  const kept = lines.filter((line) => !line.startsWith(`${word} `));
  return [
    `visit 2026-06-10 10:00 ${client}`,
    'bowl A 20 cream 5/0 + 6% 1:1.5',
    'result roots 5',
    `visit 2026-08-10 10:00 ${client}`,
    ...kept,
    said,
  ];
};

/** The next number of a seeded run, from 0 up to 1: a linear congruence, good enough to deal sentences out. */
export const dealer = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648;
  };
};

const nameOf = (index: number): string =>
  `pa-${String.fromCharCode(97 + Math.floor(index / 26))}${String.fromCharCode(97 + (index % 26))}x`;

/** The notes of a journal in which each sentence stands in one client's visit, in a word dealt at random by the seed. */
export const notesOf = (sentences: readonly Sentence[], seed: number): string => {
  const next = dealer(seed);
  const clients = sentences.flatMap(({ text }, index) => {
    const client = nameOf(index);
    const way = WAYS[Math.floor(next() * WAYS.length)] ?? '';
    return [
      `client ${client} "Client ${index}"`,
      'test skin 2026-05-01 10:00 cream read 2026-05-03 10:30 clear',
      ...visitOf(client, way, text),
    ];
  });
  return `${SHELF}${clients.join('\n')}\n`;
};

/** The sentences, of those placed, whose line is found to tell of harm. */
export const seenAsHarm = (sentences: readonly Sentence[], seed: number): Set<string> => {
  const journal = joinSources([readSource('placed.bowl', new TextEncoder().encode(notesOf(sentences, seed)))]);
  const told = new Set(
    judge(journal, '2026-11-30')
      .all()
      .findings.filter(({ rule }) => rule === 'harm-told')
      .map(({ client }) => client),
  );
  return new Set(sentences.filter((_, index) => told.has(nameOf(index))).map(({ id }) => id));
};
