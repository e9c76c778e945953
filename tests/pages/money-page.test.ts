import { describe, expect, it } from 'vitest';
import { figureSheet } from '../../src/pages/figures/sheet.ts';
import { pageHtml } from '../../src/pages/html.ts';
import { type MoneyOptions, moneyMarkdown } from '../../src/pages/money-page.ts';
import { depositsHeld } from '../../src/reckon/money/deposits.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { journalOf, SHELF } from './compiled.ts';

const NOTES = `${SHELF}
client ada-lowe "Ada | Lowe"
visit 2026-06-05 10:00 ada-lowe by io
  bowl A 60 cream 7/43 + 6% 1:1.5
  charge roots 60
  charge cut 40
  charge discount 10%
  paid 90 card
  deposit 30 for 2026-09-01
visit 2026-07-20 10:00 ada-lowe by nia
  bowl A 20 cream 7/0 + 30 dev-6 + 5 bond
  charge roots 50
`;

const report = (options: MoneyOptions = {}, notes = NOTES): string => {
  const journal = journalOf(notes);
  const reckoned = [...reckonAll(journal).values()].flat();
  const period = { from: '2026-06-01', to: '2026-07-31' };
  return moneyMarkdown(journal, reckoned, depositsHeld(reckoned, period.to), period, options);
};

describe('moneyMarkdown', () => {
  const whole = report();

  it('says what was charged, what the products cost, and what that leaves', () => {
    expect(whole).toContain('- **Charged** 140.00 GBP, after 10.00 GBP of discounts');
    expect(whole).toContain('- **Products** 9.97 GBP');
    expect(whole).toContain('- **Margin** 130.03 GBP, 93 % of what was charged; 65.02 GBP a visit');
  });

  it('says what a margin is not, and that nothing of it is tax advice', () => {
    expect(whole).toContain('Hours and rent are not in it. Tax is not worked out: this is no tax advice.');
  });

  it('goes by month, service, stylist and client, each adding up', () => {
    expect(whole).toContain('| 2026-06 | 1 | 90.00 | 10.00 | 7.48 | 82.52 | 92 % |');
    expect(whole).toContain('| cut | 1 | 36.00 | 4.00 | 0.00 | 36.00 | 100 % |');
    expect(whole).toContain('| **In all \\*** | **3** | **140.00** | **10.00** | **9.97** | **130.03** | **93 %** |');
  });

  it('marks what has a product without a price', () => {
    expect(whole).toContain(
      '- **No cost** for something used at 1 of the 2 visits, marked \\*, without a price or a weight',
    );
    expect(whole).toContain('| 2026-07 \\* | 1 | 50.00 |');
  });

  it('names the deposits held', () => {
    expect(whole).toContain('- **Deposits held** 30.00 GBP at the end of 2026-07-31');
    expect(whole).toContain('| Ada \\| Lowe | 2026-06-05 | 2026-09-01 | 30.00 |');
  });

  it('by one thing alone has that table and no other', () => {
    const headings = report({ by: 'visit' }).match(/^## .*$/gm);
    expect(headings).toEqual(['## By visit']);
    expect(report({ by: 'visit' })).toContain('| 2026-06-05 Ada \\| Lowe | 90.00 |');
  });

  it('parts the currencies', () => {
    const two = report(
      {},
      `${NOTES}salon quay "Quay"\n  money EUR\nvisit 2026-06-06 ada-lowe at quay\n  charge cut 42\n`,
    );
    expect(two).toContain('## In all (EUR)\n\n- **Charged** 42.00 EUR');
    expect(two).toContain('## By client (EUR)\n\n| Client |');
  });

  it('draws the months, and says their figures in words', () => {
    const { sheet, figures } = figureSheet();
    const page = pageHtml({ title: 'Money', markdown: report({ sheet }), figures });
    expect(page).toContain(
      '2026-06: 90.00 GBP charged, products 7.48 GBP, margin 82.52 GBP; 2026-07: 50.00 GBP charged, products 2.49 GBP',
    );
  });

  it('says so when there was no visit', () => {
    expect(report({}, SHELF)).toContain('The notes show no visit in this time.');
  });
});
