import type { PackedColumn, PackedRows } from './packedRows';

type PlainRow = Readonly<Record<string, unknown>>;

/** Packs rows of one shape, data only: every row has the properties of the first. */
export function packRows(rows: readonly object[]): PackedRows {
  const plain = rows as readonly PlainRow[];
  const names = Object.keys(plain[0] ?? {});
  const columns = names.map((name) => [name, packColumn(plain.map((row) => row[name]))] as const);
  return { count: rows.length, columns: Object.fromEntries(columns) };
}

function packColumn(values: readonly unknown[]): PackedColumn {
  // A number that is missing is stored as NaN: results hold none.
  if (values.every((value) => value === null || isNumber(value)))
    return { kind: 'numbers', values: Float64Array.from(values, (value) => (value as number | null) ?? NaN) };
  if (values.every((value) => typeof value === 'boolean'))
    return { kind: 'truths', values: Uint8Array.from(values, Number) };
  if (values.every(isText)) return { kind: 'texts', ...packTexts(values) };
  const records = values.filter((value) => value !== null);
  if (haveOneShape(records)) return { kind: 'records', at: linesOf(values), rows: packRows(records) };
  if (values.every((value) => Array.isArray(value) && value.every(isNumber)))
    return packLists(values as readonly (readonly number[])[]);
  if (values.every(Array.isArray)) {
    const flat: readonly unknown[] = values.flat(1);
    if (haveOneShape(flat)) return { kind: 'tables', ends: endsOf(values), rows: packRows(flat) };
    if (flat.every(isText)) return { ...packTexts(flat), kind: 'words', ends: endsOf(values) };
  }
  return { kind: 'others', values };
}

function isNumber(value: unknown): boolean {
  return typeof value === 'number' && !Number.isNaN(value);
}

function isText(value: unknown): value is string | null {
  return value === null || typeof value === 'string';
}

/** Line of each value among those that are not null. */
function linesOf(values: readonly unknown[]): Int32Array {
  let line = 0;
  return Int32Array.from(values, (value) => (value === null ? -1 : line++));
}

/** Whether all are plain objects with the same properties in the same order. */
export function haveOneShape(rows: readonly unknown[]): rows is readonly PlainRow[] {
  const shapeOf = (row: unknown) =>
    typeof row === 'object' && row !== null && Object.getPrototypeOf(row) === Object.prototype
      ? JSON.stringify(Object.keys(row))
      : null;
  const first = shapeOf(rows[0]);
  // A property of that name is none once it is set.
  return (
    first !== null &&
    first !== '[]' &&
    !first.includes('"__proto__"') &&
    rows.every((row) => shapeOf(row) === first)
  );
}

/** Place after the last element of each list, where all stand one after another. */
function endsOf(lists: readonly (readonly unknown[])[]): Uint32Array {
  let end = 0;
  return Uint32Array.from(lists, (list) => {
    end += list.length;
    return end;
  });
}

function packLists(lists: readonly (readonly number[])[]): PackedColumn {
  const ends = endsOf(lists);
  const values = new Float64Array(ends.at(-1) ?? 0);
  for (const [row, list] of lists.entries()) values.set(list, (ends[row] as number) - list.length);
  return { kind: 'lists', ends, values };
}

function packTexts(values: readonly (string | null)[]) {
  const places = new Map<string | null, number>();
  const at = Uint32Array.from(values, (value) => {
    const place = places.get(value) ?? places.size;
    places.set(value, place);
    return place;
  });
  return { words: [...places.keys()], at };
}
