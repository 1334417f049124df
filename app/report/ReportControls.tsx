'use client';

import type { PaperSettings } from '../../lib/analysis/report/types';
import type { FleetResult } from '../../lib/analysis/types';
import { FleetFilters } from '../fleet/FleetFilters';
import { SparesControls } from '../spares/SparesControls';
import { DayField } from './DayField';
import { PrintButton } from './PrintButton';

interface ReportControlsProps {
  readonly fleet: FleetResult;
  readonly settings: PaperSettings;
  readonly query: URLSearchParams;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** Scope, day, day of comparison and the plan's settings, kept in the address; and the print. */
export function ReportControls({ fleet, settings, query, onChange }: ReportControlsProps) {
  const asked = query.get('since') ?? '';
  return (
    <section aria-label="What the paper is of" className="screenOnly">
      <FleetFilters
        fleet={fleet}
        filter={{ ...settings.scope, series: '' }}
        onChange={onChange}
        withSeries={false}
      />
      <form className="controls" aria-label="Days" onSubmit={(event) => event.preventDefault()}>
        <DayField
          label="As of"
          value={settings.asOf}
          onDay={(day) => onChange({ date: day === fleet.asOf ? '' : day })}
        />
        <DayField
          label="Compared with (earlier day)"
          value={asked}
          onDay={(day) => onChange({ since: day })}
        />
      </form>
      {asked !== '' && settings.since === null && (
        <p role="alert">The day compared with has to be earlier than the paper’s own: nothing is compared.</p>
      )}
      <SparesControls settings={settings.spares} onChange={onChange} />
      <PrintButton />
    </section>
  );
}
