/** One property of many rows: numbers, truths and texts as typed arrays, lists of numbers one after another. */
type PackedColumn =
  | { readonly kind: 'numbers'; readonly values: Float64Array }
  | { readonly kind: 'truths'; readonly values: Uint8Array }
  | { readonly kind: 'texts'; readonly words: readonly (string | null)[]; readonly at: Uint32Array }
  | { readonly kind: 'lists'; readonly ends: Uint32Array; readonly values: Float64Array }
  | { readonly kind: 'tables'; readonly ends: Uint32Array; readonly rows: PackedRows }
  | { readonly kind: 'others'; readonly values: readonly unknown[] };

/** Rows of one shape by property: a fraction of the bytes and of the time that they take as objects. */
export interface PackedRows {
  readonly count: number;
  readonly columns: Readonly<Record<string, PackedColumn>>;
}

const placeOf = Symbol('place');

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
  if (values.every((value) => value === null || typeof value === 'string')) return packTexts(values);
  if (values.every((value) => Array.isArray(value) && value.every(isNumber)))
    return packLists(values as readonly (readonly number[])[]);
  if (values.every(Array.isArray) && haveOneShape(values.flat(1)))
    return { kind: 'tables', ends: endsOf(values), rows: packRows(values.flat(1)) };
  return { kind: 'others', values };
}

function isNumber(value: unknown): boolean {
  return typeof value === 'number' && !Number.isNaN(value);
}

/** Whether all are plain objects with the same properties in the same order. */
function haveOneShape(rows: readonly unknown[]): rows is readonly PlainRow[] {
  const shapeOf = (row: unknown) =>
    typeof row === 'object' && row !== null && Object.getPrototypeOf(row) === Object.prototype
      ? JSON.stringify(Object.keys(row))
      : null;
  const first = shapeOf(rows[0]);
  return first !== null && first !== '[]' && rows.every((row) => shapeOf(row) === first);
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

function packTexts(values: readonly unknown[]): PackedColumn {
  const places = new Map<string | null, number>();
  const at = Uint32Array.from(values as readonly (string | null)[], (value) => {
    const place = places.get(value) ?? places.size;
    places.set(value, place);
    return place;
  });
  return { kind: 'texts', words: [...places.keys()], at };
}

/** The rows as they were packed, each an object of its own. */
export function unpackRows<Row extends object>({ count, columns }: PackedRows): readonly Row[] {
  const rowAt = rowReader(columns);
  return Array.from({ length: count }, (_, place) => rowAt(place) as Row);
}

function rowReader(columns: PackedRows['columns']): (place: number) => object {
  const readers = Object.entries(columns).map(([name, column]) => [name, readerOf(column)] as const);
  return (place) => {
    const row: Record<string, unknown> = {};
    for (const [name, read] of readers) row[name] = read(place);
    return row;
  };
}

/**
 * The rows as they were packed, each property read from its column when it is asked for: of many rows most are asked for a few.
 * Properties are the rows' but not their own: they are not copied by a spread.
 */
export function rowViews<Row extends object>({ count, columns }: PackedRows): readonly Row[] {
  // A symbol is not listed among the properties, and costs less than a private field where these are translated.
  class RowView {
    readonly [placeOf]: number;
    constructor(place: number) {
      this[placeOf] = place;
    }
  }
  for (const [name, column] of Object.entries(columns)) {
    const read = readerOf(column);
    Object.defineProperty(RowView.prototype, name, {
      enumerable: true,
      get(this: RowView) {
        return read(this[placeOf]);
      },
    });
  }
  return Array.from({ length: count }, (_, place) => new RowView(place) as object as Row);
}

function readerOf(column: PackedColumn): (place: number) => unknown {
  switch (column.kind) {
    case 'numbers':
      return (place) => {
        const value = column.values[place] as number;
        return Number.isNaN(value) ? null : value;
      };
    case 'truths':
      return (place) => column.values[place] === 1;
    case 'texts':
      return (place) => column.words[column.at[place] as number];
    case 'lists':
      return (place) =>
        Array.from(column.values.subarray(place === 0 ? 0 : column.ends[place - 1], column.ends[place]));
    case 'tables': {
      const rowAt = rowReader(column.rows.columns);
      return (place) => {
        const start = place === 0 ? 0 : (column.ends[place - 1] as number);
        return Array.from({ length: (column.ends[place] as number) - start }, (_, line) =>
          rowAt(start + line),
        );
      };
    }
    case 'others':
      return (place) => column.values[place];
  }
}
