import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dsvFormat } from 'd3-dsv';
import type { ImportedFile } from '../../../lib/records/importReport';
import type { Answers } from '../../../lib/records/intake/Answers';
import type { Database } from '../../../lib/store/Connector';
import { importSheets } from './importSheets';

const folder = 'data/examples/sheets';
/** Bytes of one of our own sheets. */
export const bytesOf = (name: string) => new Uint8Array(readFileSync(join(folder, name)));
/** Imports one of our own sheets by itself. */
export async function importOwn(database: Database, name: string, answers?: Answers) {
  const sheets = await importSheets(database, [{ name, bytes: bytesOf(name) }], answers);
  return { ...sheets, counts: countsOf(sheets.files[0]), message: sheets.files[0]?.message };
}

/** Reading cells in the sheet, used, saying that there is none, held. */
export function countsOf(file: ImportedFile | undefined) {
  return [file?.readingsIn, file?.readingsUsed, file?.readingsNone, file?.readingsHeld];
}

/** Filled cells of the columns, counted with another CSV reader and another decoder. */
export function filledCells(
  name: string,
  form: {
    encoding: string;
    delimiter: string;
    headerRows: number;
    columns: readonly number[];
    without?: RegExp;
  },
): number {
  const rows = dsvFormat(form.delimiter).parseRows(new TextDecoder(form.encoding).decode(bytesOf(name)));
  return rows
    .slice(form.headerRows)
    .filter((row) => !form.without?.test(row[0] ?? ''))
    .reduce((sum, row) => sum + form.columns.filter((column) => (row[column] ?? '').trim() !== '').length, 0);
}

/** 'unit date hours' with readings under it to one text a reading. */
export function readings(job: string, values: Readonly<Record<string, string | number>>): readonly string[] {
  return Object.entries(values).map(([what, value]) => `${job} ${what} ${value}`);
}
/** Readings of several jobs in order. */
export const sorted = (...parts: (readonly string[])[]) => parts.flat().sort();
