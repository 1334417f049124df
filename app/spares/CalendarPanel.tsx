'use client';

import type { CalendarRow } from '../../lib/analysis/calendar/calendarRows';
import { iCalendar } from '../../lib/analysis/calendar/iCalendar';
import type { SparesSettings } from '../../lib/analysis/demand/types';
import type { FleetResult } from '../../lib/analysis/types';
import { rewritten } from '../../lib/charts/rewritten';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { saveFile } from '../records/saveFile';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { cautions } from '../words/cautions';
import { counted } from '../words/counted';

const columns: readonly DataColumn<CalendarRow>[] = [
  { id: 'date', header: 'Day', date: true, rowHeader: true, value: ({ date }) => date },
  { id: 'kind', header: 'What', value: ({ kind }) => kind },
  { id: 'summary', header: 'Summary', text: true, value: ({ summary }) => rewritten(summary) },
  {
    id: 'detail',
    header: 'Details',
    text: true,
    value: ({ detail }) => rewritten(detail),
    cell: ({ detail }) => <Written text={detail === '' ? null : rewritten(detail)} reason="nothing to add" />,
  },
];

/** The next 24 months day by day, on screen and as a file for a calendar. */
export function CalendarPanel({
  fleet,
  settings,
}: {
  readonly fleet: FleetResult;
  readonly settings: SparesSettings;
}) {
  const asked = useAsked(fleet, 'calendar', settings);
  return (
    <section aria-label="Calendar">
      <h2>Calendar of the next 24 months</h2>
      <WithAnswer asked={asked}>
        {(rows) => (
          <>
            <DataTable
              caption={`${counted(rows.length, 'entry', 'entries')} in order of day`}
              columns={columns}
              rows={rows}
              rowKey={({ kind, subject, date }) => `${kind} ${subject} ${date}`}
              empty="Nothing is planned or due in the next 24 months."
            />
            {rows.length > 0 && (
              <p className="buttons">
                <button
                  type="button"
                  onClick={() =>
                    saveFile(
                      'overhauls-and-orders.ics',
                      iCalendar(rows, fleet.asOf, cautions.join(' ')),
                      'text/calendar;charset=utf-8',
                    )
                  }
                >
                  Save as an iCalendar file
                </button>
              </p>
            )}
          </>
        )}
      </WithAnswer>
    </section>
  );
}
