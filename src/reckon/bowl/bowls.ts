import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import { add, type Exact, equal, max, sub, ZERO } from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import type { BowlProblem, BowlReckoned, Portion } from '../model.ts';
import { findEarlier } from './again.ts';
import { differsFrom } from './again-differs.ts';
import { type Figures, figuresOf } from './bowl.ts';
import { shareLeft } from './bowls-used.ts';
import {
  type BowlMemo,
  type Core,
  coreOf,
  coreOfPlan,
  earlierBowls,
  type VisitBowls,
  visitBowls,
  type Working,
} from './cores.ts';
import { type BowlPlan, bowlName, dayOf } from './plan.ts';
import { pouredInto } from './poured.ts';
import { heldOf, portionCost, portionsCost } from './price.ts';
import { heldPortions, type Weighing, weighBowl } from './weighed.ts';
import { noWeight, plainGrams } from './weighing.ts';

export { type BowlMemo, letGo } from './cores.ts';
export { usesOf } from './uses.ts';

/** Grams that a bowl really held: what the scales said of it, else what was reckoned. */
const mixedOf = (held: readonly Portion[], { weighed }: Weighing): Exact | undefined => {
  if (weighed !== undefined && weighed.parts.length === 0) return weighed.total;
  let total: Exact | undefined;
  for (const { weight } of held) {
    if (weight === undefined) return undefined;
    total = total === undefined ? weight : add(total, weight);
  }
  return total;
};

const isAlike = (a: Exact | undefined, b: Exact | undefined): boolean =>
  a === undefined || b === undefined ? a === b : equal(a, b);

type AsHeld = Figures & Pick<BowlReckoned, 'meant'>;

/** The figures of what a bowl held, and those that were meant where they are others. */
const asHeld = (core: Core, held: readonly Portion[], mixed: Exact | undefined): AsHeld => {
  const { portions, base, developer, ratio, ready } = core;
  const isAsMeant = held === portions && portions.every(({ from }) => from?.meant === undefined);
  if (isAsMeant) return { base, developer, ratio, ready, meant: undefined };
  const figures = figuresOf(held, mixed);
  const isSame = isAlike(figures.ratio, ratio) && isAlike(figures.ready, ready);
  return { ...figures, meant: isSame ? undefined : { ratio, ready } };
};

/** Grams taken out of each bowl of the visit into others. */
const takenOf = (ready: ReadonlyMap<string, Ready>): ReadonlyMap<string, Exact> => {
  const taken = new Map<string, Exact>();
  for (const { core } of ready.values())
    core.portions.forEach((portion, index) => {
      const name = core.outs[index];
      const weight = name === undefined ? undefined : heldOf(portion);
      if (name !== undefined && weight !== undefined) taken.set(name, add(taken.get(name) ?? ZERO, weight));
    });
  return taken;
};

/** What a bowl held, each portion with its cost: one that was not meant has none yet. */
const priced = (
  held: readonly Portion[],
  portions: readonly Portion[],
  date: string,
  salon: SalonSettings,
): readonly Portion[] =>
  held === portions ? held : held.map((portion) => ({ ...portion, cost: portionCost(portion, date, salon) }));

type GoneHome = { readonly weight: Exact; readonly place: Place };

const NOTHING: ReadonlyMap<string, GoneHome> = new Map();

/** Grams that go home of each bowl of the visit. */
const homeOf = ({ plan, salon, visit }: VisitBowls): ReadonlyMap<string, GoneHome> => {
  if (plan.home.length === 0) return NOTHING;
  const home = new Map<string, GoneHome>();
  for (const { fact, line } of plan.home) {
    const weight = fact.amount && plainGrams(fact.amount, salon);
    if (fact.out === undefined || weight === undefined) continue;
    const name = bowlName(fact.out);
    const before = home.get(name);
    const place = before?.place ?? placeOf(visit, { line }, fact.at);
    home.set(name, { weight: add(before?.weight ?? ZERO, weight), place });
  }
  return home;
};

/** An `again` beside a `bowl` of that name is compared with it. Gives which bowl is repeated. */
const compareAgain = (
  working: Working,
  bowls: VisitBowls,
  { plan, core }: Ready,
  problems: BowlProblem[],
): Core['again'] => {
  const { bowl, again } = plan;
  if (bowl === undefined || again === undefined) return core.again;
  const earlier = findEarlier(working.journal, bowls, again.fact, again.line);
  if ('kind' in earlier) {
    problems.push(earlier);
    return undefined;
  }
  const source = coreOf(working, earlierBowls(working, bowls, earlier), earlier.bowl);
  const place = { ...plan.place, line: again.line, at: again.fact.bowl.at };
  const problem = source && differsFrom(core, source, earlier, place, bowls.salon.scale);
  if (problem !== undefined) problems.push(problem);
  return earlier;
};

/**
 * What is left of a bowl, in grams, or why that is no weight. What goes home goes out of what was left, so at least that
 * was left.
 */
const leftOf = (
  { left }: BowlPlan,
  home: GoneHome | undefined,
  salon: SalonSettings,
  problems: BowlProblem[],
): BowlReckoned['left'] => {
  const given = home && { ...home, fate: 'given' as const };
  if (left === undefined) return given;
  const { amount, fate, place } = left;
  const weight = plainGrams(amount, salon);
  if (weight !== undefined) return { weight: max(weight, home?.weight ?? ZERO), fate, place };
  problems.push({ ...noWeight(amount), place });
  return given;
};

/** A bowl that is solved and weighed, before it is built. */
type Ready = { readonly plan: BowlPlan; readonly core: Core; readonly weighing: Weighing; built?: BowlReckoned };

/** All bowls of a visit; one that is taken out of another is built after it. */
const buildAll = (working: Working, bowls: VisitBowls): readonly BowlReckoned[] => {
  const { plan, salon, visit } = bowls;
  const ready = new Map<string, Ready>();
  for (const one of plan.bowls.values()) {
    const core = coreOfPlan(working, bowls, one);
    ready.set(one.name, { plan: one, core, weighing: weighBowl(working, bowls, one, core) });
  }
  const taken = takenOf(ready);
  const home = homeOf(bowls);
  const date = dayOf(visit);
  const build = (whole: Ready): BowlReckoned => {
    const { plan: one, core, weighing } = whole;
    if (whole.built !== undefined) return whole.built;
    const { portions } = core;
    portions.forEach((portion, index) => {
      const out = core.outs[index];
      const source = out === undefined ? undefined : ready.get(out);
      if (source !== undefined) portion.from = build(source);
      portion.cost = portionCost(portion, date, salon);
    });
    const problems = core.problems.concat(weighing.problems);
    const again = compareAgain(working, bowls, whole, problems);
    const left = leftOf(one, home.get(one.name), salon, problems);
    const held = priced(heldPortions(portions, weighing), portions, date, salon);
    const mixed = mixedOf(held, weighing);
    const { base, developer, ratio, ready: onHead, meant } = asHeld(core, held, mixed);
    const gone = taken.get(one.name) ?? ZERO;
    const poured = pouredInto(held);
    const result: BowlReckoned = {
      name: core.name,
      visit,
      place: core.place,
      portions,
      held,
      total: core.total,
      shownTotal: core.shownTotal,
      base,
      developer,
      ratio,
      ratioPlace: core.ratioPlace,
      ready: onHead,
      meant,
      about: core.about,
      weighed: weighing.weighed,
      mixed,
      left,
      taken: gone,
      used: mixed && sub(sub(mixed, left?.weight ?? ZERO), gone),
      cost: portionsCost(held),
      ...(poured !== undefined && { poured }),
      again: again && { visit: again.visit, bowl: again.bowl, share: again.share },
      problems,
    };
    whole.built = result;
    return result;
  };
  // In the order in which they were solved, so that one taken out of another always finds it built.
  for (const name of bowls.cores.keys()) {
    const whole = ready.get(name);
    if (whole !== undefined) build(whole);
  }
  return withStrays(shareLeft([...ready.values()].map(build), plan), bowls);
};

/** Lines that name no bowl of the visit are reported with its first bowl, or with an empty one of that name. */
const withStrays = (all: readonly BowlReckoned[], { plan, visit }: VisitBowls): readonly BowlReckoned[] => {
  const { problems, stray } = plan;
  const [first, ...rest] = all;
  const [problem] = problems;
  if (problem === undefined) return all;
  if (first !== undefined) return [{ ...first, problems: [...first.problems, ...problems] }, ...rest];
  return [
    {
      name: stray,
      visit,
      place: problem.place,
      portions: [],
      held: [],
      total: undefined,
      shownTotal: undefined,
      base: undefined,
      developer: undefined,
      ratio: undefined,
      ratioPlace: undefined,
      ready: undefined,
      meant: undefined,
      about: false,
      weighed: undefined,
      mixed: undefined,
      left: undefined,
      taken: ZERO,
      used: undefined,
      cost: undefined,
      again: undefined,
      problems,
    },
  ];
};

/**
 * Works out every bowl of a visit: weights, strength, cost, what the scales said, what is left and where it went.
 * `again` reaches back to other visits; hand the same `memo` to all visits of a journal and nothing is solved twice.
 */
export const reckonBowls = (
  journal: Journal,
  salon: SalonSettings,
  client: ClientFile,
  visit: Stood<Visit>,
  memo: BowlMemo = new Map(),
): readonly BowlReckoned[] => {
  const working: Working = { journal, memo };
  const bowls = visitBowls(working, client, visit, salon);
  bowls.finished ??= buildAll(working, bowls);
  return bowls.finished;
};
