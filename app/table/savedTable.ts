import { rounded } from '../../lib/analysis/fileNumbers';
import { plainWriting, writtenIn } from '../../lib/charts/writingStyle';
import type { CellValue, DataColumn, SavedColumn } from './DataColumn';

/** A table as it leaves the page: numbers bare, days as ISO dates, sentences in the plain style. */
export interface SavedTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** Digits of numbers in saved tables, as in the files of the batch command. */
const digits = 8;

/** A value as a saved table holds it; what is no finite number is empty. */
function savedValue(value: CellValue): CellValue {
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return null;
  return Number.isInteger(value) ? value : rounded(value, digits);
}

function savedColumns<Data>(columns: readonly DataColumn<Data>[]): readonly SavedColumn<Data>[] {
  return columns.flatMap(
    ({ header, unit, value, saved }) =>
      saved ?? [{ header: unit === undefined ? header : `${header}, ${unit}`, value }],
  );
}

/** All rows of a table in the order given, with what its columns hold. */
export function savedTable<Data>(columns: readonly DataColumn<Data>[], rows: readonly Data[]): SavedTable {
  const of = savedColumns(columns);
  return {
    header: of.map(({ header }) => header),
    rows: writtenIn(plainWriting, () => rows.map((row) => of.map(({ value }) => savedValue(value(row))))),
  };
}
