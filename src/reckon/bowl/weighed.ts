import { type Exact, equal, sum } from '../../text/exact.ts';
import { joinSpans } from '../../text/span.ts';
import { placeOf } from '../cite.ts';
import type { BowlProblem, BowlReckoned, Portion } from '../model.ts';
import { listed } from '../say.ts';
import { type Core, settingOf, type VisitBowls, type Working } from './cores.ts';
import { type Part, typedPart } from './part.ts';
import type { BowlPlan } from './plan.ts';
import { resolveParts } from './portions.ts';

/** What the scales said of a bowl, where a `weighed` line stands. */
export type Weighing = {
  readonly weighed: BowlReckoned['weighed'];
  /** What stood on the scales and the bowl's own lines do not hold. */
  readonly others: readonly Part[];
  readonly problems: readonly BowlProblem[];
};

const NO_OTHERS: readonly Part[] = [];
const UNWEIGHED: Weighing = { weighed: undefined, others: NO_OTHERS, problems: [] };

const sameStrength = (a: Exact | undefined, b: Exact | undefined): boolean =>
  a !== undefined && b !== undefined && equal(a, b);

const NOWHERE = -1;

/** Which of the portions still free a weighed part speaks of: by its label, by its product, by its strength. */
const matchOf = ({ label, item, shade, role, strength }: Part, free: ReadonlyMap<number, Portion>): number => {
  const find = (fits: (portion: Portion) => boolean): number => {
    for (const [index, portion] of free) if (fits(portion)) return index;
    return NOWHERE;
  };
  const byLabel = find((portion) => portion.label === label);
  if (byLabel !== NOWHERE) return byLabel;
  if (item !== undefined) return shade === undefined ? find((portion) => portion.item === item) : NOWHERE;
  if (role !== 'developer') return NOWHERE;
  return find((portion) => portion.role === 'developer' && sameStrength(portion.strength, strength));
};

/** The portions as parts of a bowl, so that a strength on the scales means the developer it means in the bowl. */
const asParts = (portions: readonly Portion[]): Part[] =>
  portions.map((portion) => ({
    component: portion.component,
    place: portion.place,
    role: portion.role,
    item: portion.item,
    label: portion.label,
    shade: portion.shade,
    strength: portion.strength,
    about: portion.about,
    grams: undefined,
    parts: undefined,
    how: undefined,
    ratio: undefined,
    blend: undefined,
    out: undefined,
    inLine: true,
    repeated: true,
    lotOf: portion.lotOf,
  }));

/** Sets what the scales said on each portion of a bowl. A single weight without a name is the whole bowl's. */
export const weighBowl = (working: Working, bowls: VisitBowls, plan: BowlPlan, core: Core): Weighing => {
  const [first] = plan.weighed;
  const last = plan.weighed.at(-1);
  if (first === undefined || last === undefined) return UNWEIGHED;
  const { portions } = core;
  const typed = plan.weighed.map(({ fact, line }) => typedPart(fact, bowls.visit, line, false));
  const { parts, problems: reading } = resolveParts(typed, settingOf(working, bowls), asParts(portions));
  const whole = first.line === last.line ? joinSpans(first.fact.at, last.fact.at) : first.fact.at;
  const place = placeOf(bowls.visit, first, whole);
  const nameless = parts.every(({ label }) => label === '');
  const [only] = parts;
  if (nameless && parts.length === 1 && portions.length !== 1 && only?.grams !== undefined)
    return { weighed: { total: only.grams, place, parts: [] }, others: NO_OTHERS, problems: [] };
  const free = new Map(portions.entries());
  const problems = reading.filter(
    ({ kind, near }) =>
      kind === 'unknown-shade' || kind === 'shade-of-product' || (kind === 'unknown-name' && near !== undefined),
  );
  const quiet = problems.length > 0 || core.problems.length > 0 || portions.length === 0;
  const inOrder = nameless && parts.length === portions.length;
  const others: Part[] = [];
  for (const [order, part] of parts.entries()) {
    const index = inOrder ? order : matchOf(part, free);
    const portion = free.get(index);
    if (portion !== undefined) {
      free.delete(index);
      if (part.grams !== undefined) portion.weighed = part.grams;
      else if (!quiet && part.component.amount === undefined)
        problems.push({
          kind: 'disagree',
          place: part.place,
          message: `The scales' weight of ${part.label || 'a part'} is not given.`,
          todo: `Write its grams, as in \`weighed ${core.name} 41 ${part.label || 'clay'}\`.`,
          also: [{ place: core.place, says: 'what it holds' }],
        });
      continue;
    }
    if (part.item !== undefined && part.grams !== undefined) others.push(part);
    if (!quiet)
      problems.push({
        kind: 'disagree',
        place: part.place,
        message: `The scales weighed ${part.label || 'a part without a name'}, and bowl ${core.name} holds ${listed(portions.map(({ label }) => label))}.`,
        todo: `Write a name that bowl ${core.name} holds, or add it with \`plus ${core.name}\`.`,
        also: [{ place: core.place, says: 'what it holds' }],
      });
  }
  const held = portions.flatMap(({ label, weighed }) => (weighed === undefined ? [] : [{ label, weight: weighed }]));
  const total = sum(held.map(({ weight }) => weight));
  return { weighed: held.length === 0 ? undefined : { total, place, parts: held }, others, problems };
};

/** A portion as it stood on the scales in place of what was meant. */
const asWeighed = (portion: Portion, weight: Exact): Portion => ({ ...portion, weight, shown: weight, about: false });

const portionOf = ({ component, place, role, item, label, shade, strength, grams }: Part): Portion => ({
  component,
  place,
  role,
  item,
  label,
  shade,
  weight: grams,
  shown: grams,
  strength,
  typed: true,
  about: false,
  ...(grams !== undefined && { weighed: grams }),
  cost: undefined,
});

/**
 * The portions that a bowl really held: each with its weight on the scales, where they said one. Something else on the
 * scales stands in for the only portion of its role that they did not weigh (`dev-9` for `dev-6`); with none, or several
 * to choose from, it came besides. The very portions where the scales said nothing of them.
 */
export const heldPortions = (portions: readonly Portion[], { others }: Weighing): readonly Portion[] => {
  if (others.length === 0 && portions.every(({ weighed }) => weighed === undefined)) return portions;
  const held = portions.map((portion) =>
    portion.weighed === undefined ? portion : asWeighed(portion, portion.weighed),
  );
  for (const other of others) {
    const free = held.filter(({ role, weighed }) => role === other.role && weighed === undefined);
    const [only] = free;
    if (only !== undefined && free.length === 1) held[held.indexOf(only)] = portionOf(other);
    else held.push(portionOf(other));
  }
  return held;
};
