import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DuckDBInstance } from '@duckdb/node-api';

export type Row = Readonly<Record<string, string>>;

const dataDirectory = fileURLToPath(new URL('../../../data', import.meta.url));

/** Text of a committed file below data/. */
export function committed(path: string): string {
  return readFileSync(`${dataDirectory}/${path}`, 'utf8');
}

/** Rows of a committed CSV file below data/, every cell as text, read by DuckDB and not by the project's own reader. */
export async function table(path: string): Promise<readonly Row[]> {
  const connection = await (await DuckDBInstance.create(':memory:')).connect();
  const reader = await connection.runAndReadAll(
    `SELECT * FROM read_csv('${dataDirectory}/${path}', all_varchar = true, header = true, delim = ',', quote = '"', escape = '"',
      auto_detect = false, columns = {${header(path)}}, nullstr = '')`,
  );
  const rows = reader.getRowObjects();
  connection.closeSync();
  return rows.map((row) =>
    Object.fromEntries(Object.entries(row).map(([key, value]) => [key, value === null ? '' : String(value)])),
  );
}

function header(path: string): string {
  const names = committed(path).split('\n')[0]?.split(',') ?? [];
  return names.map((name) => `'${name}': 'VARCHAR'`).join(', ');
}

export interface SeriesTruth {
  readonly series: string;
  readonly run_started_unit_hours: number;
  readonly start_mm: number;
  readonly rate_mm_per_10kh: number;
  readonly sd_noise_mm: number;
  readonly level_now_mm: number | null;
}

export interface Truth {
  readonly last_day: string;
  readonly frames: Readonly<
    Record<
      string,
      Readonly<Record<string, { readonly rate: number; readonly sdNoise: number; readonly step: number }>>
    >
  >;
  readonly odd: readonly (Readonly<Record<string, unknown>> & { readonly code: string })[];
  readonly held: {
    readonly rows: number;
    readonly list: readonly {
      readonly file: string;
      readonly column: string;
      readonly why: string;
      readonly line: number;
      readonly raw: string;
    }[];
  };
  readonly derived_unit_hours: readonly {
    readonly overhaul: string;
    readonly unit: string;
    readonly unit_hours: number;
  }[];
  readonly units: readonly {
    readonly unit: string;
    readonly frame: string;
    readonly hours_now: number | null;
    readonly series: readonly SeriesTruth[];
  }[];
}

export function truth(): Truth {
  return JSON.parse(committed('demo-truth/truth.json')) as Truth;
}

/** Lines of the given file that must be held. */
export function heldLines(file: string): ReadonlySet<number> {
  return new Set(
    truth()
      .held.list.filter((held) => held.file === file)
      .map((held) => held.line),
  );
}

/** Rows of a canonical table that are not to be held. */
export async function usableRows(file: string): Promise<readonly Row[]> {
  const held = heldLines(file);
  return (await table(`demo/${file}`)).filter((_, index) => !held.has(index + 2));
}
