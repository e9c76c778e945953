import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pageHtml } from '../../src/pages/html.ts';
import { usageMarkdown } from '../../src/pages/usage-page.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { type Opened, openPage, startBrowser } from './browser.ts';
import { allFindings, cardPageOf, demoJournal, journalOf, SHELF } from './compiled.ts';

const HOSTILE = "</title><script>document.title='ran'</script>";
const LONG = 'wide'.repeat(60);

const HOSTILE_NOTES = `${SHELF}
client eve "${HOSTILE}"
  note <img src="http://127.0.0.1:9/x.png" onerror="document.title='ran'"> ![a](http://127.0.0.1:9/y.png)
  allergy "${LONG}"
  caution <style>body{display:none}</style>
visit 2026-09-04 14:00 eve by io "[click](javascript:alert(1))"
  bowl A 40 ${LONG} + 80 dev-6
  place A top slice x3 mirror
  place A ${LONG} weave x4
  place A roots, ${LONG} apply
  on 10:00-10:10 A ${LONG}, top
  check 10:20 A top orange
  off 10:30 A
  photo http://127.0.0.1:9/z.png
  ${LONG}
`;

const demo = demoJournal();
const findings = allFindings(demo);
const card = (client: string) => (): string => cardPageOf(demo, client, findings);

/** The long card has the same parts as the short one, so axe, which takes its time, looks at the short one. */
const PAGES: readonly { readonly name: string; readonly html: () => string; readonly long?: true }[] = [
  { name: 'the card of a client with alerts', html: card('otto-zeller') },
  { name: 'the card of a client with foils and a turn', html: card('ines-carvalho') },
  { name: 'the card of a client with twelve visits', html: card('wren-abbott'), long: true },
  { name: 'a card full of hostile notes', html: () => cardPageOf(journalOf(HOSTILE_NOTES), 'eve') },
  {
    name: 'the product report',
    html: () => {
      const all = [...reckonAll(demo).values()].flat();
      return pageHtml({
        title: 'Products used',
        markdown: usageMarkdown(demo, all, { from: '2026-02-01', to: '2026-02-28' }),
      });
    },
  },
];

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
});

const WIDE = { width: 1280, height: 900 } as const;
const NARROW = { width: 320, height: 640 } as const;
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe has against the page, or a part of it, as it stands now. */
const breaches = async (page: Page, part: string, runOnly: readonly string[]): Promise<string[]> => {
  const { violations } = await page.evaluate<AxeResults>(
    `axe.run(${JSON.stringify(part)}, { runOnly: ${JSON.stringify(runOnly)} })`,
  );
  return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`);
};

const sheetsOf = (pdf: string): number => pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;

/** Laying a page out is what takes the time, so each is opened once, and then looked at in every way. */
describe.each(PAGES)('$name, in Chromium', { timeout: 120_000 }, ({ name, long, html: made }) => {
  let opened: Opened & { readonly close: () => Promise<void> };
  beforeAll(async () => {
    opened = await openPage(browser, made(), { viewport: WIDE, colorScheme: 'light' });
  });
  afterAll(() => opened?.close());

  it('asks for nothing but the page itself, and logs nothing', async () => {
    await opened.page.waitForLoadState('networkidle');
    expect(opened.asked).toEqual([opened.address]);
    expect(opened.logged).toEqual([]);
  });

  if (long)
    it('shows the figures drawn for the width: wide or narrow, never both', async () => {
      const { page } = opened;
      const seen = async (kind: string): Promise<boolean> => page.locator(`.timeline.${kind}`).first().isVisible();
      for (const viewport of [WIDE, NARROW]) {
        await page.setViewportSize(viewport);
        expect([await seen('wide'), await seen('narrow')]).toEqual(viewport === WIDE ? [true, false] : [false, true]);
        expect(await page.locator('svg.head').first().isVisible()).toBe(true);
      }
    });

  it('fits a window 320 px wide without scrolling sideways, and one of 1280 px', async () => {
    for (const viewport of [WIDE, NARROW]) {
      await opened.page.setViewportSize(viewport);
      expect(await opened.page.evaluate('document.documentElement.scrollWidth')).toBe(viewport.width);
    }
  });

  if (!long)
    it('breaks no rule of WCAG 2.2 AA that axe can see, wide or narrow, light or dark', async () => {
      const { page } = opened;
      await page.setViewportSize(WIDE);
      await page.evaluate(axe.source);
      expect(await breaches(page, 'html', WCAG)).toEqual([]);
      // The colours alone are others in the dark, and in a narrow window the places, with figures of its own.
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await breaches(page, 'html', ['color-contrast'])).toEqual([]);
      await page.setViewportSize(NARROW);
      const placed = ['target-size', 'scrollable-region-focusable', 'color-contrast'];
      expect(await breaches(page, 'html', placed)).toEqual([]);
      if ((await page.locator('.narrow').count()) > 0) expect(await breaches(page, '.narrow', WCAG)).toEqual([]);
      await page.emulateMedia({ colorScheme: 'light' });
      expect(await breaches(page, 'html', placed)).toEqual([]);
      await page.setViewportSize(WIDE);
    });

  it('prints on A4, and a card its summary on one sheet and each visit on one sheet', async () => {
    const pdf = (await opened.page.pdf({ preferCSSPageSize: true })).toString('latin1');
    // A4 is 210 by 297 mm (ISO 216:2007), which is 595 by 842 points.
    const boxes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
    expect(boxes.length).toBeGreaterThan(0);
    for (const [, width, height] of boxes)
      expect([Math.round(Number(width)), Math.round(Number(height))]).toEqual([595, 842]);
    if (name.startsWith('the card')) expect(sheetsOf(pdf)).toBe(1 + (await opened.page.locator('.part').count()));
  });

  if (name.includes('hostile'))
    it('keeps a hostile name, note and photo as text', async () => {
      const { page } = opened;
      expect(await page.title()).toBe(HOSTILE);
      expect(await page.locator('h1').textContent()).toBe(HOSTILE);
      expect(await page.locator('main').textContent()).toContain(
        'onerror="document.title=\'ran\'"> ![a](http://127.0.0.1:9/y.png)',
      );
      expect(await page.locator('script, img, iframe, main style, [onerror], a:not([href^="#"])').count()).toBe(0);
      expect(await page.locator('main').isVisible()).toBe(true);
    });

  if (name.includes('alerts'))
    it('uses its own style sheet under its own policy', async () => {
      const border = await opened.page.evaluate(`getComputedStyle(document.querySelector('.alerts')).borderLeftStyle`);
      expect(border).toBe('solid');
    });
});
