import type { LengthUnit } from '../lengthUnits';

/** Encodings that an export may come in. */
export type Encoding =
  | 'UTF-8'
  | 'UTF-8 with byte order mark'
  | 'UTF-16 LE'
  | 'UTF-16 BE'
  | 'windows-1252'
  | 'windows-1251';

/** A file's text as UTF-8 bytes without byte order mark, and how it was told. */
export interface DecodedText {
  readonly bytes: Uint8Array;
  readonly encoding: Encoding;
  /** Why this encoding: shown to the user. */
  readonly evidence: string;
}

/** How the lines of a sheet are cut and which of them are its header. Lines count from 1 in the file. */
export interface SheetLayout {
  readonly delimiter: ',' | ';' | '\t' | '|';
  /** Lines before the header: titles, notes, a spreadsheet's `sep=` line. */
  readonly preambleLines: number;
  /** Lines (records) of the header, 1 to 3. */
  readonly headerRecords: number;
  /** First line after the header. */
  readonly firstBodyLine: number;
  /** One name a column: the header rows joined from top to bottom, spanning cells carried to the right. */
  readonly columns: readonly string[];
  readonly evidence: readonly string[];
}

/** What the cells of a column are. */
export type ColumnRole =
  | 'overhaul'
  | 'unit'
  | 'frame'
  | 'date'
  | 'unit_hours'
  | 'engine_hours'
  | 'site'
  | 'engine'
  | 'bank'
  | 'workshop'
  | 'kind'
  | 'fitted'
  | 'remarks'
  | 'revision'
  /** A reading of a wide sheet: characteristic, stage, clock and uom below. */
  | 'reading'
  /** Columns of a long sheet: one row a reading. */
  | 'characteristic'
  | 'stage'
  | 'clock'
  | 'value'
  | 'uom'
  /** Ends of an interval: of a long sheet's value, or of the reading of a wide sheet that the column names. */
  | 'lower'
  | 'upper'
  | 'unused';

/** Meaning of one column, with the evidence for it and how sure it is (0 to 1). */
export interface ColumnMeaning {
  /** Position in the sheet, from 0. */
  readonly index: number;
  readonly name: string;
  readonly role: ColumnRole;
  /** Of role 'reading', and of 'lower' and 'upper' in a wide sheet. */
  readonly characteristic: string | null;
  readonly stage: 'found' | 'left' | null;
  /** Of role 'reading', four clock positions; left and right are 9 and 3 o'clock seen from the compressor end. */
  readonly clock: '12' | '3' | '6' | '9' | null;
  /** The header says left or right, top or bottom without saying from which end it is seen. */
  readonly viewingEndOpen: boolean;
  /** Unit of measure stated in the header (of 'reading', 'value', 'lower', 'upper'); null if none is. */
  readonly uom: LengthUnit | null;
  /** The header states a unit of measure that is none of ours (cm): the cells are held, not taken for another. */
  readonly uomUnknown: boolean;
  readonly evidence: string;
  readonly sureness: number;
}

/** One thing that the tool cannot know; one answer settles every waiting cell. */
export interface Question {
  /** Stable for the same file shape: file, column and kind of question. */
  readonly id: string;
  readonly file: string;
  /** Header of the column, or empty for the whole file. */
  readonly column: string;
  readonly question: string;
  readonly choices: readonly string[];
  /** The likelier choice, or empty; never applied unasked. */
  readonly guess: string;
  readonly cellsWaiting: number;
}

/** How a cell's text was read. */
export type CellReading =
  /** A number in the column's own unit; note says what was taken off or out of it. */
  | { readonly kind: 'number'; readonly value: number; readonly note: string | null }
  /** '<0.02', '0.45-0.50', 'goes 0.40 does not go 0.45': both ends in the column's own unit. */
  | {
      readonly kind: 'interval';
      readonly lower: number;
      readonly upper: number;
      readonly note: string | null;
    }
  /** Empty, 'n/a', 'OK', '-': nothing was measured or written. Words are listed, empty cells are not. */
  | { readonly kind: 'none'; readonly word: string | null }
  /** Cannot be read, with the reason. */
  | { readonly kind: 'held'; readonly reason: string };

/** Decimal sign of a column, settled from all of its values; 'open' if the values allow both ('1.234', '1,234'). */
export type DecimalSign = 'point' | 'comma' | 'open';

/** Order of day, month and year of a column of dates; 'open' if the values allow more than one. */
export type DateOrder = 'year first' | 'day first' | 'month first' | 'open';
