import { isDate, isNothingWord, isUnitOfMeasure, isValue, shapeOf } from './cellShape';
import type { SampleRecord } from './sampleRecords';

/** Records of the header among those of a sheet: from `first` to before `end`. */
export interface HeaderPlace {
  readonly first: number;
  readonly end: number;
  /** The first column's cells under the header are numbers or dates. */
  readonly firstColumnIsValue: boolean;
  readonly hasValuesBelow: boolean;
}

const mostHeaderRecords = 3;
const clockLabel = /^(?:0?[0369]|12|90|180|270)\s*(?:h|°)?$/iu;

/**
 * Finds the header: up to three records of words directly above the first record that holds values as the body does.
 *
 * Names may look like body texts ('2019', 'Lark 1', a serial): a record of words over columns of values is a header all the same.
 * Null if the first record already holds values, or if no record has names for two columns (of a sheet with more than one).
 */
export function findHeader(records: readonly SampleRecord[], columns: number): HeaderPlace | null {
  const body = bodyOf(records, columns);
  if (body === null) return headerOfWords(records, columns);
  // A first row with few readings is told by two cells shaped like those below, its serial and its date usually.
  let end = records.findIndex(
    (record, at) =>
      (at >= body.first || shapedAlike(record, body.records) >= 2) &&
      !namesValues(record, body.records) &&
      !isNumbering(record),
  );
  // Sections and notes between header and body belong to the body, where they are told one by one.
  while (end > 0) {
    const record = records[end - 1] as SampleRecord;
    if (namesValues(record, body.records)) break;
    const isBody = looksLikeBody(record, body.records) || isNumbering(record);
    if (!isBody && !(columns > 1 && isTitle(record))) break;
    end--;
  }
  const names = records[end - 1];
  if (names === undefined) return null;
  if (valuesIn(names, isValue) > 0 && !namesValues(names, body.records)) return null;
  // Where it comes again further down, the header is what stands first.
  end = records.findIndex((record) => sameCells(record, names)) + 1;
  let first = end - 1;
  while (first > 0 && end - first < mostHeaderRecords && columns > 1) {
    const upper = records[first - 1] as SampleRecord;
    const lower = records[first] as SampleRecord;
    if (upper.nextLine !== lower.line || !isUpperHeader(upper, lower)) break;
    first--;
  }
  const fullest = Math.max(...records.slice(first, end).map((record) => record.filled));
  if (columns > 1 && fullest < 2) return null;
  const firstCells = body.records.map((record) => record.cells[0] ?? '').filter((cell) => cell !== '');
  const firstColumnIsValue = 2 * firstCells.filter(isValue).length > firstCells.length;
  return { first, end, firstColumnIsValue, hasValuesBelow: true };
}

/** A sheet of words only: its first record with names in most columns. */
function headerOfWords(records: readonly SampleRecord[], columns: number): HeaderPlace | null {
  const first = records.findIndex((record) => record.filled >= (columns > 1 ? Math.max(2, columns / 2) : 1));
  if (first < 0) return null;
  return { first, end: first + 1, firstColumnIsValue: false, hasValuesBelow: false };
}

/** Records that surely are body: at least half as many values as usual; serials count if there is no number anywhere. */
function bodyOf(
  records: readonly SampleRecord[],
  columns: number,
): { readonly first: number; readonly records: readonly SampleRecord[] } | null {
  for (const test of [isValue, (cell: string) => /\d/.test(cell)]) {
    const counts = records.map((record) =>
      columns > 1 && (record.filled < 2 || isKeyAndValue(record) || isNumbering(record))
        ? 0
        : valuesIn(record, test),
    );
    const usual = counts.filter((count) => count > 0).sort((a, b) => a - b);
    const median = usual[Math.floor(usual.length / 2)];
    if (median === undefined) continue;
    const isStrong = (_: unknown, index: number) => (counts[index] as number) >= Math.max(1, median / 2);
    const first = counts.findIndex(isStrong);
    // Serials alone settle nothing if even the first record has digits: names such as 'play 1' may be a header.
    if (test !== isValue && first === 0) return null;
    return { first, records: records.filter(isStrong) };
  }
  return null;
}

/** Cells with values; clock positions as names over four columns (12, 3, 6, 9 or degrees) are no values. */
function valuesIn(record: SampleRecord, test: (cell: string) => boolean): number {
  const values = record.cells.filter(test);
  const distinct = new Set(values);
  if (distinct.size >= 3 && values.every((cell) => clockLabel.test(cell))) return 0;
  return values.length;
}

/** A record with few numbers or none that still is body: a serial or date shaped like those below, a word that stands below too, or 'n/a'. */
function looksLikeBody(record: SampleRecord, body: readonly SampleRecord[]): boolean {
  if (isUnitsRow(record)) return false;
  const hasWordOfBody = record.cells.some(
    (cell, column) =>
      isNothingWord(cell) ||
      (cell !== '' && !clockLabel.test(cell) && body.some((other) => other.cells[column] === cell)),
  );
  return hasWordOfBody || shapedAlike(record, body) > 0;
}

/** Cells with a digit whose shape is that of most cells of the body in their column. */
function shapedAlike(record: SampleRecord, body: readonly SampleRecord[]): number {
  let alike = 0;
  record.cells.forEach((cell, column) => {
    const shape = shapeOf(cell);
    if (!shape.includes('9') || clockLabel.test(cell)) return;
    const below = body.map((other) => other.cells[column] ?? '').filter((other) => other !== '');
    if (2 * below.filter((other) => shapeOf(other) === shape).length > below.length) alike++;
  });
  return alike;
}

/**
 * Whether the record's cells over columns of values are names: two different words or more, as many as there are values among
 * them, those shaped like the values below counted twice, and no date over dates.
 */
function namesValues(record: SampleRecord, body: readonly SampleRecord[]): boolean {
  const words = new Set<string>();
  let values = 0;
  for (const [column, cell] of record.cells.entries()) {
    if (cell === '') continue;
    const below = body
      .filter((other) => other !== record)
      .map((other) => other.cells[column] ?? '')
      .filter((other) => other !== '');
    const most = (test: (text: string) => boolean) => 2 * below.filter(test).length > below.length;
    if (!most(isValue)) continue;
    if (isDate(cell) && most(isDate)) return false;
    if (isValue(cell)) values += most((other) => shapeOf(other) === shapeOf(cell)) ? 2 : 1;
    else if (/\p{L}{2}/u.test(cell) && !isNothingWord(cell)) words.add(cell.toLowerCase());
  }
  return words.size >= 2 && words.size >= values;
}

/** A row that only numbers the columns: 1, 2, 3 and so on. */
function isNumbering(record: SampleRecord): boolean {
  const filled = record.cells.filter((cell) => cell !== '');
  return filled.length >= 3 && filled.every((cell, at) => cell === String(at + 1));
}

/** The row of units of measure under the names. */
export function isUnitsRow(record: { readonly cells: readonly string[] }): boolean {
  return record.cells.every((cell) => cell === '' || isUnitOfMeasure(cell));
}

function sameCells(one: SampleRecord, other: SampleRecord): boolean {
  return one.cells.join('\n').toLowerCase() === other.cells.join('\n').toLowerCase();
}

function isTitle(record: SampleRecord): boolean {
  return record.filled === 1 && record.cells[0] !== '';
}

/** 'Workshop: North', or two cells 'Workshop', 'North' alone in a wider line. */
function isKeyAndValue(record: SampleRecord): boolean {
  const { cells, filled } = record;
  return cells.some((cell) => cell.endsWith(':')) || (filled === 2 && /:\s*\S/.test(cells[0] ?? ''));
}

/** Whether the record above a header record is a header record too, and no title or note. */
function isUpperHeader(upper: SampleRecord, lower: SampleRecord): boolean {
  if (isTitle(upper) || isKeyAndValue(upper) || valuesIn(upper, isValue) > 0) return false;
  const isPair = upper.filled === 2 && upper.cells[0] !== '' && upper.cells[1] !== '';
  if (isPair && lower.cells.length >= 4) return false;
  if (isUnitsRow(lower)) return true;
  const lastFilled = upper.cells.findLastIndex((cell) => cell !== '');
  return upper.cells.length >= lower.cells.length || upper.cells.slice(0, lastFilled).includes('');
}
