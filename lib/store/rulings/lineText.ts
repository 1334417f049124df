import { cellsApart } from '../../records/csv/normaliseCsv';
import { quoted } from '../sql/quoted';

const longestText = 200;

/** SQL for the text of a whole line as the problems list shows it: its cells kept apart, cut off where it is long. */
export function lineTextSql(columns: readonly number[]): string {
  const cells = columns.map((column) => `trim(replace(coalesce(s.c${column}, ''), chr(30), ' '))`);
  const text = `concat_ws(${[quoted(cellsApart), ...cells].join(', ')})`;
  return `CASE WHEN length(${text}) > ${longestText} THEN ${text}[:${longestText}] || '…' ELSE ${text} END`;
}
