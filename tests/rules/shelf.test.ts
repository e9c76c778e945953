import { describe, expect, test } from 'vitest';
import { findIn, rulesIn, saidIn, textOf } from './compile.ts';

const SHELF = `
  range neon "Kelp direct" semi
    mix none
    shades teal
  product clay "Peregrine clay" lightener
    measure scoop 10 g
    pack 500 g
  product dev-6 "Cream developer" developer 6%`;

/** A stock entry of one line, then a visit of 2026-09-04 with some lines. */
const notes = (stock: string, ...visit: string[]): string =>
  [
    textOf(SHELF),
    'stock 2026-01-05',
    stock,
    'client wren-abbott "Wren Abbott"',
    'visit 2026-09-04 wren-abbott',
    ...visit,
    '',
  ].join('\n');

const BOWL = 'bowl A 30 neon teal lot N118';

describe('lot-past-date', () => {
  test.each([
    ['on the last day of its month', 'in neon teal 200 g lot N118 use-by 2026-09', [BOWL]],
    ['on its very day', 'in neon teal 200 g lot N118 use-by 2026-09-04', [BOWL]],
    ['in its year', 'in neon teal 200 g lot N118 use-by 2026', [BOWL]],
    ['where the lot has no date', 'in neon teal 200 g lot N118', [BOWL]],
    ['where the bowl names no lot', 'in neon teal 200 g lot N118 use-by 2026-08', ['bowl A 30 neon teal']],
    ['for a line that names no product', 'in neon teal 200 g lot N118 use-by 2026-08', ['plus A 5 lot N118']],
  ])('is silent %s', (_, stock, visit) => {
    expect(rulesIn(notes(stock, ...visit))).not.toContain('lot-past-date');
  });

  test.each([
    ['in neon teal 200 g lot N118 use-by 2026-09-03', BOWL, '2026-09-03'],
    ['in neon teal 200 g lot n118 use-by 2026-08', BOWL, '2026-08'],
    ['in neon teal 200 g lot N118 use-by 2026-08', 'home A 30 neon teal lot N118', '2026-08'],
    ['in clay 1 pack lot N118 use-by 2026-08', 'bowl A 2 scoops clay lot N118 + dev-6 1:2', '2026-08'],
  ])('fires the day after: %s, %s', (stock, line, date) => {
    const said = saidIn(notes(stock, line)).filter((text) => text.includes('lot-past-date'));
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(`is used on 2026-09-04; its date is ${date}.`);
  });

  test('does not follow a bowl made again, whose lot is another day’s', () => {
    const again = 'visit 2026-10-04 wren-abbott\nagain A from 2026-09-04\n';
    const stock = 'in neon teal 200 g lot N118 use-by 2026-09';
    expect(rulesIn(`${notes(stock, BOWL)}${again}`)).toEqual([]);
  });
});

describe('lot-recalled', () => {
  const recalled = (out: string, line: string): string =>
    notes(`in neon teal 200 g lot N118\nin clay 1 pack lot K2\nin dev-6 900 g lot D6\n${out}`, line);

  test.each([
    ['when it went out for another reason', 'out neon teal 20 g lot N118 "dropped"', BOWL],
    ['when nothing is said of why', 'out neon teal 20 g lot N118', BOWL],
    ['for another lot', 'out neon teal 20 g lot N117 "recalled"', BOWL],
    ['for another product', 'out clay 20 g lot N118 "recalled"', BOWL],
  ])('is silent %s', (_, out, line) => {
    expect(rulesIn(recalled(out, line))).not.toContain('lot-recalled');
  });

  test('is silent of a use on the day of the recall, which may have been before it', () => {
    const text = `${notes('in neon teal 200 g lot N118', BOWL)}stock 2026-09-04\nout neon teal 9 g lot N118 "recalled"\n`;
    expect(rulesIn(text)).toEqual([]);
  });

  test.each([
    ['out neon teal 20 g lot N118 "recalled by the maker"', BOWL, /^Hair dye/],
    ['out clay 20 g lot K2 "withdrawn, see letter"', 'bowl A 30 clay lot K2 + 60 dev-6', /^Lightener/],
    ['out dev-6 20 g lot D6 "Recall"', 'bowl A 30 clay + 60 dev-6 lot D6', /^Hydrogen peroxide/],
  ])('stops later use, with the caution of what it is: %s', (out, line, caution) => {
    const found = findIn(recalled(out, line)).findings.find(({ rule }) => rule === 'lot-recalled');
    expect(found?.severity).toBe('stop');
    expect(found?.caution).toMatch(caution);
  });

  test('stops at a product that is not on the shelf any more', () => {
    const text = notes('out caly 20 g lot K2 "recalled"', 'bowl A 30 caly lot K2');
    expect(rulesIn(text)).toContain('lot-recalled');
  });
});

describe('lot-unknown', () => {
  test.each([
    ['where no lot of the product is noted', 'in clay 1 pack lot K2', BOWL],
    ['for a lot that came in', 'in neon teal 200 g lot n118\ncount neon teal 200 g lot n118', BOWL],
  ])('is silent %s', (_, stock, line) => {
    expect(rulesIn(notes(stock, line))).toEqual([]);
  });

  test('offers no far lot', () => {
    const [found] = findIn(notes('in neon teal 200 g lot QX99', BOWL)).findings;
    expect(found?.todo).toBe('Correct the lot, or write the line it came in by: `in neon … lot N118`.');
    expect(found?.mend).toBeUndefined();
  });

  test('says which product the lot came in as', () => {
    const text = notes('in neon teal 200 g lot QX99\nin clay 1 pack lot N118', BOWL);
    expect(saidIn(text)).toEqual(['mind lot-unknown: Lot N118 came in as clay, and the bowl has it as neon.']);
  });
});

describe('lot-not-in-yet', () => {
  test('says nothing by a stock entry whose date is not read', () => {
    const text = notes('in neon teal 200 g lot N118', BOWL).replace('2026-01-05', '2027-13-05');
    expect(rulesIn(text)).toEqual(['bad-date']);
  });

  test.each(['2026-01-05', '2026-09-04'])('is silent of a lot that came in on %s', (day) => {
    expect(rulesIn(notes('in neon teal 200 g lot N118', BOWL).replace('2026-01-05', day))).toEqual([]);
  });

  test('takes the first of two deliveries', () => {
    const later = 'stock 2026-10-01\nin neon teal 200 g lot N118\n';
    expect(rulesIn(`${notes('in neon teal 200 g lot N118', BOWL)}${later}`)).toEqual([]);
  });
});

describe('opened-too-long', () => {
  const opened = (keeps: string, ...days: string[]): string =>
    [
      `range neon "Kelp direct" semi\nmix none\nshades teal\n${keeps}`,
      'client wren-abbott "Wren Abbott"',
      ...days.map((day) => `visit ${day} wren-abbott\n${BOWL}`),
      '',
    ].join('\n');

  test.each([
    ['the last day it keeps', 'keeps 6mo', ['2026-03-04', '2026-09-04']],
    ['a product without a `keeps` line', '', ['2026-01-04', '2026-09-04']],
  ])('is silent on %s', (_, keeps, days) => {
    expect(rulesIn(opened(keeps, ...days))).toEqual([]);
  });

  test('fires once a lot, at the first use past it', () => {
    const { findings } = findIn(opened('keeps 6mo', '2026-01-04', '2026-07-05', '2026-09-04'));
    expect(findings.map(({ rule, message }) => `${rule} ${message}`)).toEqual([
      'opened-too-long Lot N118 of neon was open on 2026-01-04 and is used on 2026-07-05.',
    ]);
  });

  test('is silent of what is not on the shelf', () => {
    const text = opened('keeps 6mo', '2026-01-04', '2026-09-04').replaceAll('30 neon', '30 noen');
    expect(rulesIn(text)).not.toContain('opened-too-long');
  });
});

describe('price-missing', () => {
  const shelf = (...packs: string[]): string =>
    packs.map((pack, index) => `product p${index}x "Product ${index}"  additive\n${pack}`).join('\n');

  test.each([
    ['no price stands at all', ['', '', '']],
    ['only one does', ['pack 9 g 1.00', '']],
    ['half the shelf has none', ['pack 9 g 1.00', 'pack 9 g 1.00', '', '']],
    ['all have one', ['pack 9 g 1.00', 'pack 9 g 1.00', 'pack 9 g 1.00']],
  ])('is silent where %s', (_, packs) => {
    expect(rulesIn(shelf(...packs))).toEqual([]);
  });

  test.each([
    ['', 'Write size and price under it, as in `pack 60 g 6.80`.'],
    ['pack 60 g', 'Write the price after the size, as in `pack 60 g 6.80`.'],
  ])('fires where most have one: %s', (pack, todo) => {
    const { findings } = findIn(shelf('pack 9 g 1.00', 'pack 9 g 1.00', pack));
    expect(findings.map(({ rule, todo: said }) => [rule, said])).toEqual([['price-missing', todo]]);
  });
});

describe('pack-missing', () => {
  test.each(['in dev-6 200 g', 'count clay 2 packs', 'out noen 2 packs', 'count dev-6 200 g'])(
    'is silent at %s',
    (line) => {
      expect(rulesIn(notes(line))).not.toContain('pack-missing');
    },
  );

  test('fires once a product, wherever it is first counted in packs', () => {
    expect(saidIn(notes('in dev-6 2 packs\nout dev-6 1 pack\ncount neon teal 3 packs'))).toEqual([
      'fix pack-missing: `dev-6` is counted in packs, and its entry gives no pack.',
      'fix pack-missing: `neon` is counted in packs, and its entry gives no pack.',
    ]);
  });
});

describe('in-past-date', () => {
  test.each(['in clay 1 pack use-by 2026-01', 'in clay 1 pack use-by 2026-01-05', 'in clay 1 pack'])(
    'is silent at %s',
    (line) => {
      expect(rulesIn(notes(line))).toEqual([]);
    },
  );

  test('fires a day past it', () => {
    expect(rulesIn(notes('in clay 1 pack use-by 2026-01-04'))).toEqual(['in-past-date']);
  });

  test('says nothing of an entry whose own date is not read', () => {
    expect(rulesIn('product clay "Clay" lightener\nstock 2026-13-05\nin clay 9 g use-by 2020-01\n')).not.toContain(
      'in-past-date',
    );
  });
});

describe('price-differs', () => {
  const priced = (salon: string, pack: string, ...stock: string[]): string =>
    [salon, `product clay "Peregrine clay" lightener\n${pack}`, 'stock 2026-08-01', ...stock, ''].join('\n');

  test.each([
    ['the same price', 'pack 500 g 24.00', ['in clay 1 pack 24']],
    ['no price on the delivery', 'pack 500 g 24.00', ['in clay 1 pack']],
    ['no price on the shelf', 'pack 500 g', ['in clay 1 pack 24']],
    ['a pack that is only sold later', 'pack 500 g 24.00 from 2027-01-01', ['in clay 1 pack 25']],
    ['an earlier delivery', 'pack 500 g 24.00', ['in clay 1 pack 23', 'in clay 1 pack 24']],
    ['another product', 'pack 500 g 24.00', ['in caly 9 g 23']],
  ])('is silent at %s', (_, pack, stock) => {
    expect(rulesIn(priced('', pack, ...stock))).not.toContain('price-differs');
  });

  test('says nothing of an entry whose own date is not read', () => {
    const text = priced('', 'pack 500 g 24.00', 'in clay 1 pack 25').replace('2026-08-01', '2026-13-01');
    expect(rulesIn(text)).not.toContain('price-differs');
  });

  test('writes the prices as the currency is written', () => {
    const [found] = findIn(
      priced('salon harbour "Harbour Row"\nmoney JPY', 'pack 500 g 2400', 'in clay 1 pack 2500'),
    ).findings;
    expect(found?.message).toBe('A pack of `clay` came in at 2500, and the shelf says 2400.');
    expect(found?.todo).toBe('Where the price has changed, write `pack 500 g 2500 from 2026-08-01` under `clay`.');
  });
});
