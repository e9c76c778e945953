import { type Case, isClose, KINDS, type Kind, makeCase, tryCase } from './cases.ts';
import type { Corpus } from './corpus.ts';
import { classOf, shrink } from './shrink.ts';

/** A promise that did not hold: which case, what was said, the case made small. */
export type Failure = { readonly index: number; readonly message: string; readonly small: Case };

/** How many of each kind were tried, and the slowest, in milliseconds. */
export type Tried = { readonly counts: Readonly<Record<Kind, number>>; readonly slowest: number };

export type Part = {
  readonly seed: number;
  readonly first: number;
  readonly end: number;
  readonly step: number;
  readonly kind?: Kind | undefined;
};

/** A case that takes the processor longer, in milliseconds, is taken to hang; a chain is long on purpose. */
const LONGEST = 1000;
const LONGEST_CHAIN = 6000;

/** The message of a case that fails, with where it was thrown when it is no broken promise but a fault. */
const failing = (one: Case, closely: boolean): string | undefined => {
  try {
    tryCase(one, closely);
    return undefined;
  } catch (error) {
    const thrown = error instanceof Error ? error : new Error(String(error));
    const at = thrown.stack?.split('\n').find((line) => line.includes('.ts:')) ?? '';
    return thrown.constructor === Error ? thrown.message : `${thrown} ${at.trim()}`;
  }
};

/**
 * Why a case fails, if it does, and the milliseconds of the clock it took. Other programs share the clock, so a case that
 * seems long is tried again by the processor's own time.
 */
const whyNot = (one: Case, closely: boolean): { why: string | undefined; took: number } => {
  const start = performance.now();
  const why = failing(one, closely);
  const took = performance.now() - start;
  const longest = one.kind === 'chain' ? LONGEST_CHAIN : LONGEST;
  if (why !== undefined || took < longest) return { why, took };
  const before = process.cpuUsage();
  failing(one, closely);
  const { user, system } = process.cpuUsage(before);
  const worked = (user + system) / 1000;
  return { why: worked > longest ? `a case takes ${Math.round(worked)} ms` : undefined, took: worked };
};

/** Tries every `step`th case from `first` up to `end`; one failure of each way is made small and told. */
export const runPart = (
  { seed, first, end, step, kind }: Part,
  corpus: Corpus,
  at: (index: number) => void,
  told: (failure: Failure) => void,
): Tried => {
  const counts = Object.fromEntries(KINDS.map((name) => [name, 0])) as Record<Kind, number>;
  const ways = new Set<string>();
  let slowest = 0;
  for (let index = first; index < end; index += step) {
    at(index);
    const one = makeCase(seed, index, corpus, kind);
    counts[one.kind]++;
    const { why, took } = whyNot(one, isClose(index));
    slowest = Math.max(slowest, took);
    if (why === undefined || ways.has(classOf(why))) continue;
    ways.add(classOf(why));
    const small = why.startsWith('a case takes') ? one : shrink(one, (next) => failing(next, true));
    told({ index, message: why, small });
  }
  return { counts, slowest };
};
