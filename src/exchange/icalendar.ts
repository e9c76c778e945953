/**
 * Calendars as RFC 5545 (iCalendar, 2009) has them: whole-day events in UTF-8, lines of at most 75 octets.
 *
 * Reads: days and texts. Gives: one file. Runs again: when a day or a text changes.
 */

/** A whole-day event. Dates are ISO 8601. */
export type DayEvent = {
  /** The same for the same event in every file, so that a calendar takes a later one for a change of it. */
  readonly uid: string;
  readonly first: string;
  /** The last day that counts; the file has the day after it, as the standard asks (3.6.1). */
  readonly dayAfter: string;
  readonly summary: string;
  readonly description: string | undefined;
  readonly category: string;
};

/** Octets of a line without its end: RFC 5545, 3.1. */
const LINE_OCTETS = 75;

const octets = (text: string): number => Buffer.byteLength(text, 'utf8');

/** A line in pieces of at most 75 octets; what is carried over begins with a space. No character is cut in two. */
export const foldedLine = (line: string): string => {
  const pieces: string[] = [];
  let piece = '';
  let used = 0;
  for (const character of line) {
    const size = octets(character);
    if (used + size > LINE_OCTETS) {
      pieces.push(piece);
      piece = ' ';
      used = 1;
    }
    piece += character;
    used += size;
  }
  return [...pieces, piece].join('\r\n');
};

// Controls cannot stand in a value, escaped or not: RFC 5545, 3.1 and 3.3.11. Half a surrogate pair is no UTF-8.
const CONTROL = /[\p{Cc}\p{Cs}]/gu;

/** Text as a value: backslash, semicolon, comma and line end escaped (3.3.11), other controls left out. */
export const escapedText = (text: string): string =>
  text
    .replace(/\r\n?|\n/g, '\n')
    .replace(/[\\;,]/g, (one) => `\\${one}`)
    .split('\n')
    .map((line) => line.replace(CONTROL, ''))
    .join('\\n');

const dateValue = (date: string): string => date.replaceAll('-', '');

const eventLines = (stamp: string, { uid, first, dayAfter, summary, description, category }: DayEvent): string[] => [
  'BEGIN:VEVENT',
  `UID:${escapedText(uid)}`,
  `DTSTAMP:${stamp}`,
  `DTSTART;VALUE=DATE:${dateValue(first)}`,
  `DTEND;VALUE=DATE:${dateValue(dayAfter)}`,
  `SUMMARY:${escapedText(summary)}`,
  ...(description === undefined ? [] : [`DESCRIPTION:${escapedText(description)}`]),
  `CATEGORIES:${escapedText(category)}`,
  'TRANSP:TRANSPARENT',
  'END:VEVENT',
];

/** A calendar of whole-day events, stamped with the day it is made for. */
export const calendarText = (events: readonly DayEvent[], on: string): string => {
  const stamp = `${dateValue(on)}T000000Z`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Bowlbook//Who is due//EN',
    'CALSCALE:GREGORIAN',
    ...events.flatMap((event) => eventLines(stamp, event)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${foldedLine(line)}\r\n`).join('');
};
