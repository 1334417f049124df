import type { RulingDecision } from '../../../lib/records/decisions/Decision';
import { rulingId } from '../../../lib/records/decisions/rulings';
import type { InputFile } from '../../../lib/records/importReport';
import type { Database } from '../../../lib/store/Connector';
import { importFiles } from '../../../lib/store/importFiles';

/** A ruling written short: place 'file:line:column' (the column may be empty), raw text and what is ruled. */
export function ruling(
  place: string,
  raw: string,
  what: 'release' | 'leave out' | { readonly edit: string },
): RulingDecision {
  const [file = '', line = '', column = ''] = place.split(':');
  const at = { file, line: Number(line), column };
  return {
    kind: 'ruling',
    id: rulingId(at),
    ...at,
    raw,
    ruling: typeof what === 'string' ? what : 'edit',
    text: typeof what === 'string' ? null : what.edit,
    reason: 'read on the card',
    by: 'AB',
  };
}

/** Imports files with rulings: 'file:line characteristic stage clock value_mm' of what is used, and what is listed. */
export async function importRuled(
  database: Database,
  files: readonly InputFile[],
  rulings: readonly RulingDecision[] = [],
) {
  const connector = await database.connect();
  const imported = await importFiles(connector, files, async () => {}, { decisions: rulings });
  const used = await connector.query(
    `SELECT concat_ws(' ', m.file || ':' || m.line, o.unit, CAST(o.date AS VARCHAR), CAST(round(o.unit_hours) AS INTEGER)::VARCHAR, m.characteristic, m.stage, m.clock, round(m.value_mm, 6)::VARCHAR) AS reading
      FROM readings_mm m JOIN readings r USING (id) JOIN overhauls o ON o.overhaul = m.overhaul ORDER BY m.file, m.line, m.characteristic, m.stage, m.clock`,
  );
  await connector.close();
  const listed = (action: 'held' | 'interpreted') =>
    imported.problems
      .filter((one) => one.action === action && !one.reason.startsWith('no units.csv'))
      .map(({ file, row, column, raw, reason }) => `${file}:${row}:${column} | ${raw} | ${reason}`);
  return {
    used: used.map((row) => String(row.reading)),
    held: listed('held'),
    interpreted: listed('interpreted'),
    files: imported.files,
    problems: imported.problems,
    notApplied: imported.rulings.map((one) => one.notApplied),
  };
}
