import { describe, expect, it } from 'vitest';
import { usageMarkdown } from '../../src/pages/usage-page.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf, SHELF } from './compiled.ts';

const NOTES = `${SHELF}
client ada-lowe "Ada Lowe"
visit 2026-06-05 10:00 ada-lowe
  bowl A 40 cream 7/43 + 6% 1:1.5
  left A 10 binned
visit 2026-06-20 10:00 ada-lowe
  bowl A 20 cream 7/0 + 30 dev-6 + 5 bond
  left A 11 kept
visit 2026-08-01 10:00 ada-lowe
  bowl A 40 clay + 80 dev-6
`;

const report = (notes: string, from: string, to: string): string => {
  const journal = journalOf(notes);
  return usageMarkdown(journal, [...reckonAll(journal).values()].flat(), { from, to });
};

describe('usageMarkdown', () => {
  const june = report(NOTES, '2026-06-01', '2026-06-30');

  it('says the period with both its days, and how many visits fall in it', () => {
    expect(june).toContain('2026-06-01, Monday, to 2026-06-30, Tuesday · 2 visits · Harbour Row');
    expect(report(NOTES, '2026-06-05', '2026-06-05')).toContain('· 1 visit ·');
    expect(june).not.toContain('clay');
  });

  it('gives grams mixed, used and left by fate, packs, cost and the cost of what was left', () => {
    expect(june).toContain('| cream | 60 | 52 | 8 | 4 | 4 | 0 | 1 | 6.80 | 0.91 |');
    expect(june).toContain('| dev-6 | 90 | 78 | 12 | 6 | 6 | 0 | 0.1 | 0.68 | 0.09 |');
  });

  it('parts a range by shade', () => {
    expect(june).toContain('| cream 7/0 | 20 | 16 | 4 | 0 | 4 | 0 | 0.3 | 2.27 | 0.45 |');
    expect(june).toContain('| cream 7/43 | 40 | 36 | 4 | 4 | 0 | 0 | 0.7 | 4.53 | 0.45 |');
  });

  it('names what has no price, and leaves it out of the sums', () => {
    expect(june).toContain(
      '- **No cost** for some or all of bond, without a price on the shelf or a weight in the notes: the sums leave that out',
    );
    expect(june).toContain('| bond | 5 | 4 | 1 | 0 | 1 | 0 |  | no price | no price |');
    expect(june).toContain('- **Cost** 7.48 GBP of products');
  });

  it('keeps what is known of a product that has no weight beside it', () => {
    const two = report(`${NOTES}  bowl B cream 7/43 + 20 dev-6\n`, '2026-08-01', '2026-08-01');
    const known = report(`${NOTES}  bowl B 20 cream 7/0 + cream 7/0\n`, '2026-08-01', '2026-08-01');
    expect(two).toContain('| dev-6 | 100 |');
    expect(known).toContain('| cream | 20 | 20 | 0 | 0 | 0 | 0 | 0.3 | 2.27 | 0.00 |');
    expect(known).toContain('- **No cost** for some or all of cream,');
  });

  it('says that figures are rounded one by one, where there is more than one to add up', () => {
    expect(june).toContain('a column may add up to a little more or less');
    expect(report(NOTES, '2025-01-01', '2025-01-31')).not.toContain('rounded');
  });

  it('sets figures to the right', () => {
    expect(june).toContain('| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |');
  });

  it('says so when nothing was used', () => {
    expect(report(NOTES, '2025-01-01', '2025-01-31')).toContain('The notes show no product used in this time.');
  });
});
