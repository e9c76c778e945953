import type { SalonSettings } from '../../journal/salon.ts';
import {
  add,
  div,
  type Exact,
  equal,
  exact,
  isZero,
  largestRemainder,
  mul,
  ONE,
  roundTo,
  ZERO,
} from '../../text/exact.ts';
import type { Place } from '../../text/span.ts';
import { readyForUse } from '../../trade/strength.ts';
import type { BowlProblem, Portion } from '../model.ts';
import { figure, grams, listed, ratioText } from '../say.ts';
import { breachProblem, isNear, isSlight } from './disagreement.ts';
import { inMillionths } from './finest.ts';
import type { BowlSaid, Part, Parted, PortionDraft } from './part.ts';
import { solveWeights, type Weights } from './weights.ts';

type Weight = Exact | undefined;

/** One bowl worked out by itself, without prices and without what became of it. */
export type Solved = {
  readonly name: string;
  readonly place: Place;
  /** Until the bowl is finished without what was weighed, bowls they come out of, and cost. */
  readonly portions: readonly PortionDraft[];
  /** The bowl that each portion comes out of, if any. */
  readonly outs: readonly (string | undefined)[];
  readonly total: Weight;
  readonly shownTotal: Weight;
  readonly base: Weight;
  readonly developer: Weight;
  readonly ratio: Weight;
  readonly ratioPlace: Place | undefined;
  readonly ready: Weight;
  readonly about: boolean;
  readonly problems: readonly BowlProblem[];
};

const portionOf = (part: Part, weight: Weight, about: boolean, how: string | undefined): PortionDraft => {
  const typed = part.grams !== undefined && !part.repeated;
  const portion: PortionDraft = {
    component: part.component,
    place: part.place,
    role: part.role,
    item: part.item,
    label: part.label,
    shade: part.shade,
    weight,
    shown: undefined,
    strength: part.strength,
    typed,
    // What is reckoned from a hedged figure is no surer than it.
    about: part.about || (about && !typed),
    cost: undefined,
    ...(part.lotOf !== undefined && { lotOf: part.lotOf }),
  };
  if (how !== undefined) portion.how = how;
  return portion;
};

/** The portions of a part: two of a blend, each with its own strength. */
const addPortions = (portions: PortionDraft[], part: Part, weight: Weight, about: boolean, ratio: Weight): void => {
  const how = part.how ?? (ratio && `${ratioText(ratio)} from its mix line`);
  if (part.blend === undefined) portions.push(portionOf(part, weight, about, how));
  else
    for (const { item, label, strength, share } of part.blend)
      portions.push({
        ...portionOf(part, weight && mul(weight, share), about, how),
        item,
        label,
        strength,
        typed: false,
      });
};

const allOf = (weights: readonly Weight[]): Weight => {
  let total: Weight;
  for (const weight of weights) {
    if (weight === undefined) return undefined;
    total = total === undefined ? weight : add(total, weight);
  }
  return total;
};

/** Whether the scales can show a weight as it is; without a division where they show whole grams. */
const isMultiple = (weight: Exact, step: Exact): boolean =>
  equal(step, ONE) ? weight.d === 1 : equal(roundTo(weight, step), weight);

/** Sets the weights as the scales can show them, adding up to the total as the scales can show it. */
const setShown = (portions: readonly PortionDraft[], total: Weight, step: Exact): void => {
  if (portions.every(({ weight }) => weight !== undefined && isMultiple(weight, step))) {
    for (const portion of portions) portion.shown = portion.weight;
    return;
  }
  const weights = portions.map(({ weight }) => weight ?? ZERO);
  const shown = total === undefined ? undefined : largestRemainder(weights, total, step);
  portions.forEach((portion, index) => {
    portion.shown = shown === undefined ? portion.weight && roundTo(portion.weight, step) : shown[index];
  });
};

/** The weight that would settle the bowl: of the first part that is open, or of any where all are. */
const missingWeight = (said: BowlSaid, first: Part, open: readonly Part[], all: readonly Part[]): BowlProblem => {
  const { label } = first;
  if (open.length === all.length)
    return {
      kind: 'missing-weight',
      place: said.place,
      message: `There is no weight in bowl ${said.name}.`,
      todo: `Write the grams of ${label}, or of the whole, as in \`bowl ${said.name} ${grams(said.claim?.value ?? exact(90))} of\`.`,
    };
  return {
    kind: 'missing-weight',
    place: first.place,
    message: `Bowl ${said.name} does not say how much ${listed(open.map((part) => part.label))}.`,
    todo:
      first.role === 'developer'
        ? `Write grams before \`${label}\`, or a ratio after it, as in \`1:1.5\`.`
        : `Write grams before \`${label}\`.`,
  };
};

/** The total as typed against the parts of the line that claims it, or of the whole bowl. */
const claimProblem = (
  said: BowlSaid,
  parts: readonly Part[],
  weights: readonly Weight[],
  step: Exact,
): BowlProblem[] => {
  const { claim, name } = said;
  if (claim === undefined) return [];
  const own = allOf(weights.filter((_, index) => parts[index]?.inLine));
  if (own === undefined) return [];
  const about = claim.about || parts.some((part) => part.about);
  const fits = (total: Weight): boolean =>
    total !== undefined && isNear(roundTo(total, step), claim.value, step, about);
  if (fits(own) || fits(allOf(weights))) return [];
  const message = `Bowl ${name} comes to ${grams(own)}, and the note says ${grams(claim.value)}.`;
  const todo = `Write \`= ${figure(roundTo(own, step))}\`, or put the amount right that is wrong.`;
  return [{ kind: 'claim', place: claim.place, message, todo }];
};

/** Problems that leave the weights themselves in doubt, so that nothing more is said of them. */
const DOUBTS: ReadonlySet<BowlProblem['kind']> = new Set([
  'unknown-name',
  'no-density',
  'unknown-measure',
  'missing-weight',
  'outside-blend',
]);

const weightProblems = (said: BowlSaid, parts: readonly Part[], solution: Weights, step: Exact): BowlProblem[] => {
  const { weights, breaches } = solution;
  const breach = breaches.find((one) => !isSlight(one, parts, step));
  if (breach !== undefined) return [breachProblem(said, breach)];
  const first = parts.find((_, index) => weights[index] === undefined);
  if (first === undefined) return claimProblem(said, parts, weights, step);
  const open = parts.filter((_, index) => weights[index] === undefined);
  return [missingWeight(said, first, open, parts)];
};

/** Per cent of peroxide in all portions together; undefined while a strength or a weight is not known. */
const readyOf = (portions: readonly Portion[], total: Weight): Weight => {
  if (total === undefined || isZero(total)) return undefined;
  const strong: { weight: Exact; percent: Exact }[] = [];
  for (const { weight, strength: own, from } of portions) {
    const strength = from?.ready ? inMillionths(from.ready) : own;
    if (weight === undefined || strength === undefined) return undefined;
    if (!isZero(strength)) strong.push({ weight, percent: strength });
  }
  return readyForUse(strong, total);
};

/** Grams of all portions of a role; undefined when there is none, or one has no weight. */
const sumOf = (portions: readonly Portion[], role: Portion['role']): Weight => {
  let total: Weight;
  for (const portion of portions) {
    if (portion.role !== role) continue;
    if (portion.weight === undefined) return undefined;
    total = total === undefined ? portion.weight : add(total, portion.weight);
  }
  return total;
};

/** What the weights of a bowl's portions come to, in grams: base, developer, their ratio, per cent of peroxide. */
export type Figures = {
  readonly base: Weight;
  readonly developer: Weight;
  readonly ratio: Weight;
  readonly ready: Weight;
};

/** The figures of some portions that weigh `total` together. */
export const figuresOf = (portions: readonly Portion[], total: Weight): Figures => {
  const base = sumOf(portions, 'base');
  const developer = sumOf(portions, 'developer');
  const ratio = base && developer && !isZero(base) ? div(developer, base) : undefined;
  return { base, developer, ratio, ready: readyOf(portions, total) };
};

/** Where a ratio is typed, else where the developer is. */
const ratioPlaceOf = (parts: readonly Part[]): Place | undefined => {
  for (const { ratio } of parts) if (ratio !== undefined) return ratio.place;
  return parts.find(({ role }) => role === 'developer')?.place;
};

/** Works one bowl out: weights, what the scales show, strength ready for use, and what does not agree. */
export const solveBowl = (
  said: BowlSaid,
  { parts, problems: reading }: Parted,
  { scale }: Pick<SalonSettings, 'scale'>,
): Solved => {
  const solution = solveWeights(parts, said.total);
  const doubtful = reading.some(({ kind }) => DOUBTS.has(kind));
  const problems = doubtful ? reading : reading.concat(weightProblems(said, parts, solution, scale));
  const about = said.total?.about === true || parts.some((part) => part.about);
  const { weights, assumed } = solution;
  const portions: PortionDraft[] = [];
  const outs: (string | undefined)[] = [];
  parts.forEach((part, index) => {
    addPortions(portions, part, weights[index], about, assumed?.on === index ? assumed.ratio : undefined);
    while (outs.length < portions.length) outs.push(part.out);
  });
  const total = allOf(weights);
  setShown(portions, total, scale);
  const { base, developer, ratio, ready } = figuresOf(portions, total);
  return {
    name: said.name,
    place: said.place,
    portions,
    outs,
    total,
    shownTotal: total && (isMultiple(total, scale) ? total : roundTo(total, scale)),
    base,
    developer,
    ratio,
    ratioPlace: ratioPlaceOf(parts),
    ready,
    about,
    problems,
  };
};
