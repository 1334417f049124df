'use client';

import { calibration } from '../../lib/analysis/calibration/calibration';
import { formatCount, formatFixed, formatPercent, formatSignificant } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { useWriting } from '../writing/useWriting';

type Coverage = (typeof calibration.coverage)[number];
type FalseSignals = (typeof calibration.falseSignals.rows)[number];
type Detection = (typeof calibration.detection.rows)[number];

function number<Row>(
  id: string,
  header: string,
  value: (row: Row) => number,
  write: (value: number) => string,
  unit?: string,
): DataColumn<Row> {
  const column = { id, header, numeric: true, value, cell: (row: Row) => write(value(row)) };
  return unit === undefined ? column : { ...column, unit };
}

function share<Row>(id: string, header: string, value: (row: Row) => number): DataColumn<Row> {
  return number(id, header, value, (one) => formatPercent(one, 1), '0 to 1');
}

const asGiven = (value: number) => formatSignificant(value, 4);
const toHundredths = (value: number) => formatFixed(value, 2);

const coverageColumns: readonly DataColumn<Coverage>[] = [
  { ...number<Coverage>('units', 'Units in the group', ({ units }) => units, formatCount), rowHeader: true },
  number('runs', 'Runs looked at', ({ runs }) => runs, formatCount),
  share('crossing', 'Hours to the limit', ({ crossing }) => crossing),
  share('reading', 'Next reading', ({ reading }) => reading),
];

const falseColumns: readonly DataColumn<FalseSignals>[] = [
  {
    ...number<FalseSignals>('budget', 'Budget a year', ({ budget_per_year }) => budget_per_year, asGiven),
    rowHeader: true,
  },
  number('found', 'Found a year', ({ found_per_year }) => found_per_year, toHundredths),
  number('error', 'Standard error', ({ standardError }) => standardError, toHundredths),
];

const detectionColumns: readonly DataColumn<Detection>[] = [
  {
    ...number<Detection>(
      'drift',
      'Drift an overhaul, noise SDs',
      ({ perOverhaul_sd }) => perOverhaul_sd,
      asGiven,
    ),
    rowHeader: true,
  },
  number('within', 'Within overhauls', ({ withinOverhauls }) => withinOverhauls, formatCount),
  share('charts', 'Charts of this page', ({ charts }) => charts),
  share('spread', 'Rule of standard deviations', ({ spread }) => spread),
  share('trend', 'Regression t test', ({ trend }) => trend),
];

/** What simulations of known truth gave; the numbers are written by a script, not by hand. */
export function CalibrationMethods() {
  useWriting();
  const { coverage, falseSignals, detection } = calibration;
  return (
    <>
      <h2 id="calibration">Calibration</h2>
      <p>
        The tables below come from a script (<code>npm run -s calibrate</code>) that makes up fleets with a
        known truth, analyses them with the same code as these pages, and writes what it found.
      </p>
      <DataTable
        caption="80 % intervals that held the truth"
        columns={coverageColumns}
        rows={coverage}
        rowKey={({ units, runs }) => `${units} ${runs}`}
        empty="No coverage was simulated."
      />
      <DataTable
        caption={`Signals a year where nothing drifts: ${formatCount(falseSignals.fleets)} fleets of ${formatCount(falseSignals.units)} units over ${formatCount(falseSignals.years)} years`}
        columns={falseColumns}
        rows={falseSignals.rows}
        rowKey={({ budget_per_year }) => String(budget_per_year)}
        empty="No false signals were simulated."
      />
      <DataTable
        caption={`One unit of 20 whose runout drifts: share found, ${formatCount(detection.fleets)} fleets a line; every rule flags ${formatPercent(detection.falseShare.charts, 1)} of undrifting units in their whole history`}
        columns={detectionColumns}
        rows={detection.rows}
        rowKey={({ perOverhaul_sd, withinOverhauls }) => `${perOverhaul_sd} ${withinOverhauls}`}
        empty="No drift was simulated."
      />
      <p>
        The rule of standard deviations flags a reading so many standard deviations above the mean of all
        readings as found; the t test looks at the slope of a unit&rsquo;s own readings as found. Both had
        their thresholds moved until they raised as many false flags as the charts.
      </p>
    </>
  );
}
