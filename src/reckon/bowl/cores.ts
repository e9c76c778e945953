import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Amount } from '../../records/schema/values.ts';
import { div, type Exact, isZero, ONE } from '../../text/exact.ts';
import { placeOf } from '../cite.ts';
import type { BowlProblem, BowlReckoned } from '../model.ts';
import { salonOf } from '../salon-of.ts';
import { type Earlier, findEarlier } from './again.ts';
import { type Solved, solveBowl } from './bowl.ts';
import { circleOf } from './circle.ts';
import { inMillionths } from './finest.ts';
import { type BowlSaid, type Part, type Parted, type Said, type Typed, typedPart } from './part.ts';
import { type BowlPlan, bowlName, dayOf, planBowls, type VisitPlan } from './plan.ts';
import { resolveParts, type Setting } from './portions.ts';
import { repeatParts } from './repeat.ts';
import { createRepeats, type Repeats } from './repeats.ts';
import { MOST_THINGS, thingsIn, tooMany } from './things.ts';
import { noWeight, plainGrams } from './weighing.ts';

/** A bowl solved, and which earlier one it repeats. */
export type Core = Solved & { readonly again?: Earlier };

/** One visit while its bowls are worked out. */
export type VisitBowls = {
  readonly visit: Stood<Visit>;
  readonly client: ClientFile;
  readonly salon: SalonSettings;
  readonly plan: VisitPlan;
  readonly cores: Map<string, Core>;
  readonly repeats: Repeats;
  finished: readonly BowlReckoned[] | undefined;
  /** Whether another client's visit makes a bowl of it again. */
  isReached: boolean;
};

/** Bowls already worked out, by visit, so that `again` solves nothing twice. */
export type BowlMemo = Map<Stood<Visit>, VisitBowls>;

/** What one working-out carries along: the journal, and what is done. */
export type Working = { readonly journal: Journal; readonly memo: BowlMemo };

/**
 * Lets go what was worked out of a client, once she is done. Where another client makes one of her bowls again it is kept:
 * a chain of clients would be worked out anew for each of them.
 */
export const letGo = (memo: BowlMemo, { visits }: ClientFile): void => {
  if (!visits.some((visit) => memo.get(visit)?.isReached)) for (const visit of visits) memo.delete(visit);
};

/** The bowls of a visit as its lines plan them; planned once. */
export const visitBowls = (
  { journal, memo }: Working,
  client: ClientFile,
  visit: Stood<Visit>,
  salon: SalonSettings = salonOf(journal, visit),
): VisitBowls => {
  const found = memo.get(visit);
  if (found !== undefined) return found;
  const cores = new Map<string, Core>();
  const plan = planBowls(visit);
  const repeats = createRepeats(plan, cores);
  const made = { visit, client, salon, plan, cores, repeats, finished: undefined, isReached: false };
  memo.set(visit, made);
  return made;
};

/** The bowls of the visit that an `again` line means. */
export const earlierBowls = (working: Working, { client }: VisitBowls, earlier: Earlier): VisitBowls => {
  const then = visitBowls(working, earlier.client, earlier.visit);
  if (earlier.client !== client) then.isReached = true;
  return then;
};

/** Where a visit's components are resolved. */
export const settingOf = ({ journal }: Pick<Working, 'journal'>, { visit, salon }: VisitBowls): Setting => ({
  shelf: journal.shelf,
  date: dayOf(visit),
  conversion: salon,
});

const empty = ({ name, place }: BowlPlan, problems: readonly BowlProblem[]): Core => ({
  name,
  place,
  portions: [],
  outs: [],
  total: undefined,
  shownTotal: undefined,
  base: undefined,
  developer: undefined,
  ratio: undefined,
  ratioPlace: undefined,
  ready: undefined,
  about: false,
  problems,
});

/** A figure of the whole bowl in grams, or why it is none. */
const saidOf = ({ visit, salon }: VisitBowls, line: number, amount: Amount): Said | BowlProblem => {
  const place = placeOf(visit, { line }, amount.at);
  const value = plainGrams(amount, salon);
  if (value === undefined) return { ...noWeight(amount), place };
  return { value, place, about: amount.about === true || amount.to !== undefined };
};

/** What a bowl holds before its `plus` lines, and the problems of that. */
type Held = Parted & { readonly again: Earlier | undefined; readonly open: boolean };

const unheld = (problem: BowlProblem): Held => ({ parts: [], problems: [problem], again: undefined, open: true });

type From = { readonly bowls: VisitBowls; readonly source: Solved | undefined; readonly share: Exact };

const repeated = (bowls: VisitBowls, plan: BowlPlan, { bowls: then, source, share }: From): Held => {
  if (source === undefined) return { parts: [], problems: [], again: undefined, open: true };
  const parts = repeatParts(source.name, share, then.repeats.into(bowls.repeats, plan.name), {
    place: plan.place,
    lotOf: then.visit === bowls.visit ? undefined : dayOf(then.visit),
  });
  const things = thingsIn(parts);
  if (things > MOST_THINGS) return unheld(tooMany(plan, things));
  const open = parts.length === 0 || parts.some(({ grams }) => grams === undefined);
  return { parts, problems: [], again: undefined, open };
};

const heldMore = (bowls: VisitBowls, plan: BowlPlan, more: NonNullable<BowlPlan['more']>): Held => {
  const source = bowls.cores.get(more.of);
  const said = more.amount && saidOf(bowls, plan.place.line, more.amount);
  if (said !== undefined && 'kind' in said) return unheld(said);
  const whole = source?.total;
  const share = said === undefined || whole === undefined || isZero(whole) ? ONE : div(said.value, whole);
  return repeated(bowls, plan, { bowls, source, share });
};

/** What a bowl repeats, where it does: the bowl that is meant, or why there is none. */
type Repeated = { readonly earlier: Earlier; readonly mixed: VisitBowls } | BowlProblem;

const repeatedBy = (working: Working, bowls: VisitBowls, { bowl, again }: BowlPlan): Repeated | undefined => {
  if (bowl !== undefined || again === undefined) return undefined;
  const earlier = findEarlier(working.journal, bowls, again.fact, again.line);
  return 'kind' in earlier ? earlier : { earlier, mixed: earlierBowls(working, bowls, earlier) };
};

/** What is in a bowl before its own lines, once the bowls that it is made out of are solved. */
const heldBefore = ({ bowls, plan, repeats }: Asked): Held | undefined => {
  if (plan.more !== undefined) return heldMore(bowls, plan, plan.more);
  if (repeats === undefined) return undefined;
  if ('kind' in repeats) return unheld(repeats);
  const { earlier, mixed } = repeats;
  const held = repeated(bowls, plan, { bowls: mixed, source: mixed.cores.get(earlier.bowl), share: earlier.share });
  return { ...held, again: earlier };
};

/** The strength of what comes out of another bowl of the visit follows that bowl. */
const withOuts = (bowls: VisitBowls, parts: readonly Part[]): readonly Part[] => {
  if (!parts.some(({ out }) => out !== undefined)) return parts;
  return parts.map((part) => {
    if (part.out === undefined || !bowls.plan.bowls.has(part.out)) return part;
    const ready = bowls.cores.get(part.out)?.ready;
    return { ...part, strength: ready && inMillionths(ready) };
  });
};

const TOTALS = ['total', 'claim'] as const;

/** The total that a bowl's line sets and the one that it claims; a figure that is no weight is a problem. */
const saidOfBowl = (bowls: VisitBowls, plan: BowlPlan, problems: BowlProblem[]): BowlSaid => {
  const { name, place, bowl } = plan;
  const said: { -readonly [key in keyof BowlSaid]: BowlSaid[key] } = { name, place };
  if (bowl === undefined) return said;
  for (const key of TOTALS) {
    const amount = bowl.fact[key];
    if (amount === undefined) continue;
    const figure = saidOf(bowls, bowl.line, amount);
    if ('kind' in figure) problems.push(figure);
    else said[key] = figure;
  }
  return said;
};

const solvePlan = (working: Working, { bowls, plan }: Asked, held: Held | undefined): Core => {
  const { bowl, plus } = plan;
  // A bowl that could not be found again holds nothing, whatever came on top.
  if (held !== undefined && held.problems.length > 0) return empty(plan, held.problems);
  const typed: Typed[] = [];
  if (bowl !== undefined) for (const part of bowl.fact.parts) typed.push(typedPart(part, bowls.visit, bowl.line, true));
  for (const { fact, line } of plus) typed.push(typedPart(fact, bowls.visit, line, false));
  const before = held?.parts ?? [];
  const resolved = resolveParts(typed, settingOf(working, bowls), before);
  const parts = withOuts(bowls, before.length === 0 ? resolved.parts : before.concat(resolved.parts));
  const problems = [...resolved.problems];
  const said = saidOfBowl(bowls, plan, problems);
  const solved: { -readonly [key in keyof Core]: Core[key] } = solveBowl(said, { parts, problems }, bowls.salon);
  if (held === undefined) return solved;
  // What is missing in the bowl that is repeated is said there, once.
  if (held.open) solved.problems = solved.problems.filter(({ kind }) => kind !== 'missing-weight');
  if (held.again !== undefined) solved.again = held.again;
  return solved;
};

/** A bowl to solve, and what it repeats. */
type Asked = { readonly bowls: VisitBowls; readonly plan: BowlPlan; readonly repeats: Repeated | undefined };

type Source = Pick<Asked, 'bowls' | 'plan'>;

const addSource = (sources: Source[], bowls: VisitBowls, name: string | undefined): void => {
  const plan = name === undefined ? undefined : bowls.plan.bowls.get(name);
  if (plan !== undefined) sources.push({ bowls, plan });
};

/** The bowls that a bowl is made out of as its own lines say. */
const sourcesOf = ({ bowls, plan, repeats }: Asked): Source[] => {
  const { bowl, more, plus } = plan;
  const sources: Source[] = [];
  if (more !== undefined) addSource(sources, bowls, more.of);
  else if (repeats !== undefined && 'mixed' in repeats) addSource(sources, repeats.mixed, repeats.earlier.bowl);
  for (const { out } of bowl?.fact.parts ?? []) addSource(sources, bowls, out && bowlName(out));
  for (const { fact } of plus) addSource(sources, bowls, fact.out && bowlName(fact.out));
  return sources;
};

/**
 * A bowl while those that it is made out of are solved. `number` counts the bowls as they were come by; `low` is the
 * earliest of those open that it leads back to.
 */
type Open = Asked & {
  readonly number: number;
  low: number;
  readonly sources: Source[];
  next: number;
  isOfItself: boolean;
  held: Held | undefined;
  isHeld: boolean;
};

/** Solves a bowl whose sources are solved, or says of a whole round of them that each is made out of the others. */
const settle = (working: Working, round: readonly Open[]): void => {
  const [first] = round;
  if (first !== undefined && round.length === 1 && !first.isOfItself) {
    first.bowls.cores.set(first.plan.name, solvePlan(working, first, first.held));
    return;
  }
  const { on, problem } = circleOf(round.map(({ plan }) => plan));
  for (const { bowls, plan } of round) bowls.cores.set(plan.name, empty(plan, plan === on ? [problem] : []));
};

/**
 * One bowl of a visit. It is solved once, after the bowls that it is made out of; bowls that are made out of each other
 * hold nothing (Tarjan, "Depth-first search and linear graph algorithms", 1972: the same rounds wherever one begins). What
 * waits is a list and not the program's stack: a chain may be as long as the notes.
 */
export const coreOfPlan = (working: Working, bowls: VisitBowls, plan: BowlPlan): Core => {
  const done = bowls.cores.get(plan.name);
  if (done !== undefined) return done;
  const open = new Map<BowlPlan, Open>();
  const path: Open[] = [];
  const come: Open[] = [];
  const enter = (source: Source): void => {
    const asked: Asked = { ...source, repeats: repeatedBy(working, source.bowls, source.plan) };
    const number = open.size;
    const one: Open = {
      ...asked,
      number,
      low: number,
      sources: sourcesOf(asked),
      next: 0,
      isOfItself: false,
      held: undefined,
      isHeld: false,
    };
    open.set(one.plan, one);
    path.push(one);
    come.push(one);
  };
  enter({ bowls, plan });
  for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
    const source = top.sources[top.next++];
    if (source !== undefined) {
      if (source.bowls.cores.has(source.plan.name)) continue;
      const known = open.get(source.plan);
      if (known === undefined) enter(source);
      else if (known === top) top.isOfItself = true;
      else top.low = Math.min(top.low, known.number);
    } else if (!top.isHeld) {
      // What is repeated may come out of bowls that this visit mixes as well, and then it comes out of those.
      top.held = heldBefore(top);
      top.isHeld = true;
      top.next--;
      for (const { out } of top.held?.parts ?? []) addSource(top.sources, top.bowls, out);
    } else {
      path.pop();
      const before = path.at(-1);
      if (before !== undefined) before.low = Math.min(before.low, top.low);
      if (top.low < top.number) continue;
      const round = come.splice(come.lastIndexOf(top));
      settle(working, round);
      for (const one of round) open.delete(one.plan);
    }
  }
  return bowls.cores.get(plan.name) as Core;
};

/** One bowl of a visit by its name. Undefined when there is none. */
export const coreOf = (working: Working, bowls: VisitBowls, name: string): Core | undefined => {
  const plan = bowls.plan.bowls.get(name);
  return plan && coreOfPlan(working, bowls, plan);
};
