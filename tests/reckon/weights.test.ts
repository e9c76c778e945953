import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { ShelfItem } from '../../src/journal/shelf.ts';
import { solveLinear } from '../../src/reckon/bowl/linear.ts';
import { typedPart } from '../../src/reckon/bowl/part.ts';
import { resolveParts } from '../../src/reckon/bowl/portions.ts';
import { solveWeights, type Weights } from '../../src/reckon/bowl/weights.ts';
import { type Exact, equal, exact, exactOf, mul, sum, ZERO } from '../../src/text/exact.ts';
import { wholeFile } from '../../src/text/span.ts';
import { fig, journalOfNotes, mixOf, SHELF, shown } from './bowls-of.ts';

const { shelf } = journalOfNotes(SHELF);

const partsOf = (mix: string, on: ReadonlyMap<string, ShelfItem> = shelf) => {
  const fact = journalOfNotes(`visit 2026-09-04 wren-abbott\n  bowl A ${mix}`).clients.get('wren-abbott')?.visits[0]
    ?.entry.facts[0];
  if (fact?.word !== 'bowl') throw new Error(`no mix: ${mix}`);
  const typed = fact.parts.map((part) => typedPart(part, wholeFile(''), 0, true));
  return resolveParts(typed, { shelf: on, date: '2026-09-04', conversion: { mlAsGrams: false } }).parts;
};

const figures = ({ weights, breaches, assumed }: Weights) => [weights.map(fig), breaches.length, assumed?.on];

const weight = fc.integer({ min: 1, max: 2000 }).map((tenths) => tenths / 10);
const bases = fc.array(fc.tuple(weight, fc.constantFrom('cream 7/0', 'cream 7/1', 'toner 9/1', 'clay')), {
  minLength: 1,
  maxLength: 4,
});
const ratio = fc.constantFrom('1:1', '1:1.5', '1:2', '2:3', '1:0,5');
const extras = fc.array(
  fc.tuple(weight, fc.constantFrom('bond', 'water', 'conditioner')).map(([grams, name]) => `${grams} ${name}`),
  { maxLength: 2 },
);
const developer = fc.oneof(
  fc.tuple(fc.constantFrom('dev-6', '6%', '20vol', '7.5% from dev-6 dev-9'), ratio).map((both) => both.join(' ')),
  fc.tuple(weight, fc.constantFrom('dev-3', '9%')).map((both) => both.join(' ')),
  fc.tuple(weight, fc.constantFrom('dev-6'), ratio).map((all) => all.join(' ')),
);

const mixes = fc
  .tuple(bases, extras, fc.array(developer, { maxLength: 2 }))
  .map(([own, more, developers]) => [...own.map((part) => part.join(' ')), ...more, ...developers]);

describe('the short way of weights', () => {
  it('agrees with the whole system of facts', () => {
    fc.assert(
      fc.property(mixes, (mix) => {
        const parts = partsOf(mix.join(' + '));
        expect(figures(solveWeights(parts, undefined))).toEqual(figures(solveWeights(parts, undefined, true)));
      }),
    );
  });

  it('leaves to the system what is not plain', () => {
    for (const mix of [
      '2p clay + 4p dev-6',
      'clay + 80 dev-6 1:2',
      '40 clay 1:2 + 30 dev-6 + dev-9',
      '40 clay 1:2 + dev-6 1:2',
    ])
      expect(figures(solveWeights(partsOf(mix), undefined))).toEqual(
        figures(solveWeights(partsOf(mix), undefined, true)),
      );
  });
});

describe('weights', () => {
  it('add up to the total, as exact figures and as the scales show them', () => {
    fc.assert(
      fc.property(mixes, fc.constantFrom('1 g', '0.1 g', '0,5 g', '5 g'), (mix, step) => {
        const solved = mixOf(mix.join(' + '), SHELF, `  scale ${step}`);
        const weights = solved.portions.map((portion) => portion.weight ?? ZERO);
        expect(equal(sum(weights), solved.total ?? ZERO)).toBe(true);
        expect(fig(sum(solved.portions.map((portion) => portion.shown ?? ZERO)))).toBe(fig(solved.shownTotal));
      }),
    );
  });

  it('keep what is typed in whole steps of the scales', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 1, maxLength: 3 }), ratio, (own, said) => {
        const solved = mixOf(`${own.map((grams) => `${grams} clay`).join(' + ')} + 6% ${said}`);
        expect(solved.portions.slice(0, -1).map((portion) => fig(portion.shown))).toEqual(own.map(String));
      }),
    );
  });

  it('grow together when every typed weight grows', () => {
    fc.assert(
      fc.property(bases, ratio, fc.integer({ min: 2, max: 9 }), (own, said, times) => {
        const mix = (factor: number): readonly Exact[] =>
          partsAndWeights(
            `${own.map(([grams, name]) => `${Math.round(grams * factor * 10) / 10} ${name}`).join(' + ')} + 6% ${said}`,
          );
        expect(mix(times)).toEqual(mix(1).map((one) => mul(one, exact(times))));
      }),
    );
  });

  it('do not depend on the order of the parts', () => {
    const shuffled = mixes.chain((mix) =>
      fc.tuple(fc.constant(mix), fc.shuffledSubarray(mix, { minLength: mix.length, maxLength: mix.length })),
    );
    fc.assert(
      fc.property(shuffled, ([mix, other]) => {
        const total = (parts: readonly string[]): string => {
          const solved = mixOf(parts.join(' + '), SHELF);
          return [solved.total, solved.ready, solved.ratio].map(fig).join(' ');
        };
        expect(total(other)).toBe(total(mix));
      }),
    );
  });

  it('of a blend have the strength that is asked for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 90 }), fc.integer({ min: 1, max: 300 }), (tenths, grams) => {
        const percent = new Fraction(tenths, 10);
        const [weak, strong] = tenths <= 60 ? ['dev-3', 'dev-6'] : ['dev-6', 'dev-9'];
        const solved = mixOf(`30 clay + ${grams} ${tenths / 10}% from ${weak} ${strong}`, SHELF);
        const developers = solved.portions.filter(({ role }) => role === 'developer');
        const of = (value: Exact | undefined): Fraction => new Fraction(BigInt(value?.n ?? 0), BigInt(value?.d ?? 1));
        const peroxide = developers.reduce(
          (all, one) => all.add(of(one.weight).mul(of(one.strength))),
          new Fraction(0),
        );
        const whole = developers.reduce((all, one) => all.add(of(one.weight)), new Fraction(0));
        expect(whole.equals(grams)).toBe(true);
        expect(peroxide.equals(percent.mul(grams))).toBe(true);
        expect(solved.problems).toEqual([]);
      }),
    );
  });

  const partsAndWeights = (mix: string): readonly Exact[] =>
    solveWeights(partsOf(mix), undefined).weights.map((one) => one ?? ZERO);

  it('share a total as the parts are shared', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 }),
        weight,
        ratio,
        (shares, total, said) => {
          const mix = `${total} g of ${shares.map((share) => `${share}p clay`).join(' + ')} + 6% ${said}`;
          const solved = mixOf(mix, SHELF);
          expect(equal(sum(solved.portions.map((one) => one.weight ?? ZERO)), exactOf(total))).toBe(true);
          const [first] = solved.portions;
          for (const [index, share] of shares.entries())
            expect(
              equal(
                mul(solved.portions[index]?.weight ?? ZERO, exact(shares[0] ?? 1)),
                mul(first?.weight ?? ZERO, exact(share)),
              ),
            ).toBe(true);
        },
      ),
    );
  });
});

describe('a system of facts', () => {
  /** Facts as rows of factors, the value last. */
  const facts = (...rows: readonly (readonly number[])[]) =>
    rows.map((row) => ({
      factors: new Map(row.slice(0, -1).map((factor, index) => [index, exactOf(factor)])),
      value: exactOf(row.at(-1) ?? 0),
    }));

  const valuesOf = ({ values }: ReturnType<typeof solveLinear>): string[] =>
    [...values].sort(([a], [b]) => a - b).map(([unknown, value]) => `${unknown}: ${fig(value)}`);

  it('settles what it can, and leaves out what contradicts', () => {
    const answer = solveLinear(facts([1, 1, 0, 10], [1, -1, 0, 4], [2, 2, 0, 20], [1, 1, 0, 11]));
    expect(valuesOf(answer)).toEqual(['0: 7', '1: 3']);
    expect(answer.against).toEqual([3]);
  });

  it('keeps an unknown open that hangs on another', () => {
    expect(valuesOf(solveLinear(facts([1, 1, 0, 10], [0, 0, 1, 2])))).toEqual(['2: 2']);
    expect(valuesOf(solveLinear(facts([2, 4, 6, 10], [1, 2, 3, 5])))).toEqual([]);
    expect(solveLinear(facts([0, 0, 3])).against).toEqual([0]);
  });

  it('finds the values that its facts were made from', () => {
    const sized = fc.integer({ min: 1, max: 5 }).chain((size) =>
      fc.tuple(
        fc.array(fc.integer({ min: -20, max: 20 }), { minLength: size, maxLength: size }),
        fc.array(fc.array(fc.integer({ min: -3, max: 3 }), { minLength: size, maxLength: size }), {
          minLength: size,
          maxLength: size + 2,
        }),
      ),
    );
    fc.assert(
      fc.property(sized, ([values, rows]) => {
        const made = rows.map((row) => [
          ...row,
          row.reduce((all, factor, index) => all + factor * (values[index] ?? 0), 0),
        ]);
        const answer = solveLinear(facts(...made));
        expect(answer.against).toEqual([]);
        for (const [unknown, value] of answer.values) expect(fig(value)).toBe(String(values[unknown]));
        // As many rows as unknowns, each on its own, settle them all.
        const own = values.map((value, index) => [...values.map((_, other) => (other === index ? 2 : 0)), 2 * value]);
        expect(solveLinear(facts(...made, ...own)).values.size).toBe(values.length);
      }),
    );
  });
});

it('shows a mix of thirds whole', () => {
  expect(shown(mixOf('100 g of 1p clay + 1p cream 7/0 + 1p toner 9/1', SHELF))).toBe(
    '34 clay + 33 cream 7/0 + 33 toner 9/1 = 100',
  );
});
