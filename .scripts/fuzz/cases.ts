import type { Chance } from './chance.ts';
import { chanceOf } from './chance.ts';
import type { Corpus } from './corpus.ts';
import { chainHolds, journalHolds } from './journal-promises.ts';
import { makeChain } from './make-chain.ts';
import { makeLine } from './make-line.ts';
import { makeBytes, makeJournal, makeText } from './make-notes.ts';
import { handsHold, linksHold, makeHands, makeLinks } from './on-disk.ts';
import { fileHolds, lineHolds, rereadHolds } from './promises.ts';

/**
 * `line`: one line under a header; `file`: bytes of a file; `edit`: a file and what it becomes; `journal`: the whole way;
 * `chain`: the whole way of bowls made again from each other; `links`: a command in a folder with links; `hands`: several
 * runs that write one file. The last two run the built program.
 */
export const KINDS = ['line', 'file', 'edit', 'journal', 'chain', 'links', 'hands'] as const;
export type Kind = (typeof KINDS)[number];

/** Something to try: the bytes of each file of it. */
export type Case = { readonly kind: Kind; readonly files: readonly Buffer[] };

/** Of ten thousand cases. */
const SHARES: readonly (readonly [Kind, number])[] = [
  ['line', 9752],
  ['file', 180],
  ['edit', 40],
  ['journal', 20],
  ['chain', 3],
  ['links', 4],
  ['hands', 1],
];

/** The day that cases are checked for; the demo journal ends about here. */
const DAY = '2026-11-25';

const kindOf = (index: number): Kind => {
  let at = index % 10_000;
  for (const [kind, share] of SHARES) {
    if (at < share) return kind;
    at -= share;
  }
  return 'line';
};

const lineCase = (corpus: Corpus, chance: Chance): Buffer => {
  const { heads, body } =
    corpus.under[chance.pick(['visit', 'visit', 'visit', 'client', 'range', 'product', 'stock', 'salon'] as const)];
  const line = makeLine(body, corpus, chance);
  return Buffer.from(`${chance.pick(heads)}\n${line}`);
};

/** Case `index` of a run; always the same for one seed. */
export const makeCase = (seed: number, index: number, corpus: Corpus, kind = kindOf(index)): Case => {
  const chance = chanceOf(seed, index);
  if (kind === 'line') return { kind, files: [lineCase(corpus, chance)] };
  if (kind === 'file') return { kind, files: [makeBytes(corpus, chance)] };
  if (kind === 'journal') return { kind, files: makeJournal(corpus, chance) };
  if (kind === 'chain') return { kind, files: makeChain(chance) };
  if (kind === 'links') return { kind, files: makeLinks(chance) };
  if (kind === 'hands') return { kind, files: makeHands(chance) };
  const before = makeText(corpus, chance);
  return {
    kind,
    files: [Buffer.from(before), Buffer.from(makeText(corpus, chance).slice(0, 200) + before.slice(100))],
  };
};

/** Whether a case of a run is looked at closely; one that is not takes a part of the time. */
export const isClose = (index: number): boolean => index % 4 === 0;

/** Holds a case against what is promised; `entry` is the built program, where that is not in dist/. Throws an error that says which promise is broken. */
export const tryCase = ({ kind, files }: Case, closely = true, entry?: string): void => {
  const [first = Buffer.alloc(0), second = Buffer.alloc(0)] = files;
  if (kind === 'line') {
    const text = first.toString('utf8');
    const end = text.indexOf('\n');
    lineHolds(text.slice(0, Math.max(end, 0)), text.slice(end + 1), closely);
  } else if (kind === 'file') fileHolds(first);
  else if (kind === 'edit') rereadHolds(first, second);
  else if (kind === 'links') linksHold(first.toString('utf8'), entry);
  else if (kind === 'hands') handsHold(first.toString('utf8'), entry);
  else if (kind === 'chain') chainHolds(files, DAY);
  else journalHolds(files, DAY, closely);
};
