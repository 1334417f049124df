import type { RulingOutcome } from '../../records/decisions/rulings';
import type { Connector } from '../Connector';

const aboutSameSql = `r.file = problems.file AND r.line = problems.line AND r.column_name = problems.column_name AND problems.action = 'held'`;

/**
 * Once every reason stands under the name that its column has in the file: cells that were edited and are still held keep the
 * raw text of the file, what was left out says so, and rulings that changed nothing are listed with the reason.
 */
const settleSql = `
  UPDATE doubts SET column_name = h.header FROM cell_reasons h WHERE h.line IS NULL AND h.file = doubts.file AND h.column_name = doubts.column_name;
  UPDATE problems SET raw = r.found, reason = 'read as ‘' || r.text || '’: ' || problems.reason
    FROM rulings r WHERE r.ruling = 'edit' AND r.applied AND ${aboutSameSql};
  UPDATE rulings SET applied = true WHERE ruling = 'leave out' AND (file, line, column_name) IN
    (SELECT (p.file, p.line, p.column_name) FROM problems p WHERE p.action = 'held' AND (same_text(p.raw, rulings.raw) OR starts_with(p.reason, 'left out: ')));
  UPDATE problems SET reason = 'left out: ' || signed_reason(r.reason, r.by_whom) || '. Held because: ' || problems.reason
    FROM rulings r WHERE r.ruling = 'leave out' AND r.applied AND ${aboutSameSql} AND NOT starts_with(problems.reason, 'left out: ');
  CREATE TABLE rulings_not_applied AS
    SELECT r.*, CASE
      WHEN r.file NOT IN (SELECT file FROM files_read) THEN 'no file of that name is open'
      WHEN r.ruling = 'edit' THEN CASE WHEN r.found IS NULL THEN 'there is no such cell that can be edited' ELSE 'the file has ‘' || r.found || '’ there, not ‘' || r.raw || '’' END
      WHEN p.raw IS NULL THEN 'nothing is held there'
      WHEN NOT same_text(p.raw, r.raw) THEN 'the file has ‘' || p.raw || '’ there, not ‘' || r.raw || '’'
      ELSE 'what holds it is no doubt that could be set aside: edit it or leave it out' END AS why
    FROM rulings r LEFT JOIN (SELECT file, line, column_name, min(raw) AS raw FROM problems WHERE action = 'held' GROUP BY ALL) p USING (file, line, column_name)
    WHERE NOT r.applied;
  INSERT INTO problems SELECT 'ruling', file, line, column_name, raw,
      CASE ruling WHEN 'edit' THEN 'the edit to ‘' || text || '’' WHEN 'release' THEN 'the release' ELSE 'the leaving out' END || ' was not applied: ' || why, 'interpreted'
    FROM rulings_not_applied WHERE file IN (SELECT file FROM files_read)`;

/** Settles the rulings after all checks and says what came of each. */
export async function settleRulings(
  connector: Connector,
  files: readonly string[],
): Promise<readonly RulingOutcome[]> {
  const [given] = await connector.query('SELECT count(*)::INTEGER AS n FROM rulings');
  if (given?.n === 0) return [];
  await connector.run(
    `CREATE TABLE files_read AS SELECT unnest([${files.map((file) => `'${file.replaceAll("'", "''")}'`).join(', ')}]::VARCHAR[]) AS file; ${settleSql}`,
  );
  const rows = await connector.query(
    'SELECT r.id, r.file, r.line, r.column_name, n.why FROM rulings r LEFT JOIN rulings_not_applied n USING (id) ORDER BY r.file, r.line, r.column_name',
  );
  return rows.map((row) => ({
    id: String(row.id),
    file: String(row.file),
    line: Number(row.line),
    column: String(row.column_name),
    notApplied: row.why === null || row.why === undefined ? null : String(row.why),
  }));
}
