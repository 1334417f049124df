/** One property of many rows: numbers, truths and texts as typed arrays, lists of numbers one after another. */
export type PackedColumn =
  | { readonly kind: 'numbers'; readonly values: Float64Array }
  | { readonly kind: 'truths'; readonly values: Uint8Array }
  | { readonly kind: 'texts'; readonly words: readonly (string | null)[]; readonly at: Uint32Array }
  | { readonly kind: 'lists'; readonly ends: Uint32Array; readonly values: Float64Array }
  | { readonly kind: 'tables'; readonly ends: Uint32Array; readonly rows: PackedRows }
  /** Objects of one shape: the line of each, -1 where there is none. */
  | { readonly kind: 'records'; readonly at: Int32Array; readonly rows: PackedRows }
  | {
      readonly kind: 'words';
      readonly ends: Uint32Array;
      readonly words: readonly (string | null)[];
      readonly at: Uint32Array;
    }
  | { readonly kind: 'others'; readonly values: readonly unknown[] };

/** Rows of one shape by property: a fraction of the bytes and of the time that they take as objects. */
export interface PackedRows {
  readonly count: number;
  readonly columns: Readonly<Record<string, PackedColumn>>;
}

/** The memory behind packed rows, which can be handed to another thread in place of a copy. */
export function buffersOf({ columns }: PackedRows): readonly ArrayBuffer[] {
  return Object.values(columns).flatMap((column) => {
    const arrays = Object.values(column).filter((part) => ArrayBuffer.isView(part));
    const inner = 'rows' in column ? buffersOf(column.rows) : [];
    return [...arrays.map(({ buffer }) => buffer as ArrayBuffer), ...inner];
  });
}

const placeOf = Symbol('place');

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

/** Views of all rows, see viewMaker. */
export function rowViews<Row extends object>(rows: PackedRows): readonly Row[] {
  const viewOf = viewMaker<Row>(rows);
  return Array.from({ length: rows.count }, (_, place) => viewOf(place));
}

/**
 * Makes a row as it was packed, each property read from its column when it is asked for: of many rows most are asked for a few.
 * Properties are the row's but not its own: they are not copied by a spread.
 */
export function viewMaker<Row extends object>({ columns }: PackedRows): (place: number) => Row {
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
  return (place) => new RowView(place) as object as Row;
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
    case 'records': {
      const rowAt = rowReader(column.rows.columns);
      return (place) => {
        const line = column.at[place] as number;
        return line < 0 ? null : rowAt(line);
      };
    }
    case 'words':
      return (place) => {
        const start = place === 0 ? 0 : column.ends[place - 1];
        return Array.from(column.at.subarray(start, column.ends[place]), (word) => column.words[word]);
      };
    case 'others':
      return (place) => column.values[place];
  }
}
