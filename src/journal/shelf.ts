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
import type { Stood } from './stood.ts';

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

/** Everything on the shelf by its name. */
export type Shelf = ReadonlyMap<string, ShelfItem> & {
  /** Where whoever asks is watched: the outlines, asked for as such. */
  readonly outlines?: readonly Outline[];
  /** Those of its developers alone. */
  readonly developers?: readonly Outline[];
};

/** What an item is called and what it is: all that is asked of things of the shelf that a note does not name. */
export type Outline = Pick<ShelfItem, 'name' | 'full' | 'kind' | 'strength' | 'uses'> & {
  /** The names of its measures. */
  readonly measures: Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>;
};

const outlined = new WeakMap<Shelf, readonly Outline[]>();

/** The outlines of all that is on a shelf, in its order; worked out once a shelf. */
export const outlinesOf = (shelf: Shelf): readonly Outline[] => {
  if (shelf.outlines !== undefined) return shelf.outlines;
  let outlines = outlined.get(shelf);
  if (outlines === undefined) {
    outlines = [...shelf.values()].map(({ name, full, kind, strength, uses, measures }) => ({
      name,
      full,
      kind,
      strength,
      uses,
      measures: new Set(measures.keys()),
    }));
    outlined.set(shelf, outlines);
  }
  return outlines;
};

const developers = new WeakMap<readonly Outline[], readonly Outline[]>();

/** The outlines of the developers on a shelf, in its order: a bare strength and a colour's own developer are of these. */
export const developersOf = (shelf: Shelf): readonly Outline[] => {
  if (shelf.developers !== undefined) return shelf.developers;
  const outlines = outlinesOf(shelf);
  let own = developers.get(outlines);
  if (own === undefined) {
    own = outlines.filter(({ kind }) => kind === 'developer');
    developers.set(outlines, own);
  }
  return own;
};

const outlineText = ({ strength, measures, ...outline }: Outline): string =>
  JSON.stringify([outline, strength?.value, strength?.unit, [...measures.keys()]]);

/** Whether two shelves have the same outlines, in the same order. */
export const sameOutlines = (a: readonly Outline[], b: readonly Outline[]): boolean =>
  a === b || (a.length === b.length && a.every((one, index) => outlineText(one) === outlineText(b[index] as Outline)));

const last = <W extends ProductFact['word']>(
  facts: readonly ProductFact[],
  word: W,
): Extract<ProductFact, { word: W }> | undefined => all(facts, word).at(-1);

const all = <W extends ProductFact['word']>(
  facts: readonly ProductFact[],
  word: W,
): Extract<ProductFact, { word: W }>[] =>
  facts.filter((fact): fact is Extract<ProductFact, { word: W }> => fact.word === word);

const items = new WeakMap<Stood, ShelfItem>();

/** The shelf item that a range or product entry describes, one object an entry; undefined while it has no name. */
export const shelfItem = (stood: Stood<Range> | Stood<Product>): ShelfItem | undefined => {
  const known = items.get(stood);
  if (known !== undefined) return known;
  const item = itemOf(stood);
  if (item !== undefined) items.set(stood, item);
  return item;
};

const itemOf = (stood: Stood<Range> | Stood<Product>): ShelfItem | undefined => {
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
