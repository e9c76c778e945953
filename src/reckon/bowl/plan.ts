import type { Stood } from '../../journal/source.ts';
import type { Visit, VisitFact } from '../../records/schema/entry.ts';
import type { Amount, Component, Name } from '../../records/schema/values.ts';
import type { Again, Bowl, Left } from '../../records/schema/visit.ts';
import { type At, joinSpans, type Place } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import type { BowlProblem } from '../model.ts';
import { firstOf, quoted } from '../say.ts';

/** A fact, or a component of one, with the line it stands on in its entry. */
export type OnLine<T = Component> = { readonly fact: T; readonly line: number };

/** All that a visit's lines say about one bowl. */
export type BowlPlan = {
  readonly name: string;
  readonly visit: Stood<Visit>;
  readonly place: Place;
  readonly bowl: OnLine<Bowl> | undefined;
  readonly again: OnLine<Again> | undefined;
  /** The bowl that this is a further mix of, and how much. */
  readonly more: { readonly of: string; readonly amount: Amount | undefined } | undefined;
  readonly plus: readonly OnLine[];
  readonly weighed: readonly OnLine[];
  readonly left: { readonly amount: Amount; readonly fate: Left['fate']; readonly place: Place } | undefined;
};

/** The bowls of one visit as its lines name them, in order, and the lines that name none of them. */
export type VisitPlan = {
  readonly bowls: ReadonlyMap<string, BowlPlan>;
  readonly home: readonly OnLine[];
  readonly problems: readonly BowlProblem[];
  /** The first bowl that a line names and the visit does not mix; empty when there is none. */
  readonly stray: string;
};

/** A bowl's name as it is compared and shown. */
export const bowlName = ({ name }: Name): string => name.toUpperCase();

/** The day of a visit; empty while it is not dated. */
export const dayOf = ({ entry }: Stood<Visit>): string => entry.date?.date ?? '';

type Draft = { -readonly [key in keyof BowlPlan]: BowlPlan[key] } & { plus: OnLine[]; weighed: OnLine[] };

type BowlWord = 'bowl' | 'again' | 'more' | 'plus' | 'weighed' | 'left' | 'home';
type BowlFact = Extract<VisitFact, { word: BowlWord }>;

const WORDS: ReadonlySet<string> = new Set<BowlWord>(['bowl', 'again', 'more', 'plus', 'weighed', 'left', 'home']);

const isOfBowl = (fact: VisitFact): fact is BowlFact => WORDS.has(fact.word);

type Planning = {
  readonly visit: Stood<Visit>;
  /** The visit's lines that speak of bowls. */
  readonly facts: readonly BowlFact[];
  readonly bowls: Map<string, Draft>;
  readonly home: OnLine[];
  readonly problems: BowlProblem[];
  stray: string;
};

const open = (
  { visit, bowls }: Planning,
  name: string,
  place: Place,
  given: Partial<Pick<Draft, 'bowl' | 'again' | 'more'>>,
): void => {
  const { bowl, again, more } = given;
  bowls.set(name, { name, visit, place, bowl, again, more, plus: [], weighed: [], left: undefined });
};

const mixedTwice = ({ visit, problems }: Planning, first: Draft, line: number, at: At): void => {
  problems.push({
    kind: 'bowl-twice',
    place: placeOf(visit, { line }, at),
    message: `Bowl ${first.name} is mixed twice in this visit; the first stands.`,
    todo: `Give the second another letter, or write \`more ${first.name}\` for the same mix.`,
    also: [{ place: first.place, says: 'the first' }],
  });
};

/** `bowl` and `again` open a bowl; an `again` beside a `bowl` of its name is a claim to compare. */
const openMixed = (planning: Planning): void => {
  const { visit, facts, bowls } = planning;
  for (const fact of facts) {
    if (fact.word !== 'bowl' && fact.word !== 'again') continue;
    const { line } = fact;
    const name = bowlName(fact.bowl);
    const draft = bowls.get(name);
    if (draft?.[fact.word] !== undefined) mixedTwice(planning, draft, line, fact.bowl.at);
    else if (fact.word === 'bowl') {
      const place = placeOf(visit, fact, joinSpans(fact.bowl.at, fact.parts.at(-1)?.at ?? fact.bowl.at));
      const bowl = { fact, line };
      if (draft === undefined) open(planning, name, place, { bowl });
      else Object.assign(draft, { bowl, place });
    } else {
      const again = { fact, line };
      if (draft === undefined) open(planning, name, placeOf(visit, fact, fact.bowl.at), { again });
      else draft.again = again;
    }
  }
};

/** The bowl that a line names; a line that names none of the visit's is reported. */
const bowlOf = (planning: Planning, name: Name, line: number): Draft | undefined => {
  const { visit, bowls } = planning;
  const named = bowlName(name);
  const found = bowls.get(named);
  if (found !== undefined) return found;
  const mixed = firstOf(bowls.keys());
  planning.stray ||= named;
  planning.problems.push({
    kind: 'no-such-bowl',
    place: placeOf(visit, { line }, name.at),
    message: `No bowl ${named} is mixed in this visit.`,
    todo:
      mixed.length > 0
        ? `Write ${quoted(mixed, 'or')}, or add the line \`bowl ${named}\`.`
        : `Add the line \`bowl ${named}\` with what is in it.`,
    near: mixed,
  });
  return undefined;
};

/** `more A` makes A2, then A3, whichever is free. */
const openMore = (planning: Planning): void => {
  const { visit, facts, bowls } = planning;
  const numbers = new Map<string, number>();
  for (const fact of facts) {
    if (fact.word !== 'more') continue;
    const { line } = fact;
    const of = bowlOf(planning, fact.bowl, line);
    if (of === undefined) continue;
    const letter = of.name.replace(/\d+$/, '');
    let number = numbers.get(letter) ?? 2;
    while (bowls.has(`${letter}${number}`)) number++;
    numbers.set(letter, number + 1);
    const more = { of: of.name, amount: fact.amount };
    open(planning, `${letter}${number}`, placeOf(visit, fact, fact.bowl.at), { more });
  }
};

/** What comes on top of a bowl, and what becomes of it. */
const addLines = (planning: Planning): void => {
  const { visit, facts, home } = planning;
  for (const fact of facts) {
    const { line } = fact;
    if (fact.word === 'plus' || fact.word === 'weighed') {
      const own = bowlOf(planning, fact.bowl, line);
      for (const part of fact.parts) own?.[fact.word].push({ fact: part, line });
    } else if (fact.word === 'left')
      for (const { bowl, amount } of fact.left) {
        const own = bowlOf(planning, bowl, line);
        const place = placeOf(visit, fact, joinSpans(bowl.at, amount.at));
        if (own !== undefined) own.left = { amount, fate: fact.fate, place };
      }
    else if (fact.word === 'home') {
      if (fact.bowl !== undefined) bowlOf(planning, fact.bowl, line);
      for (const part of fact.parts) home.push({ fact: part, line });
    }
  }
};

/** `40 from A` needs a bowl A. */
const checkOuts = (planning: Planning): void => {
  for (const { bowl, plus } of planning.bowls.values()) {
    if (bowl !== undefined)
      for (const { out } of bowl.fact.parts) if (out !== undefined) bowlOf(planning, out, bowl.line);
    for (const { fact, line } of plus) if (fact.out !== undefined) bowlOf(planning, fact.out, line);
  }
};

const planMixed = (visit: Stood<Visit>): Planning => {
  const facts = visit.entry.facts.filter(isOfBowl);
  const planning: Planning = { visit, facts, bowls: new Map(), home: [], problems: [], stray: '' };
  openMixed(planning);
  openMore(planning);
  return planning;
};

/** Sorts a visit's lines by the bowl they speak of. */
export const planBowls = (visit: Stood<Visit>): VisitPlan => {
  const planning = planMixed(visit);
  addLines(planning);
  checkOuts(planning);
  return planning;
};

const mixed = new WeakMap<Stood<Visit>, ReadonlySet<string>>();

/** The names of the bowls that a visit mixes; worked out once, as each `again` that reaches back asks for them. */
export const mixedIn = (visit: Stood<Visit>): ReadonlySet<string> => {
  let names = mixed.get(visit);
  if (names === undefined) {
    names = new Set(planMixed(visit).bowls.keys());
    mixed.set(visit, names);
  }
  return names;
};
