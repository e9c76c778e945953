import { describe, expect, it } from 'vitest';
import type { Journal } from '../../src/journal/journal.ts';
import { prepMarkdown, salonLiftOf } from '../../src/pages/prep.ts';
import { clientsOn, comingMarkdown, nobodyMarkdown } from '../../src/pages/prep-day.ts';
import { prepHtml } from '../../src/pages/prep-html.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { allFindings, cardOf, clientOf, demoJournal, journalOf, SHELF } from './compiled.ts';

const prepOf = (journal: Journal, name: string, on: string): string => {
  const all = reckonAll(journal);
  const own = allFindings(journal).filter(({ client }) => client === name);
  return prepMarkdown(journal, clientOf(journal, name), all.get(name) ?? [], own, salonLiftOf(all), { on });
};

const section = (sheet: string, heading: string): string =>
  sheet.split(/^## /m).find((part) => part.startsWith(heading)) ?? '';

const NOTES = `${SHELF.replace('measure scoop 10 g', 'measure scoop 10 g\n  time 20-50 min from first-on, check every 10 min')}
client ada-lowe "Ada Lowe"
  born 1990-05-01
  allergy nickel
  natural 6
  test skin 2026-06-01 11:00 cream read 2026-06-03 11:30 clear

visit 2026-04-24 10:00 ada-lowe by io
  bowl A 24 cream 7/43 + 36 dev-6
  place A roots apply on-scalp
  on 10:10 A roots
  off 10:50 A
visit 2026-06-05 10:00 ada-lowe by io
  aim copper, softer
  bowl A 24 cream 7/43 + 36 dev-6
  bowl B 20 clay + 40 dev-6
  place A roots apply on-scalp
  place B top weave x6 foil
  leave crown "stands up"
  on 10:10-10:30 A roots
  on 10:15 B top
  check 10:25 B top orange
  check 10:40 B top yellow
  off 10:50 B
  off 11:00 A
  left A 9 binned
  left B 6 kept
  result roots 7 copper
  note begin at the nape
  deposit 20 for 2026-07-24
  next 2026-07-24 14:00 roots, B +10% "bring a picture"
`;

describe('the sheet beside the trolley', () => {
  const sheet = prepOf(journalOf(NOTES), 'ada-lowe', '2026-07-24');

  it('is headed with the client, the day and the time asked for, and begins with the alerts', () => {
    expect(sheet.startsWith('# Ada Lowe\n\nTo prepare for 2026-07-24, Friday, 14:00 · ')).toBe(true);
    expect(sheet.match(/^## .*$/gm)?.[0]).toBe('## Before touching the hair');
    expect(section(sheet, 'Before')).toContain('- **Allergy** nickel');
  });

  it('says what was promised: the plan, a deposit for the day, a note to begin by', () => {
    const asked = section(sheet, 'Asked for');
    expect(asked).toContain('noted on 2026-06-05: 2026-07-24 14:00, roots, B +10 % “bring a picture”');
    expect(asked).toContain('- **Deposit** taken on 2026-06-05: 20.00 GBP, for 2026-07-24');
    expect(asked).toContain('- **Note** begin at the nape');
  });

  it('shows each bowl as last time and as to be mixed, with the sum', () => {
    const bowls = section(sheet, 'Bowls to mix');
    expect(bowls).toContain('| cream 7/43 | 24 | **24** |');
    expect(bowls).toContain('- **Bowl A** for 17 mm about 55 g (51 g used before), +10 % = **60 g**');
    expect(bowls).toContain('- **Bowl B** +10 % asked for, of 60 g = **66 g**; by what bowls like it needed 59 g');
    expect(bowls).toContain('| clay | 20 | **22** |');
    const worked = section(sheet, 'How the grams came about');
    expect(worked).toContain(
      '- **Bowl A** 60 g last time, 9 g left over; bowls like it needed 51 g (2026-06-05, 15 mm); on 17 mm, with which 50 % of a bowl grows, 54.6 g; eight of ten 46 to 64 g; × 1.1 to spare, 60.1 g; how often grams made so run short the notes are too young to say',
    );
    expect(worked).toContain('- **Bowl B** 60 g last time, 6 g left over and kept; ');
  });

  it('warns where less is asked for than was used last time', () => {
    const less = NOTES.replace('B +10%', 'B -20%');
    expect(section(prepOf(journalOf(less), 'ada-lowe', '2026-07-24'), 'Bowls to mix')).toContain(
      '- **Bowl B** −20 % asked for, of 60 g = **48 g**; less than the 54 g used last time; ',
    );
  });

  it('says which bowl is not counted for want of what was left, and that growth is scaled no further than twice', () => {
    const visit = (date: string, left: string): string =>
      `visit ${date} 10:00 bo-reed\n  bowl A 40 cream 7/43 + 60 dev-6\n  place A roots apply on-scalp\n${left}`;
    const notes = `${SHELF}\nclient bo-reed "Bo Reed"\n${visit('2026-01-05', '')}${visit('2026-02-02', '  left A 20 binned\n')}${visit('2026-05-04', '')}`;
    const page = prepOf(journalOf(notes), 'bo-reed', '2026-08-31');
    expect(section(page, 'How the grams')).toContain(
      'the bowl of 2026-05-04 is not counted, for no note says what was left',
    );
    expect(section(page, 'How the grams')).toContain(
      'a bowl is scaled to no more than twice the growth that it was for, and no less than half: so that of 2026-02-02',
    );
  });

  it('keeps what was said at a look', () => {
    const said = NOTES.replace('check 10:25 B top orange', 'check 10:25 B top orange "temples slow"');
    expect(section(prepOf(journalOf(said), 'ada-lowe', '2026-07-24'), 'Last time')).toContain(
      '- **Looked at** 10:25, B top orange “temples slow”',
    );
  });

  it('gives grams that add up to the sum shown', () => {
    const odd = NOTES.replaceAll('24 cream 7/43 + 36 dev-6', '45 cream 7/43 + 3% 1:1.5').replace(
      'product bond',
      'product dev-3 "Mild developer" developer 3%\nproduct bond',
    );
    const rows = section(prepOf(journalOf(odd), 'ada-lowe', '2026-07-24'), 'Bowls to mix').split('\n');
    const figures = rows
      .filter((row) => /^\| (cream|dev-3|\*\*In all)/.test(row))
      .slice(0, 3)
      .map((row) => Number(row.split('|')[2]));
    expect(figures).toEqual([45, 68, 113]);
  });

  it('says where the bowls went, what came of it, and how fast the head lifts', () => {
    const last = section(sheet, 'Last time');
    for (const said of [
      '- **Aim** copper, softer',
      '- **Placed** B · top · 6 weaves',
      '- **Left out** crown',
      '- **Result** roots 7 copper',
    ])
      expect(last).toContain(said);
    expect(last).toMatch(
      /\*\*Pace B, clay\*\* About 25 min to yellow the last time that reached it \(\d{4}-\d\d-\d\d\); .+Judge by the hair, not the clock\./,
    );
  });

  it('leaves room for the clock, a look as often as the shelf asks', () => {
    const row = section(sheet, 'Clock')
      .split('\n')
      .find((line) => line.startsWith('| B top'));
    expect(row).toContain('| 20–50 min from first on | 35 min |');
    expect(row).toMatch(/\+10 .+\+20 .+\+30 .+\+40 /);
    expect(row).not.toContain('+50');
  });

  it('shows the tests as they stand on the day, and defers to maker, law and practice', () => {
    expect(section(sheet, 'Tests')).toContain('| cream | holds until 2026-11-30 |');
    expect(section(prepOf(journalOf(NOTES), 'ada-lowe', '2026-12-01'), 'Tests')).toContain('past its time since');
    expect(sheet).toContain('local law and licensed practice come first');
  });

  it('shows what is noted for the day already, and plans by the visits before it', () => {
    const noted = `${NOTES}\nvisit 2026-07-24 14:00 ada-lowe by io\n  aim darker\n  again A from 2026-06-05 A\n`;
    const page = prepOf(journalOf(noted), 'ada-lowe', '2026-07-24');
    expect(section(page, 'Noted for the day')).toContain('- **Aim** darker');
    expect(section(page, 'Noted for the day')).toContain('**Bowl A** · 60 g');
    expect(page).not.toContain('## Bowls to mix');
    const compared = section(page, 'Last time’s bowls, to compare');
    expect(compared).toContain('- **Bowl A** of 2026-06-05: 60 g, 51 g used: 24 g cream 7/43 + 36 g dev-6, 6 %');
    expect(compared).not.toContain('| Mix |');
    expect(section(page, 'Clock')).toContain('| A |');
  });

  it('gives no bowls to mix that an aim, a refusal or a hold rules out', () => {
    const ruled = (lines: string): string =>
      prepOf(journalOf(`${NOTES}\nvisit 2026-07-24 14:00 ada-lowe by io\n${lines}`), 'ada-lowe', '2026-07-24');
    for (const [lines, why] of [
      ['  aim softer, no lightener\n', '- **Ruled out** B, by the aim “softer, no lightener”'],
      ['  declined lightener "rather not"\n', '- **Ruled out** B, declined: lightener “rather not”'],
    ] as const) {
      expect(section(ruled(lines), 'Last time’s bowls')).toContain(why);
      expect(ruled(lines)).not.toContain('## Bowls to mix');
    }
    const held = NOTES.replace('  natural 6', '  natural 6\n  hold lightener to 2027-01');
    expect(prepOf(journalOf(held), 'ada-lowe', '2026-07-24')).toContain(
      '- **Ruled out** B, by the hold on lightener, until 2027-01-01',
    );
    expect(ruled('  aim darker\n')).toContain('## Bowls to mix');
  });

  it('plans by the last visit that did the service asked for, and by no other', () => {
    const notes = `${SHELF}
client cy-marsh "Cy Marsh"
visit 2026-03-02 10:00 cy-marsh
  bowl A 20 clay + 40 dev-6
  bowl G 24 cream 9/1 + 36 dev-6
  place A top weave x6 foil
  place G lengths comb-through
  charge foils 80
  charge cream 20
visit 2026-05-04 10:00 cy-marsh
  bowl G 20 cream 6/4 + 30 dev-6
  place G lengths weave x8 foil
  charge lowlights 60
  next 8w foils
`;
    const page = prepOf(journalOf(notes), 'cy-marsh', '2026-06-29');
    const mix = section(page, 'Bowls to mix, foils as on 2026-03-02');
    expect(mix.match(/^\*\*Bowl .+?\*\*/gm)).toEqual(['**Bowl A**']);
    expect(mix).toContain('- **Not asked for** G was mixed too, 60 g: 24 g cream 9/1 + 36 g dev-6, 6 %');
    expect(section(page, 'Last colour')).toContain('- **Mixed** G, 50 g: 20 g cream 6/4 + 30 g dev-6, 6 %');
    const both = prepOf(journalOf(notes.replace('8w foils', '8w foils, cream')), 'cy-marsh', '2026-06-29');
    expect(section(both, 'Bowls to mix').match(/^\*\*Bowl .+?\*\*/gm)).toEqual(['**Bowl A**', '**Bowl G**']);
  });

  it('tells bowls of one name apart by their days', () => {
    const notes = `${SHELF}
client cy-marsh "Cy Marsh"
visit 2026-03-02 10:00 cy-marsh
  bowl A 24 cream 7/43 + 36 dev-6
  place A roots apply on-scalp
visit 2026-05-04 10:00 cy-marsh
  bowl A 20 cream 6/4 + 30 dev-6
  place A lengths comb-through
`;
    const page = prepOf(journalOf(notes), 'cy-marsh', '2026-06-29');
    expect(page.match(/^\*\*Bowl A of .+?\*\*/gm)).toEqual(['**Bowl A of 2026-05-04**']);
    expect(page).toContain('- **Bowl A** of 2026-03-02: 60 g: 24 g cream 7/43 + 36 g dev-6, 6 %');
  });

  it('says so where nothing is noted before', () => {
    const page = prepOf(journalOf(NOTES), 'ada-lowe', '2026-01-01');
    expect(page).toContain('The notes show no colour before this day.');
    expect(page).toContain('The notes promise nothing for this day.');
    expect(page).not.toContain('## Clock');
  });

  it('says how far the day is from the one that was meant', () => {
    const waits = NOTES.replace('next 2026-07-24 14:00', 'next 6-7w');
    const due = (on: string): string => section(prepOf(journalOf(waits), 'ada-lowe', on), 'Asked for');
    expect(due('2026-07-10')).toContain('; 2026-07-10 is 1 week earlier');
    expect(due('2026-07-20')).not.toMatch(/earlier|later/);
    expect(due('2026-07-28')).toContain('; 2026-07-28 is 4 days later');
  });

  it('can be made for every client of the demo journal', () => {
    const journal = demoJournal();
    const all = reckonAll(journal);
    const lift = salonLiftOf(all);
    for (const [name, client] of journal.clients) {
      const page = prepMarkdown(journal, client, all.get(name) ?? [], [], lift, { on: '2026-11-26' });
      expect(page).not.toMatch(/undefined|NaN|\[object/);
    }
  });
});

describe('the sheets of a day', () => {
  const two = `${NOTES}
client bo-reed "Bo Reed"
visit 2026-07-24 9:30 bo-reed
  cut
client cy-marsh "Cy Marsh"
visit 2026-06-12 cy-marsh
  cut
  next 7w
`;
  const journal = journalOf(two);
  const all = reckonAll(journal);

  it('are of those noted for it or named by next, in the order they come', () => {
    expect(clientsOn(all, '2026-07-24').map(({ name }) => name)).toEqual(['bo-reed', 'ada-lowe']);
    expect(clientsOn(all, '2026-07-31').map(({ name }) => name)).toEqual(['cy-marsh']);
    expect(clientsOn(all, '2026-07-30')).toEqual([]);
  });

  it('begin with who comes and when', () => {
    expect(comingMarkdown(all, '2026-07-24')).toBe('**2026-07-24, Friday** 2 clients: 09:30 Bo Reed; 14:00 Ada Lowe\n');
    expect(comingMarkdown(all, '2026-07-31')).toContain('1 client: awaited, no time noted: Cy Marsh');
  });

  it('name who is near where nobody comes', () => {
    expect(nobodyMarkdown(all, '2026-07-30')).toContain('- 2026-07-31, Friday: Cy Marsh');
    expect(nobodyMarkdown(all, '2027-01-01')).not.toContain('Within a week');
  });

  it('stand on one page with the figures drawn, and no two landmarks of one name', () => {
    const page = prepHtml('Day', (sheet) =>
      ['ada-lowe', 'bo-reed']
        .map((name) =>
          prepMarkdown(journal, clientOf(journal, name), all.get(name) ?? [], [], salonLiftOf(all), {
            on: '2026-07-24',
            sheet,
          }),
        )
        .join('\n'),
    );
    expect(page.match(/<h1 /g)).toHaveLength(2);
    expect(page).toContain('<figure class="figure placement">');
    expect(page).toContain('class="fill-in"');
    expect(page).not.toContain('<section class="alerts" aria-labelledby');
  });
});

describe('the clock on a card', () => {
  const visit = (lines: string): string =>
    cardOf(
      journalOf(`${NOTES}\nvisit 2026-08-01 10:00 ada-lowe\n  bowl A 40 clay + 80 dev-6\n${lines}`),
      'ada-lowe',
      { on: '2026-08-01' },
      [],
    ).split(/^### /m)[1] ?? '';

  it('is held against the shelf, past it too', () => {
    expect(visit('  on 10:10 A top\n  check 10:30 A gold\n  off 11:04 A\n')).toContain(
      '- **Shelf time** Peregrine clay 20 to 50 min from first on: A top 54 min (4 past)',
    );
    expect(visit('  on 10:10 A top\n  off 10:24 A\n')).toContain('A top 14 min (6 short)');
  });

  it('says how far sides that match are apart', () => {
    expect(
      visit('  on 10:10 A back left\n  on 10:22 A back right\n  off 10:50 A back left\n  off 10:59 A back right\n'),
    ).toContain('- **Sides** A back, left on at 10:10, right at 10:22, the left on for 3 minutes longer');
    expect(visit('  on 10:10 A left, right\n  off 10:50 A\n')).toContain(
      '- **Sides** A, both on at 10:10, both on for 40 minutes',
    );
  });

  it('says when what is still on is looked at next', () => {
    expect(visit('  on 10:10 A top\n  check 10:20 A top orange\n')).toContain(
      '- **Next look** A top at 10:30, every 10 min by the shelf',
    );
  });
});
