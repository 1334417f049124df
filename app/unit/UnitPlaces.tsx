import type { DerivedHours, UnitPlaces as Places } from '../../lib/analysis/types';
import { formatDate, formatHours } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { hoursSum } from '../words/hoursSum';
import { type PlaceRow, placeRows } from './placeRows';

const placeColumns: readonly DataColumn<PlaceRow>[] = [
  { id: 'from', header: 'From', date: true, rowHeader: true, value: (row) => row.from },
  {
    id: 'to',
    header: 'To',
    value: (row) => row.to,
    cell: (row) => (
      <Written text={formatDate(row.to)} reason="still there, or the day it left is not known" />
    ),
  },
  { id: 'what', header: 'Where, or what happened', text: true, value: (row) => row.what },
  {
    id: 'unitHours',
    header: 'Hours on the unit when fitted',
    unit: 'h',
    numeric: true,
    value: (row) => row.unitHours,
    cell: (row) => <Written text={formatHours(row.unitHours)} reason={reasonOf(row)} />,
  },
  {
    id: 'engineHours',
    header: 'Engine meter when fitted',
    unit: 'h',
    numeric: true,
    value: (row) => row.engineHours,
    cell: (row) => <Written text={formatHours(row.engineHours)} reason={reasonOf(row)} />,
  },
];

function reasonOf(row: PlaceRow): string {
  return row.isEvent ? 'an event of the meter: nothing was fitted' : 'not given, and cannot be derived';
}

const sumColumns: readonly DataColumn<DerivedHours>[] = [
  { id: 'date', header: 'Date', date: true, rowHeader: true, value: (row) => row.date },
  { id: 'overhaul', header: 'Overhaul', value: (row) => row.overhaul },
  { id: 'engine', header: 'Meter of engine', value: (row) => row.engine },
  {
    id: 'sum',
    header: 'Hours on the unit',
    unit: 'h',
    numeric: true,
    value: (row) => row.unitHours,
    cell: hoursSum,
  },
];

/** Where the unit sat, the meter events there, and the sums its derived hours come from; nothing if none is on record. */
export function UnitPlaces({ unit, places }: { readonly unit: string; readonly places: Places }) {
  const { stays, derived } = places;
  if (stays.length === 0 && derived.length === 0) return null;
  return (
    <>
      <DataTable
        caption={`Installations and meter events of ${unit}`}
        columns={placeColumns}
        rows={placeRows(places)}
        rowKey={(row, index) => `${row.from} ${index}`}
        empty="No installation of this unit is on record."
      />
      {derived.length > 0 && (
        <>
          <p>
            Hours derived from the engine meter: hours on the unit when fitted, plus what meter events add,
            plus the reading, minus the reading when fitted.
          </p>
          <DataTable
            caption={`Derived hours of ${unit}`}
            columns={sumColumns}
            rows={derived}
            rowKey={(row, index) => `${row.overhaul} ${index}`}
            empty="No hours of this unit are derived."
          />
        </>
      )}
    </>
  );
}
