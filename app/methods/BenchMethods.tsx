'use client';

import { calibration } from '../../lib/analysis/calibration/calibration';
import { formatCount, formatPercent } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { useWriting } from '../writing/useWriting';

interface Slips {
  readonly slip: string;
  readonly slips: number;
  readonly caught: number;
}

const slipColumns: readonly DataColumn<Slips>[] = [
  { id: 'slip', header: 'Slip', rowHeader: true, value: ({ slip }) => slip },
  { id: 'slips', header: 'Slips', numeric: true, value: ({ slips }) => slips },
  { id: 'caught', header: 'Questioned', numeric: true, value: ({ caught }) => caught },
  {
    id: 'share',
    header: 'Share',
    unit: '0 to 1',
    numeric: true,
    value: ({ slips, caught }) => caught / slips,
    cell: ({ slips, caught }) => formatPercent(caught / slips, 1),
  },
];

/** How the sheet and the check of typed readings are made, and what the check catches. */
export function BenchMethods() {
  useWriting();
  const { fleets, units, rows, rightReadings, rightQuestioned } = calibration.benchSlips;
  const slips = rows.reduce((sum, row) => sum + row.slips, 0);
  const caught = rows.reduce((sum, row) => sum + row.caught, 0);
  return (
    <>
      <h2 id="bench">Bench sheet and check of typed readings</h2>
      <p>
        The expected reading as found is the forecast of the unit&rsquo;s present run at the hours of the
        overhaul: 10, 50 and 90&nbsp;% of the level with the noise of one reading. A clock position is the
        forecast of the mean plus the position&rsquo;s usual departure from it, taken from the sets of the
        same run, else from the unit&rsquo;s other runs, else from its sisters. The chance of a part is the
        share of {formatCount(1000)} seeded draws of the unit in which the reading as found calls for it, at
        an accepted risk of 10&nbsp;%, as in the demand for spares.
      </p>
      <p>
        A typed reading is questioned if it lies more than 3 standard deviations from its forecast; if it lies
        more than 2 from it and a usual slip of scale (10, 100, 1000, inches or thou for millimetres) brings
        it within 1; if it does not fit the other clock positions (chi-square of the set beyond its
        99.73&nbsp;% point); if as found and as left fit far better exchanged; or if as left differs from as
        found by more than 3 standard deviations of such a difference although nothing was fitted between. It
        is asked about, never changed.
      </p>
      <p>
        Against a limit or an assembly range a reading is within, not within, or cannot be told apart: the
        gauge&rsquo;s uncertainty is a guard band of 1.645 standard deviations of one reading on both sides of
        each end (ISO 14253-1, one-sided 95&nbsp;%). Its standard deviation comes from pairs of readings of
        one state, for clock readings from how the sets of one run lie about their means, else from the
        scatter about the fitted lines.
      </p>
      <DataTable
        caption={`Slips of more than 5 noise standard deviations typed into the next overhaul of every unit, ${formatCount(fleets)} made-up groups of ${formatCount(units)} units: share questioned`}
        columns={slipColumns}
        rows={[
          ...rows,
          { slip: 'All slips', slips, caught },
          { slip: 'Right readings', slips: rightReadings, caught: rightQuestioned },
        ]}
        rowKey={({ slip }) => slip}
        empty="No slips were simulated."
      />
      <p>
        The groups have the truth of the demo fleet&rsquo;s frames (see data/README.md): thrust play, runout
        and tip clearance of the turbine, 5 to 8 earlier overhauls a unit. Readings that wander, or a history
        that holds slips itself, cost some of this.
      </p>
    </>
  );
}
