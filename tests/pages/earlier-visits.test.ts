import axe, { type AxeResults } from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { REFRESH_SCRIPT } from '../../src/cli/watch/live-script.ts';
import { yearHtml } from '../../src/pages/card-html.ts';
import { earlierYears, MOST_IN_FULL, yearMarkdown } from '../../src/pages/earlier-visits.ts';
import { noFigures } from '../../src/pages/figures/sheet.ts';
import { reckonClient } from '../../src/reckon/visit.ts';
import { startBrowser, withPage } from './browser.ts';
import { allFindings, cardOf, cardPageOf, clientOf, journalOf, SHELF } from './compiled.ts';

const dateOf = (index: number): string =>
  `${2020 + Math.floor(index / 12)}-${`${(index % 12) + 1}`.padStart(2, '0')}-10`;

/** A client of so many visits, a month apart, with what can go wrong in some of them. */
const historyOf = (visits: number): string =>
  `${SHELF}client ada "Ada Lowe"\n${Array.from(
    { length: visits },
    (_, index) => `visit ${dateOf(index)} 10:00 ada by io
  bowl A 40 clay + 80 dev-6
  place A lengths foil
  on 10:20 A lengths
  off 10:50 A lengths
${index % 5 === 0 ? `  reaction 10:40 A itching "told ${index}"\n` : ''}${index % 7 === 1 ? `  about ${dateOf(index - 1)} "went brassy ${index}"\n` : ''}  result lengths 8 gold "seen ${index}"
  zzqx ${index}
`,
  ).join('')}`;

const ON = { on: '2026-11-25' };
const partsOf = (markdown: string): string[] =>
  markdown.split(/^(?=#{2,3} )/mu).filter((part) => /^### \d{4}-/.test(part));

describe('a long history', () => {
  const journal = journalOf(historyOf(MOST_IN_FULL + 25));
  const client = clientOf(journal, 'ada');
  const reckoned = reckonClient(journal, client);
  const findings = allFindings(journal);

  it('stands whole on the card and the pages of its years, each visit once', () => {
    const years = [...earlierYears(reckoned).keys()].reverse();
    const pages = years.map(
      (year) => yearMarkdown(journal, client, reckoned, findings, { year, sheet: noFigures }) ?? '',
    );
    const parts = [cardOf(journal, 'ada', ON), ...pages].flatMap(partsOf).map((part) => part.trim());
    const whole = partsOf(cardOf(journal, 'ada', { ...ON, last: 500 })).map((part) => part.trim());
    expect(years).toEqual(['2022', '2021', '2020']);
    expect(whole).toHaveLength(MOST_IN_FULL + 25);
    expect(parts).toEqual(whole);
  });

  it('has what went wrong, what was mixed and what was not read in the line of a visit, and what to type for more', () => {
    const card = cardOf(journal, 'ada', ON);
    const line = card.split('\n').find((one) => one.startsWith('- **2020-11-10'));
    expect(line).toMatch(/stop.*reaction 10:40.*told 10.*Bowl A.*120 g: 40 g clay \+ 80 g dev-6.*seen 10.*zzqx 10/);
    expect(card).toContain('`bowlbook card ada --last 55`');
    expect(cardOf(journal, 'ada', { ...ON, yearPage: (year) => `ada.${year}.html` })).toContain(
      '[12 visits of 2020 in full](ada.2020.html)',
    );
  });

  it('is one from the first visit beyond what stands in full', () => {
    const card = (visits: number, last?: number): string =>
      cardOf(journalOf(historyOf(visits)), 'ada', { ...ON, ...(last && { last }) });
    expect(card(MOST_IN_FULL)).toBe(card(MOST_IN_FULL, 500));
    expect(card(MOST_IN_FULL + 1)).toContain('## Earlier visits\n\n1 visit before those above');
  });

  it('has no page for a year without earlier visits', () => {
    expect(yearHtml(journal, client, reckoned, findings, '2024')).toBeUndefined();
  });

  describe('in Chromium', { timeout: 120_000 }, () => {
    let browser: Browser;
    beforeAll(async () => {
      browser = await startBrowser();
    }, 60_000);
    afterAll(async () => {
      await browser?.close();
    });

    it('folds by the year: by keyboard, whole in print, sound to axe, and open still when the page takes in more', async () => {
      const html = cardPageOf(journal, 'ada', findings);
      await withPage(browser, html, { bypassCSP: true }, async ({ page }) => {
        const isSeen = (): Promise<boolean> =>
          page.evaluate<boolean>(
            `document.querySelector('.earlier details dl').checkVisibility({ contentVisibilityAuto: true })`,
          );
        expect(await isSeen()).toBe(false);
        await page.emulateMedia({ media: 'print' });
        expect(
          await page.evaluate<number>(`document.querySelector('.earlier details dl').offsetHeight`),
        ).toBeGreaterThan(0);
        expect(await isSeen()).toBe(true);
        await page.emulateMedia({ media: 'screen' });
        await page.focus('.earlier summary');
        await page.keyboard.press('Enter');
        expect(await isSeen()).toBe(true);
        await page.evaluate(axe.source);
        const { violations } = await page.evaluate<AxeResults>(
          `axe.run('.earlier', { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })`,
        );
        expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`)).toEqual([]);
        await page.evaluate(
          (fresh) => {
            const answer = { ok: true, text: async () => fresh };
            Object.assign(globalThis, {
              fetch: async () => answer,
              EventSource: class {
                addEventListener(what: string, then: () => void) {
                  if (what === 'open') then();
                }
              },
            });
          },
          html.replace('itching', 'itching, and more'),
        );
        await page.addScriptTag({ content: REFRESH_SCRIPT });
        await page.waitForFunction(`document.querySelector('main').textContent.includes('and more')`);
        expect(await page.evaluate<number>(`document.querySelectorAll('.earlier details[open]').length`)).toBe(1);
        expect(await isSeen()).toBe(true);
        expect(await page.evaluate<string>('document.activeElement.tagName')).toBe('SUMMARY');
      });
    });
  });
});
