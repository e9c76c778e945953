import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { dueCalendar, dueCsv } from '../../src/exchange/due-calendar.ts';
import { dueClients } from '../../src/reckon/ahead/due.ts';
import { reckonAll } from '../../src/reckon/visit.ts';
import { SHELF } from '../reckon/bowls-of.ts';
import { journalOf } from '../reckon/journal-of.ts';

const NOTES = `${SHELF}
client wren-abbott "Wren; Abbott, the \\nelder"
  hold lightener to 2027-01
visit 2026-09-02 wren-abbott
  bowl A 40 cream 7/0 + 60 dev-6
  next 6-8w roots, A -20% "bring a picture"
visit 2026-10-21 zoë-harrow
  bowl A 40 cream 7/0 + 60 dev-6
  next 6-8w
visit 2026-10-21 otto-lund
  next 2026-12-12 13:00
visit 2025-10-21 amy-long
  next 8w
`;

const dueOn = (on: string) => dueClients(reckonAll(journalOf(NOTES)), on, '2026-12-23').due;

const eventsOn = (on: string) =>
  new ICAL.Component(ICAL.parse(dueCalendar(dueOn(on), [], on))).getAllSubcomponents('vevent').map((component) => {
    const { uid, summary, startDate, endDate, description } = new ICAL.Event(component);
    return { uid, summary, start: startDate.toString(), end: endDate.toString(), description };
  });

describe('who is due as a calendar', () => {
  it('has a window with the day after its last, a booked time, and the overdue on the day itself', () => {
    expect(eventsOn('2026-11-25').map(({ summary, start, end }) => [summary, start, end])).toEqual([
      ['Wren; Abbott, the \\nelder: overdue', '2026-11-25', '2026-11-26'],
      ['Wren; Abbott, the \\nelder: skin test to make or read (cream)', '2026-11-25', '2026-11-26'],
      ['zoë-harrow: due', '2026-12-02', '2026-12-17'],
      ['zoë-harrow: skin test to make or read (cream)', '2026-11-30', '2026-12-01'],
      ['otto-lund: 13:00', '2026-12-12', '2026-12-13'],
    ]);
  });

  it('says what is noted for it, what is held, and the caution of a test', () => {
    const [visit, test] = eventsOn('2026-11-25');
    expect(visit?.description).toContain('roots, A -20%, bring a picture');
    expect(visit?.description).toContain('Hold: no lightener until 2027-01-01.');
    expect(test?.description).toContain("The maker's instructions, local law and licensed practice come first.");
  });

  it('names each event the same on another day, and no two alike', () => {
    const [today, tomorrow] = ['2026-11-25', '2026-11-26'].map((on) => eventsOn(on).map(({ uid }) => uid));
    expect(tomorrow).toEqual(today);
    expect(new Set(today).size).toBe(5);
  });
});

describe('who is due as comma-separated values', () => {
  it('has a record a client, those away among them', () => {
    const rows = parse(dueCsv(dueOn('2026-11-25')), { columns: true }) as Record<string, string>[];
    expect(rows.map(({ client, status, by, time }) => [client, status, by, time])).toEqual([
      ['amy-long', 'away', 'next', ''],
      ['wren-abbott', 'overdue', 'next', ''],
      ['zoë-harrow', 'due', 'next', ''],
      ['otto-lund', 'due', 'booked', '13:00'],
    ]);
  });
});
