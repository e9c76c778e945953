import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { DEMO, useProgram } from './program.ts';

const program = await useProgram();
const ON = ['--on', '2026-11-25'];

const JOURNAL = {
  'salon.bowl': `salon quay "Quay"
  money GBP
product clay "Peregrine clay" lightener
  mix 1:2
  pack 500 g 24.00
  reorder at 1 pack
product dev-6 "Cream developer" developer 6%
  pack 1 kg 7.50
stock 2026-11-01 at quay
  count clay 500 g
  count dev-6 2 kg
stock 2026-11-02 at quay
  in clay 1 pack 24.00 lot =K1 use-by 2026-12
visit 2026-11-03 10:00 wren by io
  bowl A 40 clay + 80 dev-6
  next 4w foils
stock 2026-11-20 at quay
  count clay 400 g
  count dev-9 1 kg
`,
};

describe('shelf', () => {
  test('says what is on hand, what is short of its level, and what no note explains', () => {
    const { code, out, err } = program.run(['shelf', ...ON], { cwd: program.folder(JOURNAL) });
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('| clay | 400 g | 500 g | 250 |');
    expect(out).toContain('| clay | -560 g | 1 g | 2 | 2026-11-01 | 2026-11-20 |');
    expect(out).toContain('| salon.bowl:19 | dev-9 | no such product on the shelf |');
  });

  test('of the demo finds the one leak, and nothing else beyond tens of grams', () => {
    const { shelf } = JSON.parse(program.run(['shelf', DEMO, '--json', '--on', '2026-11-30']).out);
    type Row = { product: string; unexplained: { value: number }; unexplainedWithin: { value: number } };
    // As on the page: only what the counts themselves may not be off by.
    const gone = (shelf as Row[])
      .filter(({ unexplained, unexplainedWithin }) => Math.abs(unexplained.value) > unexplainedWithin.value)
      .filter(({ unexplained }) => Math.abs(unexplained.value) > 70);
    expect(gone.map(({ product, unexplained }) => [product, Math.round(unexplained.value)])).toEqual([['clay', -117]]);
  });

  test('--html is a page, --json exact, --csv RFC 4180', () => {
    const cwd = program.folder(JOURNAL);
    expect(program.run(['shelf', '--html', ...ON], { cwd }).out).toMatch(/^<!doctype html>/i);
    const { shelf } = JSON.parse(program.run(['shelf', '--json', ...ON], { cwd }).out);
    expect(shelf[0]).toMatchObject({ product: 'clay', onHand: { value: 400, exact: '400' }, below: true });
    const [head, ...rows] = parse(program.run(['shelf', '--csv', ...ON], { cwd }).out) as string[][];
    expect(rows.map((row) => row[head?.indexOf('on_hand') ?? -1])).toEqual(['400.000', '1920.000']);
  });
});

describe('order', () => {
  test('is in whole packs, with who is awaited', () => {
    const { code, out } = program.run(['order', '--weeks', '4', ...ON], { cwd: program.folder(JOURNAL) });
    expect(code).toBe(0);
    expect(out).toContain('| clay | 1 | 24.00 | 400 g |');
    expect(out).toContain('| wren | 2026-12-01 | due | 1 |');
  });

  test('notes of less than four weeks have no pace, and that is said', () => {
    const cwd = program.folder(JOURNAL);
    const { out } = program.run(['order', ...ON], { cwd });
    expect(out).toContain('The notes of the shelf cover 25 days, and a pace needs 28:');
    expect(out).not.toContain('larger of two');
    const { order, daysNoted } = JSON.parse(program.run(['order', '--json', ...ON], { cwd }).out);
    expect(daysNoted).toBe(25);
    for (const { byPace } of order) expect(byPace).toEqual({ value: 0, exact: '0' });
    expect(program.run(['order', '--on', '2026-11-28'], { cwd }).out).toContain('larger of two');
  });

  test('a number of weeks that is none is refused', () => {
    const { code, err } = program.run(['order', '--weeks', 'four'], { cwd: program.folder(JOURNAL) });
    expect([code, err]).toEqual([
      2,
      '`--weeks four` is no number of weeks from 1 to 104.\nWrite it as in `--weeks 6`.\n',
    ]);
  });
});

describe('trace', () => {
  test('names every client and date of a lot, recorded apart from possible', () => {
    const { code, out } = program.run(['trace', 'K2371', DEMO]);
    expect(code).toBe(0);
    const [recorded = '', possible = ''] = out.split('## Possible');
    expect(recorded).toContain('| 2026-03-28 | Lettie Pascoe | clay | 30 g | bowl A |');
    expect(possible).toContain('| 2026-05-08 | Wren Abbott | clay | 50 g | bowl A |');
    // A misspelt product may be the one that is recalled.
    expect(possible).toContain('| 2026-03-18 | Orla Finch | caly | 25 g | bowl A |');
  });

  test('the other way round: --client gives the lots', () => {
    const { code, out } = program.run(['trace', '--client', 'wren-abbott', DEMO]);
    expect(code).toBe(0);
    expect(out).toContain('| 2025-02-07 | clay | 30 g | bowl A | possible K2207 |');
  });

  test('a lot that nobody names ends with 1 and near names; no lot at all is refused', () => {
    const unknown = program.run(['trace', 'K2372', DEMO]);
    expect([unknown.code, unknown.out]).toEqual([1, expect.stringContaining('k2371')]);
    expect(program.run(['trace']).code).toBe(2);
  });

  test('--csv keeps a lot that looks like a formula from being one', () => {
    const { out } = program.run(['trace', '--client', 'wren', '--csv'], { cwd: program.folder(JOURNAL) });
    expect(parse(out)).toContainEqual(expect.arrayContaining(['2026-11-03', 'wren', 'clay', "'=K1"]));
  });
});
