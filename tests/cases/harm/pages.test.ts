import { expect, test } from 'vitest';
import { joinSources } from '../../../src/journal/journal.ts';
import { readSource } from '../../../src/journal/source.ts';
import { alertItems } from '../../../src/pages/alerts.ts';
import { cardMarkdown } from '../../../src/pages/card.ts';
import { prepMarkdown } from '../../../src/pages/prep.ts';
import { reckonAll } from '../../../src/reckon/visit.ts';
import { judge } from '../../../src/rules/judging.ts';
import { notesOf, sentencesOf } from './placed.ts';

/** How a page denies: that something is not there, or that nothing stands against the work. */
const DENIAL = /The notes have no `reaction`|show no reaction|nothing that stops|nothing stops|no alerts/i;
const DAYS = ['2026-08-10', '2026-11-30'];

test.each([3, 11])('no page denies a reaction while harm told in words stands unanswered, seed %i', (seed) => {
  const sentences = sentencesOf('harm.tsv');
  const journal = joinSources([readSource('placed.bowl', new TextEncoder().encode(notesOf(sentences, seed)))]);
  const reckoned = reckonAll(journal);
  const { findings } = judge(journal, '2026-11-30').all();
  const told = findings.filter(({ rule }) => rule === 'harm-told');
  expect(told.length).toBeGreaterThan(150);
  for (const { client: name, message } of told) {
    const client = journal.clients.get(name ?? '');
    if (client === undefined) throw new Error(`no client ${name}`);
    const visits = reckoned.get(client.name) ?? [];
    const own = findings.filter((finding) => finding.client === client.name);
    for (const on of DAYS) {
      const pages = [
        cardMarkdown(journal, client, visits, own, { on }),
        prepMarkdown(journal, client, visits, own, [], { on }),
      ];
      for (const page of pages) {
        expect(page).not.toMatch(DENIAL);
        expect(page.split(/^## /m)[1]).toContain('`harm-told`');
      }
      expect(alertItems({ journal, client, visits, findings: own, on }).join('\n'), message).toContain('`harm-told`');
    }
  }
});
