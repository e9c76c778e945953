import type { ClientFile, Journal } from '../../journal/journal.ts';
import type { SalonSettings } from '../../journal/salon.ts';
import type { Stood } from '../../journal/source.ts';
import type { Visit } from '../../records/schema/entry.ts';
import type { Amount } from '../../records/schema/values.ts';
import type { Again } from '../../records/schema/visit.ts';
import { div, type Exact, isZero, ONE } from '../../text/exact.ts';
import type { BowlProblem, BowlReckoned } from '../model.ts';
import { salonOf } from '../salon-of.ts';
import { type Earlier, findEarlier } from './again.ts';
import { type Solved, solveBowl } from './bowl.ts';
import { type Circled, markCircle } from './circle.ts';
import { type BowlSaid, type Part, type Parted, type Said, type Typed, typedPart } from './part.ts';
import { type BowlPlan, bowlName, dayOf, type OnLine, placeIn, planBowls, type VisitPlan } from './plan.ts';
import { resolveParts, type Setting } from './portions.ts';
import { repeatParts } from './repeat.ts';
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
  finished: readonly BowlReckoned[] | undefined;
};

/** Bowls already worked out, by visit, so that `again` solves nothing twice. */
export type BowlMemo = Map<Stood<Visit>, VisitBowls>;

/** What one working-out carries along: the journal, what is done, and the bowls on the way here. */
export type Working = {
  readonly journal: Journal;
  readonly memo: BowlMemo;
  /** The bowls on the way here, each with its position on it. */
  readonly way: Map<BowlPlan, number>;
  readonly circled: Circled;
};

/** The bowls of a visit as its lines plan them; planned once. */
export const visitBowls = (
  { journal, memo }: Pick<Working, 'journal' | 'memo'>,
  client: ClientFile,
  visit: Stood<Visit>,
  salon: SalonSettings = salonOf(journal, visit),
): VisitBowls => {
  const found = memo.get(visit);
  if (found !== undefined) return found;
  const made = { visit, client, salon, plan: planBowls(visit), cores: new Map(), finished: undefined };
  memo.set(visit, made);
  return made;
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
  const place = placeIn(visit, line, amount.at);
  const value = plainGrams(amount, salon);
  if (value === undefined) return { ...noWeight(amount), place };
  return { value, place, about: amount.about === true || amount.to !== undefined };
};

/** What a bowl holds before its `plus` lines, and the problems of that. */
type Held = Parted & { readonly again: Earlier | undefined; readonly open: boolean };

const unheld = (problem: BowlProblem): Held => ({ parts: [], problems: [problem], again: undefined, open: true });

const repeated = (
  working: Working,
  bowls: VisitBowls,
  plan: BowlPlan,
  from: { readonly bowls: VisitBowls; readonly source: Solved | undefined; readonly share: Exact },
): Pick<Held, 'parts' | 'open'> => {
  const { source } = from;
  if (source === undefined) return { parts: [], open: true };
  const parts = repeatParts(source, from.share, {
    place: plan.place,
    lotOf: from.bowls.visit === bowls.visit ? undefined : dayOf(from.bowls.visit),
    hasBowl: (name) => from.bowls === bowls || (name !== plan.name && bowls.plan.bowls.has(name)),
    bowlThen: (name) => coreOf(working, from.bowls, name),
  });
  return { parts, open: parts.length === 0 || parts.some(({ grams }) => grams === undefined) };
};

const heldMore = (working: Working, bowls: VisitBowls, plan: BowlPlan, more: NonNullable<BowlPlan['more']>): Held => {
  const source = coreOf(working, bowls, more.of);
  const said = more.amount && saidOf(bowls, plan.place.line, more.amount);
  if (said !== undefined && 'kind' in said) return unheld(said);
  const whole = source?.total;
  const share = said === undefined || whole === undefined || isZero(whole) ? ONE : div(said.value, whole);
  return { ...repeated(working, bowls, plan, { bowls, source, share }), problems: [], again: undefined };
};

const heldAgain = (working: Working, bowls: VisitBowls, plan: BowlPlan, again: OnLine<Again>): Held => {
  const earlier = findEarlier(working.journal, bowls, again.fact, again.line);
  if ('kind' in earlier) return unheld(earlier);
  const { share } = earlier;
  const then = visitBowls(working, earlier.client, earlier.visit);
  const source = coreOf(working, then, earlier.bowl);
  return { ...repeated(working, bowls, plan, { bowls: then, source, share }), problems: [], again: earlier };
};

const heldBefore = (working: Working, bowls: VisitBowls, plan: BowlPlan): Held | undefined => {
  const { bowl, again, more } = plan;
  if (more !== undefined) return heldMore(working, bowls, plan, more);
  return bowl === undefined && again !== undefined ? heldAgain(working, bowls, plan, again) : undefined;
};

/** The strength of what comes out of another bowl of the visit follows that bowl. */
const withOuts = (working: Working, bowls: VisitBowls, parts: readonly Part[]): readonly Part[] => {
  if (!parts.some(({ out }) => out !== undefined)) return parts;
  return parts.map((part) => {
    if (part.out === undefined || !bowls.plan.bowls.has(part.out)) return part;
    return { ...part, strength: coreOf(working, bowls, part.out)?.ready };
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

const solvePlan = (working: Working, bowls: VisitBowls, plan: BowlPlan): Core => {
  const { bowl, plus } = plan;
  const held = heldBefore(working, bowls, plan);
  // A bowl that could not be found again holds nothing, whatever came on top.
  if (held !== undefined && held.problems.length > 0) return empty(plan, held.problems);
  const typed: Typed[] = [];
  const { file } = bowls.visit;
  if (bowl !== undefined) for (const part of bowl.fact.parts) typed.push(typedPart(part, file, bowl.line, true));
  for (const { fact, line } of plus) typed.push(typedPart(fact, file, line, false));
  const before = held?.parts ?? [];
  const resolved = resolveParts(typed, settingOf(working, bowls), before);
  const parts = withOuts(working, bowls, before.length === 0 ? resolved.parts : before.concat(resolved.parts));
  const problems = [...resolved.problems];
  const said = saidOfBowl(bowls, plan, problems);
  const solved: { -readonly [key in keyof Core]: Core[key] } = solveBowl(said, { parts, problems }, bowls.salon);
  if (held === undefined) return solved;
  // What is missing in the bowl that is repeated is said there, once.
  if (held.open) solved.problems = solved.problems.filter(({ kind }) => kind !== 'missing-weight');
  if (held.again !== undefined) solved.again = held.again;
  return solved;
};

type Asked = { readonly bowls: VisitBowls; readonly plan: BowlPlan };

/** The bowls that a bowl is made out of, in the order in which solving it asks for them. */
const sourcesOf = (working: Working, bowls: VisitBowls, plan: BowlPlan): Asked[] => {
  const { bowl, again, more, plus } = plan;
  const sources: Asked[] = [];
  const ask = (of: VisitBowls, name: string | undefined): void => {
    const source = name === undefined ? undefined : of.plan.bowls.get(name);
    if (source !== undefined) sources.push({ bowls: of, plan: source });
  };
  if (more !== undefined) ask(bowls, more.of);
  else if (bowl === undefined && again !== undefined) {
    const earlier = findEarlier(working.journal, bowls, again.fact, again.line);
    if (!('kind' in earlier)) ask(visitBowls(working, earlier.client, earlier.visit), earlier.bowl);
  }
  for (const { out } of bowl?.fact.parts ?? []) ask(bowls, out && bowlName(out));
  for (const { fact } of plus) ask(bowls, fact.out && bowlName(fact.out));
  return sources;
};

const solveOnce = (working: Working, bowls: VisitBowls, plan: BowlPlan): Core => {
  const { way, circled } = working;
  way.set(plan, way.size);
  const solved = circled.has(plan) ? undefined : solvePlan(working, bowls, plan);
  way.delete(plan);
  const problem = circled.get(plan);
  const core = solved === undefined || circled.has(plan) ? empty(plan, problem === undefined ? [] : [problem]) : solved;
  bowls.cores.set(plan.name, core);
  return core;
};

const roundFrom = (way: ReadonlyMap<BowlPlan, number>, since: number): BowlPlan[] => [...way.keys()].slice(since);

/**
 * One bowl of a visit that is not already being solved. It is solved once, after the bowls that it is made out of. These
 * wait in a list and not on the program's stack: a chain may be as long as the notes.
 */
export const coreOfPlan = (working: Working, bowls: VisitBowls, plan: BowlPlan): Core => {
  const done = bowls.cores.get(plan.name);
  if (done !== undefined) return done;
  const { way, circled } = working;
  type Waiting = Asked & { readonly sources: Asked[]; next: number };
  const waiting: Waiting[] = [];
  const enter = (asked: Asked): void => {
    way.set(asked.plan, way.size);
    waiting.push({ ...asked, sources: sourcesOf(working, asked.bowls, asked.plan), next: 0 });
  };
  enter({ bowls, plan });
  for (let top = waiting.at(-1); top !== undefined; top = waiting.at(-1)) {
    const source = top.sources[top.next++];
    if (source === undefined) {
      waiting.pop();
      way.delete(top.plan);
      solveOnce(working, top.bowls, top.plan);
    } else if (!source.bowls.cores.has(source.plan.name)) {
      const since = way.get(source.plan);
      if (since === undefined) enter(source);
      else markCircle(roundFrom(way, since), circled);
    }
  }
  return bowls.cores.get(plan.name) ?? solveOnce(working, bowls, plan);
};

/** One bowl of a visit by its name. Undefined when there is none, or while it is being solved: it is made of itself. */
export const coreOf = (working: Working, bowls: VisitBowls, name: string): Core | undefined => {
  const plan = bowls.plan.bowls.get(name);
  if (plan === undefined) return undefined;
  const since = working.way.get(plan);
  if (since === undefined) return coreOfPlan(working, bowls, plan);
  markCircle(roundFrom(working.way, since), working.circled);
  return undefined;
};
