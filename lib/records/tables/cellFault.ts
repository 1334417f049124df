import { canonicalTable, type TableName } from '../canonicalTables';
import { type Column, datePattern, firstYear, lastYear, numberPattern } from '../columns';

const wholeNumber = new RegExp(`^${numberPattern}$`);
const wholeDate = new RegExp(`^${datePattern}$`);
const decimalComma = /^[+-]?\d+,\d+$/;

/**
 * What to do about the text of a cell that could not be read, or null if it can: checked by the schema of its table, as the
 * cells of files are.
 */
export function cellFault(table: TableName, name: string, text: string): string | null {
  const { columns, schema } = canonicalTable(table);
  const column = columns.find((one) => one.name === name);
  const field = schema.shape[name];
  if (column === undefined || field === undefined)
    throw new Error(`cellFault requires a column of ${table}, got '${name}'`);
  const cell = text.trim();
  if (cell === '') return column.required ? `Give ${column.description}.` : null;
  return field.safeParse(readCell(column, cell)).success ? null : whatToDo(column, cell);
}

/** The value as the schema takes it; undefined where the text has none. */
function readCell({ kind }: Column, cell: string): string | number | undefined {
  if (kind === 'number') return wholeNumber.test(cell) ? Number(cell) : undefined;
  if (kind === 'choice') return cell.toLowerCase();
  if (kind !== 'date') return cell;
  const year = Number(cell.slice(0, 4));
  return wholeDate.test(cell) && year >= firstYear && year <= lastYear ? cell : undefined;
}

function whatToDo({ kind, min, max, unit, choices = [] }: Column, cell: string): string {
  if (kind === 'choice') return `Write one of: ${choices.join(', ')}.`;
  if (kind === 'date') return `Write a day as YYYY-MM-DD, from ${firstYear} to ${lastYear}.`;
  if (kind !== 'number') return 'Write a text.';
  if (decimalComma.test(cell)) return `Write ${cell.replace(',', '.')} with a decimal point.`;
  if (!wholeNumber.test(cell)) return 'Write a number in digits, with a decimal point.';
  const inUnit = unit === undefined ? '' : ` ${unit}`;
  if (min === undefined) return `Write a number up to ${max}${inUnit}.`;
  return max === undefined
    ? `Write a number from ${min}${inUnit}.`
    : `Write a number from ${min} to ${max}${inUnit}.`;
}
