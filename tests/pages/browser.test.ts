import axe, { type AxeResults } from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pageHtml } from '../../src/pages/html.ts';
import { usageMarkdown } from '../../src/pages/usage-page.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { startBrowser, withPage } from './browser.ts';
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

/** The long card has the same parts as the short one, so axe, which takes its time, looks at the short one. */
const pages: { name: string; html: string; long?: true }[] = [];
let browser: Browser;

beforeAll(async () => {
  const demo = demoJournal();
  const findings = allFindings(demo);
  const card = (name: string): string => cardPageOf(demo, name, findings);
  const used = usageMarkdown(demo, [...reckonAll(demo).values()].flat(), { from: '2026-02-01', to: '2026-02-28' });
  pages.push(
    { name: 'the card of a client with alerts', html: card('otto-zeller') },
    { name: 'the card of a client with foils and a turn', html: card('ines-carvalho') },
    { name: 'the card of a client with twelve visits', html: card('wren-abbott'), long: true },
    {
      name: 'a card full of hostile notes',
      html: cardPageOf(journalOf(HOSTILE_NOTES), 'eve'),
    },
    { name: 'the product report', html: pageHtml({ title: 'Products used', markdown: used }) },
  );
  browser = await startBrowser();
}, 120_000);

afterAll(async () => {
  await browser?.close();
});

const SIZES = [
  { width: 1280, height: 900 },
  { width: 320, height: 640 },
] as const;
const SCHEMES = ['light', 'dark'] as const;

describe('in Chromium', { timeout: 120_000 }, () => {
  for (const viewport of SIZES) {
    for (const colorScheme of SCHEMES) {
      it(`breaks no rule of WCAG 2.2 AA that axe can see, ${viewport.width} px wide, ${colorScheme}`, async () => {
        for (const { name, html, long } of pages) {
          if (long) continue;
          await withPage(browser, html, { viewport, colorScheme }, async ({ page }) => {
            await page.evaluate(axe.source);
            const { violations } = await page.evaluate<AxeResults>(
              `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })`,
            );
            const found = violations.map(({ id, nodes }) => `${name}: ${id} ${nodes[0]?.html ?? ''}`);
            expect(found).toEqual([]);
          });
        }
      });
    }
  }

  it('fits a window 320 px wide without scrolling sideways, and one of 1280 px', async () => {
    for (const viewport of SIZES) {
      for (const { name, html } of pages) {
        await withPage(browser, html, { viewport }, async ({ page }) => {
          const width = await page.evaluate('document.documentElement.scrollWidth');
          expect(`${name}: ${width}`).toBe(`${name}: ${viewport.width}`);
        });
      }
    }
  });

  it('asks for nothing but the page itself, and logs nothing', async () => {
    for (const { html } of pages) {
      await withPage(browser, html, {}, async ({ page, asked, address }) => {
        const logged: string[] = [];
        page.on('console', (message) => logged.push(message.text()));
        await page.reload({ waitUntil: 'networkidle' });
        expect(asked).toEqual([address, address]);
        expect(logged).toEqual([]);
      });
    }
  });

  it('keeps a hostile name, note and photo as text', async () => {
    const hostile = pages.find(({ name }) => name.includes('hostile'));
    await withPage(browser, hostile?.html ?? '', {}, async ({ page }) => {
      expect(await page.title()).toBe(HOSTILE);
      expect(await page.locator('h1').textContent()).toBe(HOSTILE);
      expect(await page.locator('main').textContent()).toContain(
        'onerror="document.title=\'ran\'"> ![a](http://127.0.0.1:9/y.png)',
      );
      expect(await page.locator('script, img, iframe, main style, [onerror], a:not([href^="#"])').count()).toBe(0);
      expect(await page.locator('main').isVisible()).toBe(true);
    });
  });

  it('uses its own style sheet under its own policy', async () => {
    await withPage(browser, pages[0]?.html ?? '', {}, async ({ page }) => {
      const border = await page.evaluate(`getComputedStyle(document.querySelector('.alerts')).borderLeftStyle`);
      expect(border).toBe('solid');
    });
  });

  it('shows the figures drawn for the width: wide or narrow, never both', async () => {
    const html = pages.find(({ long }) => long)?.html ?? '';
    for (const viewport of SIZES) {
      await withPage(browser, html, { viewport }, async ({ page }) => {
        const seen = async (kind: string): Promise<boolean> => page.locator(`.timeline.${kind}`).first().isVisible();
        expect([await seen('wide'), await seen('narrow')]).toEqual(
          viewport.width > 700 ? [true, false] : [false, true],
        );
        expect(await page.locator('svg.head').first().isVisible()).toBe(true);
      });
    }
  });

  it('prints a summary on one sheet and each visit on one sheet', async () => {
    for (const { name, html } of pages.filter((one) => one.name.startsWith('the card'))) {
      await withPage(browser, html, {}, async ({ page }) => {
        const visits = await page.locator('.part').count();
        const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
        expect(`${name}: ${pdf.match(/\/Type\s*\/Page\b/g)?.length}`).toBe(`${name}: ${visits + 1}`);
      });
    }
  });

  it('prints on A4', async () => {
    for (const { html } of pages) {
      await withPage(browser, html, {}, async ({ page }) => {
        const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
        // A4 is 210 by 297 mm (ISO 216:2007), which is 595 by 842 points.
        const boxes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
        expect(boxes.length).toBeGreaterThan(0);
        for (const [, width, height] of boxes) {
          expect(Math.round(Number(width))).toBe(595);
          expect(Math.round(Number(height))).toBe(842);
        }
      });
    }
  });
});
