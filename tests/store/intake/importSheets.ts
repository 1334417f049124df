import { expect } from 'vitest';
import type { ImportedFile, InputFile, Problem } from '../../../lib/records/importReport';
import type { Answers } from '../../../lib/records/intake/Answers';
import type { Question } from '../../../lib/records/intake/types';
import type { Database } from '../../../lib/store/Connector';
import { importFiles } from '../../../lib/store/importFiles';

/** What an import came to, as texts that are easy to write by hand. */
export interface ImportedSheets {
  readonly files: readonly ImportedFile[];
  /** 'unit date hours characteristic stage clock value', in mm, an interval as 'lower..upper'; in order. */
  readonly used: readonly string[];
  /** 'line | column | raw | reason'; readings of a held overhaul as 'line | n readings of a held overhaul'. */
  readonly held: readonly string[];
  /** 'line | column | raw | note' of what was interpreted, notes on units without frame left out. */
  readonly interpreted: readonly string[];
  /** 'column | question | choices | cells waiting'. */
  readonly questions: readonly string[];
  readonly asked: readonly Question[];
  readonly problems: readonly Problem[];
}

/** Answers by the beginning of a question's id or text. */
export function answering(given: Readonly<Record<string, string>>): Answers {
  return (question) =>
    Object.entries(given).find(
      ([start]) => question.id.startsWith(start) || question.question.startsWith(start),
    )?.[1];
}

const ofHeldOverhaul = 'its overhaul is held';

const usedSql = `
  SELECT concat_ws(' ', o.unit, CAST(o.date AS VARCHAR), CAST(CAST(o.unit_hours AS DECIMAL(12, 1)) AS DOUBLE), m.characteristic, m.stage, m.clock) AS reading,
    m.value_mm::DOUBLE AS value, m.lower_mm::DOUBLE AS lower, m.upper_mm::DOUBLE AS upper
  FROM readings_mm m JOIN readings r USING (id) JOIN overhauls o ON o.overhaul = m.overhaul`;

/** Readings that are neither used nor listed: there must be none. */
const lostSql = `
  SELECT count(*)::INTEGER AS n FROM raw_readings r
  WHERE NOT EXISTS (SELECT 1 FROM readings u WHERE u.file = r.file AND u.line = r.line AND u.value_column IS NOT DISTINCT FROM r.value_column)
    AND NOT EXISTS (SELECT 1 FROM problems p WHERE p.file = r.file AND p.line = r.line AND p.action = 'held')`;

const millimetres = (value: unknown) => String(Number(Number(value).toFixed(9)));

/** Imports files into a fresh schema and says in texts what came of every cell; checks that none is lost. */
export async function importSheets(
  database: Database,
  files: readonly InputFile[],
  answers: Answers = () => undefined,
): Promise<ImportedSheets> {
  const connector = await database.connect();
  const imported = await importFiles(connector, files, async () => {}, { answers });
  const rows = await connector.query(usedSql);
  const [lost] = await connector.query(lostSql);
  expect(lost?.n, 'readings neither used nor listed').toBe(0);
  expect(rows.length).toBe(imported.readingsUsed);
  for (const file of imported.files) {
    expect(file.readingsIn, file.file).toBe(file.readingsUsed + file.readingsNone + file.readingsHeld);
    expect(Math.min(file.readingsUsed, file.readingsNone, file.readingsHeld)).toBeGreaterThanOrEqual(0);
    expect(file.rowsIn).toBe(file.rowsUsed + file.rowsHeld);
  }
  await connector.close();
  const problems = imported.problems.filter(({ reason }) => !reason.startsWith('no units.csv'));
  const heldByOverhaul = new Map<number, number>();
  for (const { row, reason } of problems)
    if (reason.startsWith(ofHeldOverhaul)) heldByOverhaul.set(row, (heldByOverhaul.get(row) ?? 0) + 1);
  const listed = (action: 'held' | 'interpreted') =>
    problems
      .filter((problem) => problem.action === action && !problem.reason.startsWith(ofHeldOverhaul))
      .map(({ row, column, raw, reason }) => `${row} | ${column} | ${raw} | ${reason}`);
  return {
    files: imported.files,
    used: rows
      .map((row) =>
        row.lower === null || row.upper === null
          ? `${row.reading} ${millimetres(row.value)}`
          : `${row.reading} ${millimetres(row.lower)}..${millimetres(row.upper)}`,
      )
      .sort(),
    held: [
      ...listed('held'),
      ...[...heldByOverhaul].map(([row, count]) => `${row} | ${count} readings of a held overhaul`),
    ].sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10) || (a < b ? -1 : 1)),
    interpreted: listed('interpreted'),
    questions: imported.questions.map(
      ({ column, question, choices, cellsWaiting }) =>
        `${column} | ${question} | ${choices.join('/')} | ${cellsWaiting}`,
    ),
    asked: imported.questions,
    problems: imported.problems,
  };
}
