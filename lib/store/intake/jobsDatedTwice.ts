import { type QuestionList, questionId } from '../../records/intake/Answers';
import type { Connector } from '../Connector';
import { holdRows } from '../holdRows';
import { quoted } from '../sql/quoted';

/** Overhauls of one unit at the same hours within 60 days whose shared readings are all equal: one job, dated twice? */
const sameJobsSql = `
  WITH jobs AS MATERIALIZED (
    SELECT a.id::INTEGER AS first_id, b.id::INTEGER AS second_id, a.overhaul AS first, b.overhaul AS second, a.unit, CAST(a.date AS VARCHAR) AS first_date,
      CAST(b.date AS VARCHAR) AS second_date, CAST(a.unit_hours AS DOUBLE) AS hours, b.file
    FROM overhauls a JOIN overhauls b ON b.unit = a.unit AND b.unit_hours = a.unit_hours AND b.date - a.date <= 60 AND b.date > a.date),
  values_of AS MATERIALIZED (
    SELECT overhaul, characteristic, stage, coalesce(CAST(clock AS VARCHAR), '') AS clock, coalesce(value, lower) AS value, uom FROM readings
    WHERE overhaul IN (SELECT first FROM jobs UNION SELECT second FROM jobs))
  SELECT first_id, second_id, unit, first_date, second_date, hours, file, count(*)::INTEGER AS readings
  FROM jobs JOIN values_of x ON x.overhaul = first
  JOIN values_of y ON y.overhaul = second AND y.characteristic = x.characteristic AND y.stage = x.stage AND y.clock = x.clock
  GROUP BY ALL HAVING count(*) >= 2 AND bool_and(x.value IS NOT DISTINCT FROM y.value AND x.uom = y.uom) ORDER BY 2, 1`;

/** Asks about jobs that seem dated twice; the later one's readings wait until it is answered. Returns whether any overhaul is held. */
export async function askAboutJobsDatedTwice(
  connector: Connector,
  files: Iterable<string>,
  questions: QuestionList,
): Promise<boolean> {
  const foreign = new Set(files);
  let isAnyHeld = false;
  if (foreign.size === 0) return isAnyHeld;
  for (const row of await connector.query(sameJobsSql)) {
    const file = String(row.file);
    if (!foreign.has(file)) continue;
    const choices = [`one job, of ${row.first_date}`, `one job, of ${row.second_date}`, 'two jobs'];
    const answer = questions.ask({
      id: questionId('job dated twice', file, 'date', `${row.unit} ${row.first_date} ${row.second_date}`),
      file,
      column: 'date',
      question: `${row.unit} has overhauls of ${row.first_date} and ${row.second_date} at the same ${row.hours} h with the same readings. Is it one job?`,
      choices,
      guess: choices[0] as string,
      cellsWaiting: Number(row.readings),
    });
    if (answer === 'two jobs') continue;
    const dropped = answer === choices[1] ? row.first_id : row.second_id;
    const reason =
      answer === null
        ? 'waits for an answer: is this the same job as the one dated otherwise?'
        : 'the same job dated twice, as answered';
    await holdRows(
      connector,
      'overhauls',
      `SELECT id, 'overhaul' AS column_name, overhaul AS raw, ${quoted(reason)} AS reason FROM overhauls WHERE id = ${dropped}`,
      'true',
    );
    isAnyHeld = true;
  }
  return isAnyHeld;
}
