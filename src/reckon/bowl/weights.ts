import { add, div, type Exact, equal, exactOf, mul, neg, ONE, sign, ZERO } from '../../text/exact.ts';
import { type Equation, solveLinear } from './linear.ts';
import type { Part, RatioSaid, Said } from './part.ts';

type Weight = Exact | undefined;

/** A fact that the weights do not keep to: what it says, and what the rest of the note comes to. */
export type Breach =
  /** Grams of these parts against a ratio of the grams of base; `inParts`: both in parts of the bowl. */
  | {
      readonly kind: 'ratio';
      readonly ratio: RatioSaid;
      readonly on: readonly Part[];
      readonly bases: readonly Part[];
      readonly base: Weight;
      readonly weight: Weight;
      readonly inParts: boolean;
    }
  | { readonly kind: 'total'; readonly total: Said; readonly sum: Weight }
  | { readonly kind: 'below-nought'; readonly part: Part; readonly weight: Exact };

/** Weights of all parts, in grams; undefined where the facts leave them open. */
export type Weights = {
  readonly weights: readonly Weight[];
  readonly breaches: readonly Breach[];
  /** The ratio that stood in for what the note leaves out: the mix line of the bases. */
  readonly assumed: { readonly ratio: Exact; readonly on: number } | undefined;
};

/** A ratio and the parts whose weights together it speaks of. */
type Ratio = { readonly on: readonly number[]; readonly value: Exact; readonly said: RatioSaid };

const indexesOf = (parts: readonly Part[], fits: (part: Part) => boolean): number[] => {
  const found: number[] = [];
  parts.forEach((part, index) => {
    if (fits(part)) found.push(index);
  });
  return found;
};

/** Which parts a ratio is reckoned on: the bases; what is taken out of a bowl only when there is nothing else. */
export const basesOf = (parts: readonly Part[]): number[] => {
  const found = indexesOf(parts, ({ role, ratio }) => role === 'base' || (role === 'unknown' && ratio === undefined));
  return found.length > 0 ? found : indexesOf(parts, ({ role }) => role === 'bowl');
};

/** Ratios by the parts they speak of. One typed after a base speaks of all developers together. */
export const ratiosOf = (parts: readonly Part[]): readonly Ratio[] => {
  if (!parts.some(({ ratio }) => ratio !== undefined)) return [];
  const developers = indexesOf(parts, ({ role }) => role === 'developer');
  return parts.flatMap(({ ratio, role }, index): Ratio[] => {
    if (ratio === undefined) return [];
    if (role !== 'base') return [{ on: [index], value: ratio.value, said: ratio }];
    return developers.length === 0 ? [] : [{ on: developers, value: ratio.value, said: ratio }];
  });
};

/** The one ratio that the mix lines of all bases give, for a developer of which the note says nothing else. */
const assumedRatio = (parts: readonly Part[], ratios: readonly Ratio[]): Weights['assumed'] => {
  const open = indexesOf(
    parts,
    ({ role, grams, parts: share }) => role === 'developer' && grams === undefined && share === undefined,
  );
  const [on] = open;
  if (on === undefined || open.length > 1 || ratios.some((ratio) => ratio.on.includes(on))) return undefined;
  let shared: Weight;
  for (const { role, item } of parts) {
    if (role === 'unknown') return undefined;
    if (role !== 'base') continue;
    const mix = item?.mix?.ratio;
    if (mix === undefined || mix.to !== undefined) return undefined;
    const ratio = div(exactOf(mix.developer), exactOf(mix.colour));
    if (shared !== undefined && !equal(shared, ratio)) return undefined;
    shared = ratio;
  }
  return shared && { ratio: shared, on };
};

const chosen = (parts: readonly Part[], indexes: readonly number[]): Part[] =>
  parts.filter((_, index) => indexes.includes(index));

/** Each part by itself: enough for a bowl whose weights are typed but for developers that have a ratio. */
const solveDirect = (
  parts: readonly Part[],
  ratios: readonly Ratio[],
  bases: readonly number[],
): Weights | undefined => {
  const weights = parts.map(({ grams }) => grams);
  const base = ratios.length === 0 ? ZERO : totalOf(weights, bases);
  if (base === undefined) return undefined;
  const breaches: Breach[] = [];
  for (const { on, value, said } of ratios) {
    const [only] = on;
    if (only === undefined || on.length > 1 || bases.includes(only)) return undefined;
    const weight = weights[only];
    const asked = mul(value, base);
    if (weight === undefined) weights[only] = asked;
    else if (!equal(weight, asked)) {
      const [own, under] = [chosen(parts, on), chosen(parts, bases)];
      breaches.push({ kind: 'ratio', ratio: said, on: own, bases: under, base, weight, inParts: false });
    }
  }
  return weights.includes(undefined) ? undefined : { weights, breaches, assumed: undefined };
};

type Fact = Equation & { readonly breach: (weights: readonly Weight[]) => Breach };

const totalOf = (weights: readonly Weight[], indexes: readonly number[]): Weight => {
  let total: Exact = ZERO;
  for (const index of indexes) {
    const weight = weights[index];
    if (weight === undefined) return undefined;
    total = add(total, weight);
  }
  return total;
};

/** What is typed of each part: grams, or so many of the bowl's common part, which is the last unknown. */
const typedFacts = (parts: readonly Part[]): Equation[] =>
  parts.flatMap(({ grams, parts: shares }, on): Equation[] => {
    if (grams !== undefined) return [{ factors: new Map([[on, ONE]]), value: grams }];
    if (shares === undefined) return [];
    return [
      {
        factors: new Map([
          [on, ONE],
          [parts.length, neg(shares)],
        ]),
        value: ZERO,
      },
    ];
  });

/** All facts as one linear system. */
const solveSystem = (
  parts: readonly Part[],
  ratios: readonly Ratio[],
  bases: readonly number[],
  said: Said | undefined,
  assumed: Weights['assumed'],
): Weights => {
  const ratioFact = (on: readonly number[], value: Exact): Equation => ({
    factors: new Map([
      ...bases.map((index) => [index, neg(value)] as const),
      ...on.map((index) => [index, ONE] as const),
    ]),
    value: ZERO,
  });
  const shares = parts.map((part) => part.parts);
  const early: Breach[] = [];
  const facts: Fact[] = [];
  for (const { on, value, said: ratio } of ratios) {
    const named = { kind: 'ratio', ratio, on: chosen(parts, on), bases: chosen(parts, bases) } as const;
    const [base, weight] = [totalOf(shares, bases), totalOf(shares, on)];
    // Parts alone already settle the proportion, whatever one part weighs.
    if (base !== undefined && weight !== undefined) {
      if (!equal(weight, mul(value, base))) early.push({ ...named, base, weight, inParts: true });
      continue;
    }
    const breach = (weights: readonly Weight[]): Breach => ({
      ...named,
      base: totalOf(weights, bases),
      weight: totalOf(weights, on),
      inParts: false,
    });
    facts.push({ ...ratioFact(on, value), breach });
  }
  if (said !== undefined) {
    const inLine = indexesOf(parts, (part) => part.inLine);
    facts.push({
      factors: new Map(inLine.map((index) => [index, ONE])),
      value: said.value,
      breach: (weights) => ({ kind: 'total', total: said, sum: totalOf(weights, inLine) }),
    });
  }
  const typed = typedFacts(parts);
  const { values, against } = solveLinear([
    ...typed,
    ...facts,
    ...(assumed ? [ratioFact([assumed.on], assumed.ratio)] : []),
  ]);
  const weights = parts.map((_, index) => values.get(index));
  const broken = facts.filter((_, index) => against.includes(index + typed.length));
  const below = parts.flatMap((part, index): Breach[] => {
    const weight = weights[index];
    if (weight === undefined || sign(weight) > 0 || part.grams !== undefined) return [];
    return [{ kind: 'below-nought', part, weight }];
  });
  const breaches = [...early, ...broken.map(({ breach }) => breach(weights)), ...below];
  // Less than nothing cannot be weighed out, so that part stays open.
  return { weights: weights.map((weight) => (weight && sign(weight) < 0 ? undefined : weight)), breaches, assumed };
};

/**
 * The weights of a bowl's parts, in grams, from all that its notes say: weights, parts, ratios and a total. The mix line
 * of the bases is taken only where the note leaves a developer open. `inFull` leaves the short way out, to compare.
 */
export const solveWeights = (parts: readonly Part[], said: Said | undefined, inFull = false): Weights => {
  const ratios = ratiosOf(parts);
  const bases = basesOf(parts);
  const plain = said === undefined && !inFull ? solveDirect(parts, ratios, bases) : undefined;
  if (plain !== undefined) return plain;
  const asTyped = solveSystem(parts, ratios, bases, said, undefined);
  if (!asTyped.weights.includes(undefined)) return asTyped;
  const assumed = assumedRatio(parts, ratios);
  return assumed === undefined ? asTyped : solveSystem(parts, ratios, bases, said, assumed);
};
