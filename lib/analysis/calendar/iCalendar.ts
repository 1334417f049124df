import { isoDatePlus } from '../isoDate';
import type { CalendarRow } from './calendarRows';

/** Longest line in octets, its end not counted (RFC 5545, 3.1). */
const mostOctets = 75;

/**
 * The rows as an iCalendar text (RFC 5545): one all-day event a row, lines ended by CRLF and folded at 75 octets.
 *
 * The identifier of an event is made of kind, subject and day, so that the same event imported again takes the place of the old one; the stamp
 * is the day asked on, so that the same rows give the same text. The note is added to every description.
 */
export function iCalendar(rows: readonly CalendarRow[], asOf: string, note: string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Endfloat//Overhaul calendar//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...rows.flatMap((row) => eventLines(row, asOf, note)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(
  { kind, date, subject, summary, detail }: CalendarRow,
  asOf: string,
  note: string,
): readonly string[] {
  const description = [detail, note].filter((text) => text !== '').join('\n');
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(`${kind.replaceAll(' ', '-')}.${subject}.${date}@endfloat`)}`,
    `DTSTAMP:${basic(asOf)}T000000Z`,
    `DTSTART;VALUE=DATE:${basic(date)}`,
    `DTEND;VALUE=DATE:${basic(isoDatePlus(date, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    ...(description === '' ? [] : [`DESCRIPTION:${escaped(description)}`]),
    `CATEGORIES:${escaped(kind)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

function basic(date: string): string {
  return date.replaceAll('-', '');
}

/** Backslash, semicolon, comma and line ends escaped (RFC 5545, 3.3.11); other control characters are left out. */
function escaped(text: string): string {
  return text
    .replaceAll(/\r\n?/g, '\n')
    .replaceAll(/[\\;,]/g, (character) => `\\${character}`)
    .replaceAll('\n', '\\n')
    .replaceAll(/\p{Cc}/gu, '');
}

/** Folds a line so that no part is longer than 75 octets and no character is cut; parts after the first start with a space. */
function folded(line: string): string {
  const encoder = new TextEncoder();
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > mostOctets) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}
