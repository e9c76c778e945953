import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Journal } from '../../src/journal/journal.ts';
import { cardMarkdown } from '../../src/pages/card.ts';
import { prepMarkdown } from '../../src/pages/prep.ts';
import { lapsingTests } from '../../src/reckon/ahead/lapsing.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { judge } from '../../src/rules/judging.ts';
import { addDays, dateOf, dayNumber } from '../../src/text/dates.ts';
import { journalOf } from '../reckon/journal-of.ts';

const notes = (policy: string, test: string, rest = ''): string => `salon harbour "Harbour Row"
  ${policy}
range cream "Larkfield cream" permanent
  mix 1:1.5
product dev-6 "Cream developer" developer 6%
client wren-abbott "Wren Abbott"
  ${test}
${rest}`;

const visit = (on: string): string => `visit ${on} wren-abbott\n  bowl A 20 cream 7/0 + 30 dev-6\n  on 14:00 A roots\n`;

type Said = { readonly card: string; readonly prep: string; readonly expired: boolean };

const saidOf = (journal: Journal, on: string): Said => {
  const all = reckonAll(journal);
  const client = journal.clients.get('wren-abbott');
  const visits = all.get('wren-abbott') ?? [];
  const { findings } = judge(journal, on).all();
  if (client === undefined) throw new Error('no client');
  return {
    card: cardMarkdown(journal, client, visits, findings, { on }),
    prep: prepMarkdown(journal, client, visits, findings, [], { on }),
    expired: findings.some(({ rule }) => rule === 'skin-test-expired'),
  };
};

const said = (text: string, on: string): Said => saidOf(journalOf(text), on);

describe('how long a skin test holds', () => {
  test.each([
    ['every 6mo alone', 'policy skin-test every 6mo', 'test skin 2026-03-25 cream read 2026-03-27 clear', '2026-09-25'],
    ['weeks', 'policy skin-test 48h every 26w', 'test skin 2026-03-25 cream read 2026-03-27 clear', '2026-09-23'],
    [
      'from the reading',
      'policy skin-test 48h every 26w from read',
      'test skin 2026-03-25 cream read 2026-03-27 clear',
      '2026-09-25',
    ],
    ['the reading alone', 'policy skin-test 48h every 6mo', 'test skin cream read 2026-03-27 clear', '2026-09-27'],
    [
      'to the end of a short month',
      'policy skin-test 48h every 6mo',
      'test skin 2025-08-31 cream read 2025-09-02 clear',
      '2026-02-28',
    ],
  ])('%s', (_, policy, line, last) => {
    const on = said(notes(policy, line, visit(last)), last);
    expect(on.card).toContain(`holds until ${last}`);
    expect(on.prep).toContain(`holds until ${last}`);
    expect(on.expired).toBe(false);
    const next = addDays(last, 1);
    const after = said(notes(policy, line, visit(next)), next);
    expect(after.card).toContain(`past its time since ${next}`);
    expect(after.card).not.toContain('set no end');
    expect(after.expired).toBe(true);
  });

  test('two policy lines set one each, and a lead of months sets nothing', () => {
    const line = 'test skin 2026-03-25 10:00 cream read 2026-03-27 11:00 clear';
    const two = said(notes('policy skin-test 24h\n  policy skin-test every 6mo', line), '2026-06-01');
    expect(two.card).toContain('holds until 2026-09-25');
    const one = journalOf(notes('policy skin-test 6mo', line));
    expect(
      judge(one, '2026-06-01')
        .all()
        .findings.map(({ rule }) => rule),
    ).toEqual(['policy-unclear']);
    expect(one.salon.skinTest).toMatchObject({ lead: undefined, every: undefined });
  });

  test('no page says that a test holds where the check says it is past its time, and the other way round', () => {
    const day = fc.integer({ min: dayNumber('2025-01-01'), max: dayNumber('2026-12-31') });
    const term = fc.constantFrom('every 6mo', 'every 26w', 'every 1mo', 'every 90d', 'every 1.5mo');
    fc.assert(
      fc.property(
        day,
        fc.boolean(),
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 10, max: 400 }),
        term,
        fc.boolean(),
        (made, dated, reading, later, every, fromRead) => {
          const line = `test skin ${dated ? `${dateOf(made)} ` : ''}cream read ${dateOf(made + reading)} clear`;
          const on = dateOf(made + later);
          const one = said(notes(`policy skin-test 48h ${every}${fromRead ? ' from read' : ''}`, line, visit(on)), on);
          for (const page of [one.card, one.prep]) {
            expect(/\| holds/.test(page)).toBe(!one.expired);
            expect(page).not.toContain('set no end');
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  test('without a salon, or a shelf, nothing holds, and the first line of the alerts says so', () => {
    const text = notes('policy skin-test 48h every 26w', 'test skin 2026-03-25 cream read 2026-03-27 clear');
    const salonless = text.replace(/salon[\s\S]*?range/, 'range');
    const shelfless = text.replace(/range[\s\S]*?client/, 'client');
    for (const [one, missing] of [
      [salonless, 'No salon was found'],
      [shelfless, 'No shelf was found'],
    ] as const) {
      const { card, prep } = said(one, '2026-06-01');
      for (const page of [card, prep]) {
        expect(/## Before touching the hair\n\n\*\*(.*?) with/.exec(page)?.[1]).toBe(missing);
        expect(page).not.toMatch(/\| holds/);
        expect(page).not.toContain('nothing that stops the work');
      }
    }
    expect(said(text, '2026-06-01').card).not.toContain('was found with these notes');
  });
});

describe('tests that end within some weeks', () => {
  const listed = (text: string, on: string, until: string) => {
    const journal = journalOf(text);
    return lapsingTests(journal, reckonAll(journal), on, until).map(({ client, products, last }) => [
      client.name,
      products,
      last,
    ]);
  };
  const text = notes('policy skin-test 48h every 6mo', 'test skin 2026-03-25 cream read 2026-03-27 clear');

  test('are listed with or without a visit or a `next`', () => {
    expect(listed(text, '2026-09-01', '2026-09-30')).toEqual([['wren-abbott', ['cream'], '2026-09-25']]);
    expect(listed(text, '2026-08-01', '2026-08-30')).toEqual([]);
    expect(listed(text, '2026-09-26', '2026-10-30')).toEqual([]);
    expect(listed(text.replace('cream read', 'read'), '2026-09-01', '2026-09-30')).toEqual([
      ['wren-abbott', [], '2026-09-25'],
    ]);
  });

  test('a newer test takes the place of an older one', () => {
    const newer = `${text}  test skin 2026-08-20 cream read 2026-08-22 clear\n`;
    expect(listed(newer, '2026-09-01', '2026-09-30')).toEqual([]);
  });
});
