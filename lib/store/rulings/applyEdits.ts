import { writtenInSign } from '../../records/decisions/writtenInSign';
import type { Connector } from '../Connector';
import { quoted } from '../sql/quoted';
import { type EditTarget, partsOf, wholeLine } from './editTarget';
import { lineTextSql } from './lineText';

/** The cells that one name in the problems list stands for. */
interface EditedCells {
  readonly columns: readonly number[];
  readonly textSql: string;
  readonly textsOf: (edited: string) => readonly string[] | null;
}

/**
 * Compares what rulings are about with the texts of a file that has been cut and not yet read, and puts the texts of edits in
 * place of the raw texts where these are still the same; each is listed as interpreted, with the raw text.
 */
export async function applyEdits(connector: Connector, target: EditTarget): Promise<void> {
  const asked = await connector.query('SELECT DISTINCT column_name FROM rulings WHERE file = $1', [
    target.file,
  ]);
  for (const { column_name } of asked)
    for (const cells of cellsNamed(target, String(column_name)))
      await editCells(connector, target, String(column_name), cells);
}

/** What a name stands for: a cell, cells that the problems list joins, or, if it is empty, the whole line. */
function cellsNamed({ names, joined }: EditTarget, name: string): readonly EditedCells[] {
  if (name === '') {
    const line = wholeLine(names.length);
    return [
      {
        columns: line.columns,
        textSql: lineTextSql(line.columns),
        textsOf: (edited) => partsOf(line, edited),
      },
    ];
  }
  const index = names.indexOf(name);
  const cell = { columns: [index], textSql: `s.c${index}`, textsOf: (edited: string) => [edited] };
  const several = joined
    .filter((one) => one.name === name)
    .map((cells) => {
      const texts = cells.columns.map((column) => `nullif(trim(s.c${column}), '')`).join(', ');
      return {
        columns: cells.columns,
        textSql: `concat_ws(${quoted(cells.separator)}, ${texts})`,
        textsOf: (edited: string) => partsOf(cells, edited),
      };
    });
  return index < 0 ? several : [cell, ...several];
}

async function editCells(
  connector: Connector,
  target: EditTarget,
  name: string,
  cells: EditedCells,
): Promise<void> {
  const { file, table, lineColumn } = target;
  const about = `NOT r.applied AND r.file = ${quoted(file)} AND r.column_name = ${quoted(name)} AND s.${lineColumn}::INTEGER = r.line`;
  const text = `replace(coalesce(${cells.textSql}, ''), chr(30), chr(10))`;
  // What is ruled on a repeated row names its whole key, of which the cell is the first part.
  await connector.run(`UPDATE rulings AS r SET found = ${text},
      is_same = same_text(${text}, r.raw) OR (r.ruling <> 'edit' AND starts_with(r.raw, ${text} || ' / '))
      FROM ${table} s WHERE ${about} AND r.is_same IS DISTINCT FROM true`);
  const rows = await connector.query(
    `SELECT r.id, s.${lineColumn} AS line, r.text FROM rulings r JOIN ${table} s ON ${about} WHERE r.ruling = 'edit' AND r.is_same`,
  );
  const edits = rows.flatMap((row) => {
    const texts = cells.textsOf(String(row.text))?.map((one, index) => {
      const sign = target.signOf(cells.columns[index] as number);
      return sign === null ? one : writtenInSign(one, sign);
    });
    return texts === undefined ? [] : [{ id: String(row.id), line: String(row.line), texts }];
  });
  if (edits.length === 0) return;
  const values = edits.map(
    ({ id, line, texts }) =>
      `(${quoted(id)}, ${quoted(line)}, ${texts.map((one) => quoted(one.replaceAll('\n', '\u001e'))).join(', ')})`,
  );
  const columns = cells.columns.map((_, index) => `t${index}`);
  const changes = cells.columns.map((column, index) => `c${column} = e.t${index}`).join(', ');
  const isOne = cells.columns.length === 1;
  await connector.run(`CREATE TABLE edits AS SELECT * FROM (VALUES ${values.join(', ')}) AS edits(id, line, ${columns.join(', ')});
    UPDATE ${table} AS s SET ${changes} FROM edits e WHERE e.line::INTEGER = s.${lineColumn}::INTEGER;
    UPDATE rulings AS r SET applied = true${isOne ? ', text = e.t0' : ''} FROM edits e WHERE e.id = r.id;
    INSERT INTO problems SELECT 'ruling', file, line, column_name, found,
        'read as ‘' || text || '’ in place of ‘' || found || '’: ' || signed_reason(reason, by_whom), 'interpreted'
      FROM rulings WHERE id IN (SELECT id FROM edits);
    DROP TABLE edits`);
}
