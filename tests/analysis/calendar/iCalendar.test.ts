import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CalendarRow } from '../../../lib/analysis/calendar/calendarRows';
import { iCalendar } from '../../../lib/analysis/calendar/iCalendar';

const row: CalendarRow = {
  kind: 'bring forward',
  date: '2027-12-31',
  subject: 'A;1, \\B',
  summary: 'Overhaul A;1, \\B',
  detail: 'first\r\nsecond',
};

/** Undoes folding and escaping as RFC 5545 states them; an independent reading of the text. */
function readBack(text: string): readonly Readonly<Record<string, string>>[] {
  const lines = text.replaceAll('\r\n ', '').split('\r\n');
  const events: Record<string, string>[] = [];
  for (const line of lines) {
    const [, name = '', value = ''] = /^([A-Z-]+)(?:;[^:]*)?:(.*)$/s.exec(line) ?? [];
    if (line === 'BEGIN:VEVENT') events.push({});
    const plain = value.replaceAll(/\\([\\;,nN])/g, (_, sign: string) =>
      sign.toLowerCase() === 'n' ? '\n' : sign,
    );
    const event = events.at(-1);
    if (event !== undefined) event[name] = plain;
  }
  return events;
}

describe('iCalendar', () => {
  it('writes an all-day event that ends on the next day, escaped', () => {
    const text = iCalendar([row], '2026-10-21', 'the manual comes first');
    expect(text).toBe(
      [
        'BEGIN:VCALENDAR',
        'VERSION:2.0',
        'PRODID:-//Endfloat//Overhaul calendar//EN',
        'CALSCALE:GREGORIAN',
        'METHOD:PUBLISH',
        'BEGIN:VEVENT',
        'UID:bring-forward.A\\;1\\, \\\\B.2027-12-31@endfloat',
        'DTSTAMP:20261021T000000Z',
        'DTSTART;VALUE=DATE:20271231',
        'DTEND;VALUE=DATE:20280101',
        'SUMMARY:Overhaul A\\;1\\, \\\\B',
        'DESCRIPTION:first\\nsecond\\nthe manual comes first',
        'CATEGORIES:bring forward',
        'TRANSP:TRANSPARENT',
        'END:VEVENT',
        'END:VCALENDAR',
        '',
      ].join('\r\n'),
    );
  });

  it('every text comes back, in lines of at most 75 octets of whole characters', () => {
    const words = fc.string({
      unit: fc.constantFrom('a', ' ', ',', ';', '\\', '\n', 'é', '’', '轴', '🛠', '"', ':'),
      maxLength: 200,
    });
    fc.assert(
      fc.property(words, words, (summary, detail) => {
        const text = iCalendar([{ ...row, summary, detail }], '2026-10-21', '');
        for (const line of text.split('\r\n')) {
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
          expect(line.isWellFormed()).toBe(true);
        }
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        const [event] = readBack(text);
        expect(event?.SUMMARY).toBe(summary);
        expect(event?.DESCRIPTION ?? '').toBe(detail);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('gives the same identifier for the same event and different ones for different events', () => {
    const others = [
      row,
      { ...row, kind: 'overhaul' as const },
      { ...row, subject: 'C' },
      { ...row, date: '2027-12-30' },
    ];
    const uids = readBack(iCalendar([...others, { ...row, summary: 'changed' }], '2026-10-21', '')).map(
      (event) => event.UID,
    );
    expect(new Set(uids.slice(0, 4)).size).toBe(4);
    expect(uids[4]).toBe(uids[0]);
  });
});
