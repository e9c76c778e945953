import { describe, expect, it } from 'vitest';
import type { Journal } from '../../src/journal/journal.ts';
import { dueMarkdown } from '../../src/pages/due-page.ts';
import { dueClients } from '../../src/reckon/ahead/due.ts';
import { lapsingTests } from '../../src/reckon/ahead/lapsing.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { demoJournal, journalOf, readText, SHELF } from './compiled.ts';

const SPAN = { on: '2026-11-25', until: '2026-12-23' };

const listOf = (journal: Journal): Parameters<typeof dueMarkdown>[1] => {
  const all = reckonAll(journal);
  return {
    ...dueClients(all, SPAN.on, SPAN.until),
    lapsing: lapsingTests(journal, all, SPAN.on, SPAN.until),
  };
};

const pageOf = (notes: string): string => {
  const journal = journalOf(`${SHELF}\n${notes}`);
  return dueMarkdown(journal, listOf(journal), SPAN);
};

const colour = (date: string, client: string, rest: string): string =>
  `visit ${date} ${client}\n  bowl A 40 cream 7/0 + 60 dev-6\n${rest}\n`;

describe('the page of who is due', () => {
  it('has the overdue with how late, the due with their windows, and what is noted for the visit', () => {
    const page = pageOf(
      colour('2026-09-02', 'wren-abbott', '  next 6-8w roots, A -20% "bring a picture"') +
        colour('2026-10-07', 'otto-lund', '  hold lightener to 2027-01-01\n  next from 2026-12-02') +
        colour('2026-10-07', 'zoe-zed', '  next 2026-12-19 14:00 foils') +
        colour('2026-01-07', 'amy-long', '  next 8w') +
        colour('2026-03-07', 'new-one', ''),
    );
    expect(page).toContain('2026-11-25, Wednesday, to 2026-12-23, Wednesday · Harbour Row');
    expect(page).toContain(
      '| wren-abbott | 2026-10-14 to 2026-10-28 | 4 weeks | `next` | 2026-09-02 | roots, A -20%; “bring a picture” |',
    );
    expect(page).toContain(
      '| otto-lund | from 2026-12-02 | `next` | 2026-10-07 | **hold: no lightener until 2027-01-01** |',
    );
    expect(page).toContain('| zoe-zed | 2026-12-19 14:00 | booked | 2026-10-07 | foils |');
    expect(page.indexOf('## Overdue')).toBeLessThan(page.indexOf('## Due'));
    expect(page.split('## Away for more than half a year')[1]).toContain('| amy-long |');
    expect(page.split('## Nothing to go by')[1]).toContain('| new-one | 2026-03-07 |');
  });

  it('says her rhythm where no `next` stands', () => {
    const page = pageOf(['2026-07-22', '2026-09-02', '2026-10-14'].map((date) => colour(date, 'wren', '')).join(''));
    expect(page).toContain('| wren | 2026-11-25 | roots every 42 days | 2026-10-14 |');
  });

  it('says which skin test will not hold, by when it is to be made, and the caution', () => {
    const page = pageOf(
      `client wren\n  test skin 2026-06-01 10:00 cream read 2026-06-03 11:00 clear\n${colour('2026-10-07', 'wren', '  next 2026-12-12')}` +
        `client otto\n  test skin 2026-11-01 cream read 2026-11-03 reaction\n${colour('2026-09-02', 'otto', '  next 8w')}`,
    );
    expect(page).toContain(
      '| wren | cream | 2026-12-12 | past its time since 2026-12-01 | 2026-06-01 read 2026-06-03 | 2026-12-10 |',
    );
    expect(page).toContain(
      '| otto | cream | 2026-11-25 | POSITIVE | 2026-11-01 read 2026-11-03 | no colour of this product |',
    );
    expect(page).toContain('medical advice comes before any further dye');
    expect(page.trimEnd()).toMatch(/local law and licensed practice come first\.$/);
    expect(page).not.toMatch(/\bsafe\b/i);
  });

  it('does not ask for a test of somebody who is away', () => {
    expect(pageOf(colour('2026-01-07', 'amy', '  next 8w'))).not.toContain('Skin tests to make');
  });

  it('says so where nobody is due', () => {
    expect(pageOf('')).toContain('By the notes nobody is due or overdue.');
  });

  it('keeps what was typed a text', () => {
    const page = pageOf(
      `client wren "W | <b>x</b> [a](http://b)"\n${colour('2026-10-07', 'wren', '  next 8w "a | <i>b</i>"')}`,
    );
    expect(readText(page)).not.toContain('\\');
    expect(readText(page)).toContain('W | <b>x</b> [a](http://b)');
    expect(page.match(/^\| W /gm)).toHaveLength(2);
  });

  it('holds the demo: the windows of `next` and those who are booked', () => {
    const journal = demoJournal();
    const page = dueMarkdown(journal, listOf(journal), SPAN);
    // By hand: the last visit 2026-09-04 has `next 8w roots, A -20%`.
    expect(page).toContain('| Wren Abbott | 2026-10-30 | 3 weeks and 5 days | `next` | 2026-09-04 | roots, A -20% |');
    expect(page).toContain('| Tamsin Orme | 2026-12-19 14:00 |');
  });
});
