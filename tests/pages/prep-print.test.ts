import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { prepMarkdown, salonLiftOf } from '../../src/pages/prep.ts';
import { prepHtml } from '../../src/pages/prep-html.ts';
import { needsBefore, salonMix } from '../../src/reckon/forecast/forecast.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { startBrowser, withPage } from './browser.ts';
import { allFindings, clientOf, demoJournal } from './compiled.ts';

/** Clients of the demo journal with much to prepare: own bowls, a service asked for, further mixes, many places. */
const SHEETS = [
  ['2026-10-30', ['morwen-pascoe', 'douglas-fenn', 'wren-abbott']],
  ['2026-12-12', ['beth-tarn', 'inês-figueiral']],
  ['2026-12-10', ['tess-dunmallow', 'soraya-bell']],
] as const;

let browser: Browser;

beforeAll(async () => {
  browser = await startBrowser();
}, 120_000);

afterAll(async () => {
  await browser?.close();
});

it('prints a sheet of A4 for each client of the demo journal who has much to prepare', async () => {
  const journal = demoJournal();
  const all = reckonAll(journal);
  const lift = salonLiftOf(all);
  const findings = allFindings(journal);
  for (const [on, names] of SHEETS) {
    const mix = salonMix(needsBefore(all, on));
    const html = prepHtml('Day', (sheet) =>
      names
        .map((name) => {
          const own = findings.filter(({ client }) => client === name);
          return prepMarkdown(journal, clientOf(journal, name), all.get(name) ?? [], own, lift, { on, mix, sheet });
        })
        .join('\n'),
    );
    await withPage(browser, html, {}, async ({ page }) => {
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect(`${on}: ${pdf.match(/\/Type\s*\/Page\b/g)?.length}`).toBe(`${on}: ${names.length}`);
    });
  }
}, 120_000);
