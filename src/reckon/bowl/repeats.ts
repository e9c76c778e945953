import type { Solved } from './bowl.ts';
import { bowlName, type VisitPlan } from './plan.ts';
import type { Then } from './repeat.ts';

/**
 * A visit's bowls as others repeat them. What is in a bowl that was poured together is looked up once for all who repeat
 * it, unless they mix bowls of the same names, out of which it then comes.
 */
export type Repeats = {
  /** The bowls that the visit mixes. */
  readonly mixes: VisitPlan['bowls'];
  /** The visit's bowls as a bowl of a visit (its own as well) repeats them. */
  readonly into: (visit: Repeats, bowl: string) => Then;
  /** What the visit itself repeats of others that mix bowls of the same names; kept here, so that it goes with the visit. */
  readonly beside: Map<Repeats, Beside>;
};

/** The names of bowls that two visits have in common, and the one's bowls as the other repeats them. */
type Beside = { readonly names: ReadonlySet<string>; readonly repeated: Then };

/** The names of a visit's bowls, and of those that its lines take something out of without mixing them. */
const namesIn = ({ bowls }: VisitPlan): ReadonlySet<string> => {
  const names = new Set(bowls.keys());
  for (const { bowl, plus } of bowls.values()) {
    for (const { out } of bowl?.fact.parts ?? []) if (out !== undefined) names.add(bowlName(out));
    for (const { fact } of plus) if (fact.out !== undefined) names.add(bowlName(fact.out));
  }
  return names;
};

type Names = { readonly has: (name: string) => boolean };

const NONE: ReadonlySet<string> = new Set();

/** The names that are in both, gone through by the shorter of the two. */
const inBoth = (a: ReadonlySet<string>, b: VisitPlan['bowls']): ReadonlySet<string> => {
  const [few, many]: readonly [Iterable<string>, Names] = a.size < b.size ? [a, b] : [b.keys(), a];
  const both = new Set<string>();
  for (const name of few) if (many.has(name)) both.add(name);
  return both.size === 0 ? NONE : both;
};

/** A visit's bowls, by what its lines plan and the bowls that are solved by now. */
export const createRepeats = (plan: VisitPlan, cores: ReadonlyMap<string, Solved>): Repeats => {
  const thenWith = (hasBowl: Then['hasBowl']): Then => ({
    coreOf: (name) => cores.get(name),
    hasBowl,
    pieces: new Map(),
  });
  const [within, alone] = [thenWith(() => true), thenWith(() => false)];
  let names: ReadonlySet<string> | undefined;
  const besideOf = (visit: Repeats): Beside => {
    let beside = visit.beside.get(own);
    if (beside === undefined) {
      names ??= namesIn(plan);
      const both = inBoth(names, visit.mixes);
      beside = { names: both, repeated: both.size === 0 ? alone : thenWith((name) => both.has(name)) };
      visit.beside.set(own, beside);
    }
    return beside;
  };
  const own: Repeats = {
    mixes: plan.bowls,
    beside: new Map(),
    into: (visit, bowl) => {
      if (visit === own) return within;
      const { names: both, repeated } = besideOf(visit);
      if (!both.has(bowl)) return repeated;
      // A bowl of the same name is not taken out of itself.
      return both.size === 1 ? alone : thenWith((name) => name !== bowl && both.has(name));
    },
  };
  return own;
};
