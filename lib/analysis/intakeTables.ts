import { canonicalTable, type TableName } from '../records/canonicalTables';
import type { Question } from '../records/intake/types';
import type { Connector } from '../store/Connector';
import type { ResultTable } from './fleetTables';

/** The used rows of a canonical table as they go to a CSV file; readings name the file and line they came from. */
export async function canonicalRows(connector: Connector, name: TableName): Promise<ResultTable> {
  const header = canonicalTable(name).columns.map((column) => column.name);
  const cells = header.map((column) => {
    if (column === 'source_file') return `coalesce("source_file", file) AS "source_file"`;
    if (column === 'source_row') return `coalesce("source_row", line)::INTEGER AS "source_row"`;
    const kind = canonicalTable(name).columns.find((one) => one.name === column)?.kind;
    return `CAST("${column}" AS ${kind === 'number' ? 'DOUBLE' : 'VARCHAR'}) AS "${column}"`;
  });
  const rows = await connector.query(`SELECT ${cells.join(', ')} FROM ${name} ORDER BY id`);
  return { name, header, rows: rows.map((row) => header.map((column) => row[column] ?? null)) };
}

/** Open questions: questions.csv; the same columns with `answer` added are read back as answers. */
export function questionsTable(questions: readonly Question[]): ResultTable {
  return {
    name: 'questions',
    header: ['file', 'column', 'question', 'choices', 'guess', 'cells_waiting'],
    rows: questions.map((one) => [
      one.file,
      one.column,
      one.question,
      one.choices.join('; '),
      one.guess,
      one.cellsWaiting,
    ]),
  };
}
