import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { DEMO, useProgram } from './program.ts';

const program = await useProgram();
const MAY = ['--from', '2025-05', '--to', '2025-05'];

/** The rows of a file, by the titles of its columns. */
const rowsOf = (csv: string): Record<string, string>[] => parse(csv, { columns: true }) as Record<string, string>[];

const totalOf = (rows: readonly Record<string, string>[], column: string): number =>
  rows.reduce((whole, row) => whole + Math.round(Number(row[column]) * 100), 0);

describe('money', () => {
  test('reports a month: charged, products, margin', () => {
    const { code, out, err } = program.run(['money', DEMO, ...MAY]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('- **Margin** 1200.97 GBP, 92 % of what was charged; 60.05 GBP a visit');
    expect(out).toContain('| foils | 1 | 118.00 | 0.00 | 7.96 | 110.04 | 93 % |');
    expect(out).toContain('this is no tax advice');
  });

  test('every --by comes to the same pence', () => {
    for (const by of ['visit', 'client', 'service', 'stylist', 'month']) {
      const rows = rowsOf(program.run(['money', DEMO, ...MAY, '--by', by, '--csv']).out);
      expect([by, totalOf(rows, 'charged'), totalOf(rows, 'products'), totalOf(rows, 'margin')]).toEqual([
        by,
        130900,
        10803,
        120097,
      ]);
    }
  });

  test('--json has every grouping and the deposits held, --html the months as bars', () => {
    const words = ['money', DEMO, '--from', '2025-04', '--to', '2026-11'];
    const { inAll, service, stylist, depositsHeld } = JSON.parse(program.run([...words, '--json']).out);
    expect(inAll).toHaveLength(1);
    expect(service.length).toBeGreaterThan(stylist.length);
    expect(
      depositsHeld.map(({ client, amount }: { client: string; amount: number }) => [client, amount]),
    ).toContainEqual(['beth-tarn', 10000]);
    expect(program.run([...words, '--html']).out).toContain('<figure class="figure months">');
  });

  test('what is nothing to group by is refused with the words', () => {
    expect(program.run(['money', DEMO, '--by', 'clients'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('Near: `client`.'),
    });
    expect(program.run(['usage', DEMO, '--by', 'tax']).err).toContain('It takes `product`, `shade`, `kind`');
  });
});

describe('usage', () => {
  test('names corrections and redos', () => {
    const { out } = program.run(['usage', DEMO, ...MAY]);
    expect(out).toContain('2 redos in 20 visits, 10 %; products 4.56 GBP.');
    expect(out).toContain('| 2025-05-20 | Lorna Lathom | Nia | redo of 2025-05-15 by Nia | 30 | 1.62 | 0.00 |');
    expect(out).toContain('| 2025-05-24 | Rowan Rudge | Io | correction | 300 | 22.06 | 174.00 |');
  });

  test('every --by comes to the same grams', () => {
    for (const by of ['product', 'shade', 'kind', 'stylist', 'client', 'month']) {
      const rows = rowsOf(program.run(['usage', DEMO, ...MAY, '--by', by, '--csv']).out);
      expect([by, Math.round(totalOf(rows, 'mixed_g'))]).toEqual([by, 237550]);
    }
  });

  test('--by has one table', () => {
    const { out } = program.run(['usage', DEMO, ...MAY, '--by', 'stylist']);
    expect(out.match(/^## .*$/gm)).toEqual(['## By stylist']);
    expect(out).toContain('| Io | ');
  });
});
