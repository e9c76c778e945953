import type { Product, ProductFact, Range } from '../records/schema/entry.ts';
import type {
  Dose,
  Keeps,
  Lift,
  Mix,
  Over,
  Pack,
  Reorder,
  Scalp,
  StrengthLine,
  TimeLine,
} from '../records/schema/shelf.ts';
import type { Amount, Strength } from '../records/schema/values.ts';
import type { Kind } from '../trade/kinds.ts';
import type { Stood } from './source.ts';

/** A range or product as the reckoning asks for it. Facts keep their line, so that a finding can point at them. */
export type ShelfItem = {
  readonly name: string;
  readonly full: string;
  readonly kind: Kind | undefined;
  /** A range: every use needs a shade. */
  readonly ranged: boolean;
  /** An additive that counts in the ratio. */
  readonly inRatio: boolean;
  /** A developer's own strength. */
  readonly strength: Strength | undefined;
  readonly stood: Stood<Range> | Stood<Product>;
  /** Absent: no mix line. Without `ratio`: used as it is. */
  readonly mix: Mix | undefined;
  /** Its own developers, by name. */
  readonly uses: readonly string[];
  readonly strengths: StrengthLine | undefined;
  readonly times: readonly TimeLine[];
  readonly lift: Lift | undefined;
  /** Tone by digit or letter, upper case. */
  readonly tones: ReadonlyMap<string, string>;
  /** Shades that go by a name. */
  readonly shades: ReadonlySet<string>;
  readonly packs: readonly Pack[];
  readonly reorder: Reorder | undefined;
  /** Grams a millilitre. */
  readonly density: number | undefined;
  readonly keeps: Keeps | undefined;
  readonly measures: ReadonlyMap<string, Amount>;
  readonly scalp: Scalp | undefined;
  readonly dose: Dose | undefined;
  /** The darkest hair it goes over. */
  readonly over: readonly Over[];
};

const last = <W extends ProductFact['word']>(
  facts: readonly ProductFact[],
  word: W,
): Extract<ProductFact, { word: W }> | undefined => all(facts, word).at(-1);

const all = <W extends ProductFact['word']>(
  facts: readonly ProductFact[],
  word: W,
): Extract<ProductFact, { word: W }>[] =>
  facts.filter((fact): fact is Extract<ProductFact, { word: W }> => fact.word === word);

/** The shelf item that a range or product entry describes; undefined while it has no name. */
export const shelfItem = (stood: Stood<Range> | Stood<Product>): ShelfItem | undefined => {
  const { entry } = stood;
  if (entry.name === undefined) return undefined;
  const { facts } = entry;
  return {
    name: entry.name.name,
    full: entry.full?.text ?? entry.name.name,
    kind: entry.type,
    ranged: entry.kind === 'range',
    inRatio: entry.kind === 'product' && entry.inRatio,
    strength: entry.kind === 'product' ? entry.strength : undefined,
    stood,
    mix: last(facts, 'mix'),
    uses: all(facts, 'uses').flatMap(({ products }) => products.map(({ name }) => name)),
    strengths: last(facts, 'strength'),
    times: all(facts, 'time'),
    lift: last(facts, 'lift'),
    tones: new Map(all(facts, 'tones').flatMap(({ tones }) => tones.map(({ digit, tone }) => [digit, tone.word]))),
    shades: new Set(all(facts, 'shades').flatMap(({ shades }) => shades.map(({ name }) => name))),
    packs: all(facts, 'pack'),
    reorder: last(facts, 'reorder'),
    density: last(facts, 'density')?.density,
    keeps: last(facts, 'keeps'),
    measures: new Map(all(facts, 'measure').map(({ measure, amount }) => [measure.name, amount])),
    scalp: last(facts, 'scalp'),
    dose: last(facts, 'dose'),
    over: all(facts, 'over'),
  };
};
