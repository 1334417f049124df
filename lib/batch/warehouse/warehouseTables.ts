/** A column of a warehouse's table. */
export interface WarehouseColumn {
  readonly name: string;
  readonly kind: 'text' | 'number' | 'date';
  readonly optional?: boolean;
}

/** One of the tables that a warehouse holds. */
export interface WarehouseTable {
  readonly name: 'units' | 'overhauls' | 'readings';
  readonly columns: readonly WarehouseColumn[];
}

/** Cells of a row in order of its table's columns. */
export type LoadedRow = readonly (string | number | null)[];

const unit: WarehouseColumn = { name: 'unit', kind: 'text' };
const overhaul: WarehouseColumn = { name: 'overhaul', kind: 'text' };

/**
 * The tables that a warehouse holds: cleaned, lengths in mm, dates as dates. Every table has the unit, so that a unit's
 * whole history lies in one partition. An overhaul without unit hours ends a run, and the run after it has no known start.
 */
export const warehouseTables: readonly WarehouseTable[] = [
  { name: 'units', columns: [unit, { name: 'frame', kind: 'text' }] },
  {
    name: 'overhauls',
    columns: [
      unit,
      overhaul,
      { name: 'date', kind: 'date' },
      { name: 'unit_hours', kind: 'number', optional: true },
      { name: 'fitted', kind: 'text', optional: true },
    ],
  },
  {
    name: 'readings',
    columns: [
      unit,
      overhaul,
      { name: 'characteristic', kind: 'text' },
      { name: 'stage', kind: 'text' },
      { name: 'clock', kind: 'text', optional: true },
      { name: 'value_mm', kind: 'number', optional: true },
      { name: 'lower_mm', kind: 'number', optional: true },
      { name: 'upper_mm', kind: 'number', optional: true },
    ],
  },
];
