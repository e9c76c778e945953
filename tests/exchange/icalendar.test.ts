import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarText, type DayEvent, escapedText, foldedLine } from '../../src/exchange/icalendar.ts';

const event = (given: Partial<DayEvent> = {}): DayEvent => ({
  uid: 'wren-abbott-2026-09-04-due@bowlbook',
  first: '2026-12-02',
  dayAfter: '2026-12-03',
  summary: 'Wren Abbott: due',
  description: undefined,
  category: 'Bowlbook due',
  ...given,
});

const readBack = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));

const octets = (text: string): number => Buffer.byteLength(text, 'utf8');

describe('a calendar', () => {
  it('is byte for byte as RFC 5545 has it (3.4, 3.6, 3.6.1)', () => {
    expect(calendarText([event({ description: 'roots, A -20%\nhold; none' })], '2026-11-25')).toBe(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Bowlbook//Who is due//EN',
        'CALSCALE:GREGORIAN',
        'BEGIN:VEVENT',
        'UID:wren-abbott-2026-09-04-due@bowlbook',
        'DTSTAMP:20261125T000000Z',
        'DTSTART;VALUE=DATE:20261202',
        'DTEND;VALUE=DATE:20261203',
        'SUMMARY:Wren Abbott: due',
        'DESCRIPTION:roots\\, A -20%\\nhold\\; none',
        'CATEGORIES:Bowlbook due',
        'TRANSP:TRANSPARENT',
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    );
  });

  it('reads back with a parser of its own: whole days, the end one past the last', () => {
    const [one] = readBack(calendarText([event({ dayAfter: '2026-12-17' })], '2026-11-25'));
    expect([one?.uid, one?.summary, one?.startDate.isDate]).toEqual([
      'wren-abbott-2026-09-04-due@bowlbook',
      'Wren Abbott: due',
      true,
    ]);
    expect([one?.startDate.toString(), one?.endDate.toString(), one?.duration.toString()]).toEqual([
      '2026-12-02',
      '2026-12-17',
      'P15D',
    ]);
  });

  it('gives back any text, in lines of at most 75 octets that cut no character (RFC 5545, 3.1)', () => {
    const texts = fc.string({ unit: 'grapheme', maxLength: 120 });
    fc.assert(
      fc.property(texts, texts, (summary, description) => {
        const text = calendarText([event({ summary, description })], '2026-11-25');
        const lines = text.split('\r\n');
        expect(Math.max(...lines.map(octets))).toBeLessThanOrEqual(75);
        expect(lines.join('')).not.toMatch(/[\r\n]/);
        expect(Buffer.from(text, 'utf8').toString('utf8')).toBe(text);
        const [one] = readBack(text);
        expect(one?.summary).toBe(summary);
        expect(one?.description).toBe(description);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps a hostile name a text: no line of its own, no control', () => {
    const summary = 'A\r\nEND:VEVENT\nBEGIN:VALARM\u0000\u0007\ud800;,\\';
    const text = calendarText([event({ summary })], '2026-11-25');
    expect(text.match(/^END:VEVENT/gm)).toHaveLength(1);
    expect(readBack(text).map((one) => one.summary)).toEqual(['A\nEND:VEVENT\nBEGIN:VALARM;,\\']);
  });
});

describe('a folded line', () => {
  it('goes on after a line end and a space, at 75 octets and not before', () => {
    expect(foldedLine('x'.repeat(75))).toBe('x'.repeat(75));
    expect(foldedLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
    expect(foldedLine('x'.repeat(75 + 74 + 1))).toBe(`${'x'.repeat(75)}\r\n ${'x'.repeat(74)}\r\n x`);
    // Three octets each: the twenty-sixth would be cut.
    expect(foldedLine('字'.repeat(26))).toBe(`${'字'.repeat(25)}\r\n 字`);
    expect(foldedLine(`${'x'.repeat(73)}😀`)).toBe(`${'x'.repeat(73)}\r\n 😀`);
  });
});

describe('an escaped text', () => {
  it('has backslashes before backslash, semicolon and comma, and line ends as \\n (RFC 5545, 3.3.11)', () => {
    expect(escapedText('a\\b;c,d:e"f\ng\r\nh\ri\tj')).toBe('a\\\\b\\;c\\,d:e"f\\ng\\nh\\nij');
  });
});
