import fc from 'fast-check';
import type { z } from 'zod';
import type { BodyWord } from '../../../src/notation/words.ts';
import type { Said } from '../../../src/records/print/said.ts';
import { CLIENT_FACTS } from '../../../src/records/schema/client.ts';
import type { Fact } from '../../../src/records/schema/entry.ts';
import { PRODUCT_FACTS, SALON_FACTS, STOCK_FACTS } from '../../../src/records/schema/shelf.ts';
import { VISIT_FACTS } from '../../../src/records/schema/visit.ts';

/**
 * Facts made at random in the shape of their schema. The schema says what fields a record has and what each holds; that
 * some go only with others (`last` with minutes, a price with an amount) it does not say, so each word has that here.
 */

type Fields = { [key: string]: unknown };
type Arb = fc.Arbitrary<unknown>;

const LINES = /[\n\r\u2028\u2029\0]/g;
const text = fc
  .string({ unit: 'grapheme', maxLength: 14 })
  .map((one) => one.replace(LINES, ' ').replace(/»/g, /["“”]/.test(one) ? '' : '»'));
const trimmed = text.map((one) => one.trim()).filter((one) => one !== '' && !/[\u200b\ufeff]/.test(one));

const half = fc.integer({ min: 4, max: 40 }).map((quarters) => quarters / 4);
const figure = fc.oneof(
  fc.integer({ min: 1, max: 1200 }),
  fc.integer({ min: 1, max: 90_000 }).map((cents) => cents / 100),
  fc.integer({ min: 1, max: 9999 }).map((thousandths) => thousandths / 1000),
  fc.tuple(fc.nat(40), fc.constantFrom(1 / 3, 2 / 3, 1 / 8, 7 / 8)).map(([whole, part]) => whole + part),
);
const about = fc.option(fc.constant(true as const), { nil: undefined, freq: 5 });
const range = (of: fc.Arbitrary<number>) =>
  fc
    .tuple(of, fc.option(of, { nil: undefined, freq: 4 }))
    .map(([value, to]) => ({ value, ...(to !== undefined && to !== value && { to }) }));
const hedged = <T extends object>(of: fc.Arbitrary<T>): fc.Arbitrary<T> =>
  fc.tuple(of, about).map(([one, hedge]) => (hedge ? { ...one, about: hedge } : one));

const minute = fc.nat(1439);
const clock = hedged(
  fc.tuple(minute, fc.boolean()).map(([minutes, open]) => {
    const hour = Math.floor(minutes / 60);
    return open && hour >= 1 && hour <= 12 ? { minutes, other: (minutes + 720) % 1440 } : { minutes };
  }),
);
const relative = fc.oneof(
  fc.nat(200).map((after) => ({ after })),
  fc.nat(200).map((head) => ({ head })),
);
const date = fc
  .date({ min: new Date('1950-01-01'), max: new Date('2040-12-31'), noInvalidDate: true })
  .map((day) => day.toISOString().slice(0, 10));
const zone = fc.constantFrom('hairline', 'top', 'roots', 'ends', 'back left', 'temples', 't-section', 'full-head');
const name = fc.constantFrom('clay', 'dev-6', 'gloss', 'wren-abbott', 'зоя', 'larkfield', 'k18.2');
const bowl = fc.constantFrom('a', 'b', 't', 'b2', 'я').map((one) => ({ name: one }));
const word = fc.constantFrom('patchy', 'even', 'soft', 'dull', 'violet', 'ash', 'covered');

const component = fc
  .record(
    {
      amount: hedged(
        fc.tuple(range(figure), fc.constantFrom('', 'g', 'ml', 'p', 'drop')).map(([one, unit]) => ({ ...one, unit })),
      ),
      product: name.map((one) => ({ name: one })),
      shade: fc.constantFrom(
        { shade: '7/43', depth: 7, tones: '43' },
        { shade: '10V', depth: 10, tones: 'V' },
        { shade: '6/RV', depth: 6, tones: 'RV' },
      ),
      strength: hedged(fc.record({ value: figure, unit: fc.constantFrom('%', 'vol') })),
      ratio: hedged(fc.record({ colour: fc.integer({ min: 1, max: 3 }), developer: half })),
      lot: fc.constantFrom('K2231', '22/31-A', '7').map((one) => ({ text: one })),
      out: bowl,
    },
    { requiredKeys: ['product'] },
  )
  // A tone in letters wants its figure apart from an amount with a point in it.
  .map(({ shade, amount, ...part }) => ({
    ...part,
    ...(amount && { amount }),
    ...(shade && !(amount && shade.shade === '10V') && { shade }),
  }));

/** What the values of the records hold, by the titles of their schemas. */
const VALUES: Readonly<Record<string, Arb>> = {
  Text: trimmed.map((one) => ({ text: one })),
  Remark: text.map((one) => ({ text: one })),
  Name: name.map((one) => ({ name: one })),
  By: name.map((one) => ({ name: one })),
  Word: hedged(word.map((one) => ({ word: one }))),
  Date: date.map((one) => ({ date: one })),
  When: fc.tuple(date, fc.constantFrom(4, 7, 10)).map(([day, size]) => ({ when: day.slice(0, size) })),
  'Clock time': clock,
  'Span of clock time': fc
    .tuple(fc.oneof(clock, relative), fc.option(clock, { nil: undefined }))
    .map(([from, to]) => ({ from, ...(to && { to }) })),
  'Length of time': hedged(
    fc.tuple(range(figure), fc.constantFrom('min', 'h', 'd', 'w', 'mo')).map(([one, unit]) => ({ ...one, unit })),
  ),
  Amount: hedged(
    fc.tuple(range(figure), fc.constantFrom('g', 'ml', 'kg', 'pack')).map(([one, unit]) => ({ ...one, unit })),
  ),
  'Peroxide strength': hedged(fc.record({ value: figure, unit: fc.constantFrom('%', 'vol') })),
  'Mix ratio, colour to developer': hedged(
    fc
      .tuple(fc.integer({ min: 1, max: 3 }), half, fc.option(half, { nil: undefined }))
      .map(([colour, developer, to]) => ({
        colour,
        developer,
        ...(to !== undefined && { to }),
      })),
  ),
  Shade: fc.constantFrom({ shade: '7/43', depth: 7, tones: '43' }, { shade: '6.5/1', depth: 6.5, tones: '1' }),
  Zone: zone.map((one) => ({ zone: one })),
  'What is seen': fc.record(
    {
      zones: fc.uniqueArray(zone, { maxLength: 3 }).map((all) => all.map((one) => ({ zone: one }))),
      depth: hedged(
        fc.tuple(range(half), fc.boolean()).map(([one, plus]) => (plus ? { ...one, plus: true as const } : one)),
      ),
      grey: hedged(range(fc.integer({ min: 1, max: 100 })).map((one) => ({ ...one, unit: '%' }))),
      words: fc.array(hedged(word.map((one) => ({ word: one }))), { minLength: 1, maxLength: 3 }),
    },
    { requiredKeys: ['zones', 'words'] },
  ),
  Component: component,
};

const titleOf = (schema: z.ZodType): string => schema.meta()?.title ?? '';

type Def = {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, unknown>>;
  readonly options?: readonly z.ZodType[];
};

/** An arbitrary of what a schema holds, without places. */
const arbitraryOf = (schema: z.ZodType, key = ''): Arb => {
  const def = schema.def as unknown as Def;
  if (def.type === 'optional' && def.innerType) return fc.option(arbitraryOf(def.innerType, key), { nil: undefined });
  if (BOWLS.has(key))
    return def.type === 'array' ? fc.uniqueArray(bowl, { maxLength: 3, selector: (one) => one.name }) : bowl;
  const known = VALUES[titleOf(schema)];
  if (known !== undefined) return known;
  if (def.type === 'array' && def.element) return fc.array(arbitraryOf(def.element, key), { maxLength: 3 });
  if (def.type === 'object' && def.shape) return shapeOf(def.shape);
  if (def.type === 'literal') return fc.constantFrom(...(def.values ?? []));
  if (def.type === 'enum') return fc.constantFrom(...Object.values(def.entries ?? {}));
  if (def.type === 'union') return fc.oneof(...(def.options ?? []).map((one) => arbitraryOf(one)));
  if (def.type === 'string') return trimmed;
  if (def.type === 'boolean') return fc.boolean();
  if (def.type === 'number') return key === 'sections' ? fc.nat(60) : figure;
  throw new Error(`no values for ${key}: ${def.type}`);
};

const BOWLS: ReadonlySet<string> = new Set(['bowl', 'bowls', 'turn']);

const shapeOf = (shape: Readonly<Record<string, z.ZodType>>): fc.Arbitrary<Fields> =>
  fc
    .record(
      Object.fromEntries(
        Object.entries(shape)
          .filter(([key, one]) => key !== 'line' && key !== 'rest' && titleOf(one) !== 'Place')
          .map(([key, one]) => [key, arbitraryOf(one, key)]),
      ),
    )
    .map((fields) => Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)));

const without = (fields: Fields, ...keys: readonly string[]): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([key]) => !keys.includes(key)));
const some = (value: unknown): boolean => Array.isArray(value) && value.length > 0;
const oneOf = (fields: Fields, ...keys: readonly string[]): Fields => {
  const [, ...others] = keys.filter((key) => key in fields);
  return without(fields, ...others);
};

const words = (...all: readonly string[]): Arb => fc.constantFrom(...all).map((one) => ({ word: one }));
const as = (key: string, arb: Arb) => (fields: Fields) => arb.map((value) => ({ ...fields, [key]: value }));
const length = fc.tuple(range(figure), fc.constantFrom('mm', 'cm', 'in')).map(([one, unit]) => ({ ...one, unit }));
const share = fc.integer({ min: 1, max: 100 });
const percent = range(share).map((one) => ({ ...one, unit: '%' }));
const LOTS = fc.constantFrom('K2231', '22/31-A', '7').map((one) => ({ text: one }));
const CHANGES = fc.uniqueArray(
  fc.constantFrom(
    { words: [{ word: 'roots' }], text: 'roots' },
    { bowl: { name: 'a' }, percent: -20, words: [], text: 'A -20%' },
    { words: [{ word: 'a' }, { word: 'little' }, { word: 'cooler' }], text: 'a little cooler' },
  ),
  { maxLength: 3, selector: (one) => one.text },
);

/** What goes together on the line of a word; `undefined`: no such line. */
const NARROWED: { readonly [W in BodyWord]?: (fields: Fields) => Fields | Arb | undefined } = {
  money: as('currency', fc.constantFrom({ name: 'gbp' }, { name: 'eur' })),
  growth: as('rate', fc.constantFrom(0.35, (1.1 * 10) / 30.4375, 1 / 3, 0.361)),
  policy: as('words', fc.uniqueArray(words('temporary', 'only', 'every', 'void'), { maxLength: 3 })),
  zone: (one) => ({ ...one, ...(one.says ? { where: one.says } : { where: undefined }) }),
  strength: (one) => (one.upTo === undefined ? one : { ...one, strengths: [] }),
  tones: as(
    'tones',
    fc.array(fc.record({ digit: fc.constantFrom('0', '43', 'N', 'RV'), tone: words('ash', 'gold') }), { maxLength: 4 }),
  ),
  over: (one) => (one.depth === undefined && one.darker === undefined ? undefined : oneOf(one, 'depth', 'darker')),
  in: (one) => LOTS.map((lot) => ({ ...(one.amount === undefined ? without(one, 'price') : one), lot })),
  count: as('lot', LOTS),
  out: as('lot', LOTS),
  grey: (one) => ({ ...one, parts: (one.parts as Fields[]).map((part) => without(part, 'depth')) }),
  hair: as(
    'qualities',
    fc.constantFrom(
      [{ quality: { word: 'strand' }, words: [{ word: 'fine' }], zones: [] }],
      [
        { quality: { word: 'density' }, words: [{ word: 'high' }], zones: [] },
        { quality: { word: 'strand' }, words: [{ word: 'medium' }], zones: [{ zone: 'back left' }, { zone: 'top' }] },
        { quality: { word: 'length' }, words: [{ word: 'mid-back' }], zones: [] },
        { quality: { word: 'form' }, words: [{ word: 'wavy', about: true }], zones: [{ zone: 'ends' }] },
      ],
    ),
  ),
  history: as('kinds', fc.uniqueArray(words('box-colour', 'henna', 'perm'), { maxLength: 3 })),
  caution: (one) => (one.until === undefined ? one : { ...without(one, 'by', 'says'), text: 'asthma; window open' }),
  test: (one) => ({
    ...TESTS[(one.products as unknown[]).length % TESTS.length],
    ...(one.says ? { says: one.says } : {}),
    ...(one.by ? { by: one.by } : {}),
  }),
  hold: (one) => (one.untilLetter ? one : without(one, 'untilLetter')),
  asked: (one) => (some(one.about) ? one : undefined),
  regrowth: as('length', length),
  again: (one) => percent.map((share) => (one.share ? { ...one, share } : one)),
  place: (one) =>
    length.map((gap) => ({
      ...without(one, 'technique', 'cover'),
      ...(one.gap ? { gap } : {}),
      ...(one.clear ? { clear: gap } : {}),
      ...(one.technique ? { technique: { word: 'fine-weave' }, cover: { word: 'foil' } } : { words: [] }),
    })),
  on: (one) => {
    const { minutes } = one as { minutes?: { unit: string } };
    const kept = minutes?.unit === 'min' ? one : without(one, 'last');
    return one.period === undefined && !some(one.bowls) ? undefined : kept;
  },
  check: (one) => (some(one.bowls) || some(one.seen) || one.period ? one : undefined),
  off: (one) => {
    // None came off is no count.
    const counted = one.sections === 0 ? without(one, 'sections') : one;
    const timed = counted.time === undefined ? without(counted, 'until') : counted;
    const { claim } = one as { claim?: { unit: string } };
    return one.time === undefined && claim?.unit !== 'min' ? without(timed, 'claim') : timed;
  },
  heat: (one) => without(one, 'amount'),
  left: (one) => ({
    ...one,
    left: (one.left as Fields[]).map((each) => ({ ...each, amount: { ...(each.amount as Fields), unit: 'g' } })),
  }),
  home: (one) => {
    const [first, ...more] = one.parts as Fields[];
    if (one.bowl === undefined || first === undefined) return one;
    return { ...one, parts: [{ amount: { value: 12, unit: '' }, out: one.bowl }, ...more] };
  },
  charge: (one) => {
    if (one.total) return { ...without(one, 'discount'), item: 'total', amount: one.amount ?? 5 };
    return one.discount === undefined
      ? { ...one, item: 'cut', amount: one.amount ?? 5 }
      : { ...without(one, 'amount'), item: 'loyalty discount' };
  },
  next: (one) =>
    CHANGES.map((changes) => {
      const when = oneOf(
        { ...one, changes, ...(one.month ? { month: { when: '2027-03' } } : {}) },
        'month',
        'wait',
        'date',
      );
      return when.date === undefined ? without(when, 'time') : when;
    }),
};

const made = { made: true, products: [], zones: [], read: false, result: [], notNeeded: false };
const top = { zone: 'top' };
/** Tests hold what their kind of test can: one of each sort. */
const TESTS: readonly Fields[] = [
  {
    ...made,
    test: { name: 'skin' },
    date: { date: '2026-09-01' },
    time: { minutes: 660, other: 1380 },
    products: [{ name: 'cream' }, { name: 'gloss' }],
    read: true,
    readDate: { date: '2026-09-03' },
    result: [{ zones: [], words: [{ word: 'clear' }] }],
  },
  {
    ...made,
    test: { name: 'strand' },
    mix: [
      { amount: { value: 2, unit: '' }, product: { name: 'clay' } },
      { amount: { value: 4, unit: '' }, product: { name: 'dev-6' } },
    ],
    minutes: { value: 25, unit: 'min' },
    zones: [top],
    result: [{ zones: [top], stage: { stage: 'gold' }, words: [{ word: 'patchy' }] }],
  },
  { ...made, made: false, test: { name: 'skin' }, notNeeded: true },
  {
    ...made,
    test: { name: 'stretch' },
    zones: [{ zone: 'ends' }, top],
    result: [{ zones: [{ zone: 'ends' }, top], words: [{ word: 'springs-back' }] }],
  },
];

type FactSchema = { readonly shape: Readonly<Record<string, z.ZodType>> & { readonly word: z.ZodLiteral<BodyWord> } };
const SCHEMAS = [
  ...SALON_FACTS,
  ...PRODUCT_FACTS,
  ...STOCK_FACTS,
  ...CLIENT_FACTS,
  ...VISIT_FACTS,
] as unknown as readonly FactSchema[];

const FREE: ReadonlySet<string> = new Set(['aim', 'note', 'care', 'photo', 'caution']);

/** Facts of each word, as the notation can say them. */
export const RANDOM_FACTS: ReadonlyMap<BodyWord, fc.Arbitrary<Said<Fact>>> = new Map(
  SCHEMAS.map((schema) => {
    const first = schema.shape.word.value;
    const of = shapeOf(schema.shape)
      .map((fields) => (FREE.has(first) ? without(fields, 'says') : fields))
      .chain((fields): Arb => {
        const narrowed = NARROWED[first] === undefined ? fields : NARROWED[first](fields);
        return narrowed instanceof fc.Arbitrary ? narrowed : fc.constant(narrowed);
      })
      .filter((fields) => fields !== undefined)
      .map((fields) => ({ word: first, ...(fields as Fields) }));
    return [first, of as unknown as fc.Arbitrary<Said<Fact>>];
  }),
);
