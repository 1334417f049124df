import { type QuestionList, questionId } from '../../../records/intake/Answers';
import type { Connector } from '../../Connector';
import { quoted } from '../../sql/quoted';
import { hoursText } from './meterRecords';

/** First runs without a known start of units whose hours are derived, with the stay that their first overhaul falls in. */
const firstRunsSql = `
  SELECT o.unit, o.overhaul, o.file, o.line::INTEGER AS line, CAST(o.date AS VARCHAR) AS date, o.unit_hours::DOUBLE AS unit_hours, i.engine, CAST(i.from_date AS VARCHAR) AS from_date,
    (SELECT h.hours FROM installation_hours h WHERE h.id = i.id)::DOUBLE AS hours_at_fit, count(DISTINCT x.characteristic || x.stage)::INTEGER AS cells
  FROM run_readings x JOIN overhauls o USING (overhaul) JOIN derived_hours d ON d.id = o.id JOIN installations i ON i.id = d.installation
  WHERE o.hours_derived AND x.unplaced IS NOT NULL AND x.run = 0 AND x.start_hours = 0
  GROUP BY ALL ORDER BY o.unit`;

/**
 * Asks where the first run of a unit starts whose hours were derived and whose first overhaul in the files is late: at the
 * hours it was fitted with, or at 0 h if it was never opened before. Unconfirmed, the readings stay held.
 */
export async function askAboutRunStarts(connector: Connector, questions: QuestionList): Promise<void> {
  for (const row of await connector.query(firstRunsSql)) {
    const [unit, file, date, engine, from] = [row.unit, row.file, row.date, row.engine, row.from_date].map(
      String,
    ) as [string, string, string, string, string];
    // A unit known only from this overhaul on was fitted before it, nobody knows when.
    const isFromNew = from === date;
    const start_h = isFromNew ? 0 : Number(row.hours_at_fit);
    const assembled = `${unit} was assembled anew when it was fitted on ${engine} on ${from}: its run up to ${date} starts at ${hoursText(start_h)}`;
    const unopened = `${unit} was not opened before ${date}: its first run starts at 0 h`;
    const answer = questions.ask({
      id: questionId('run start', file, 'date', `${unit} ${date} ${start_h}`),
      file,
      column: 'date',
      question: isFromNew
        ? `Was ${unit} never opened before ${date}, so that its first run is the ${hoursText(Number(row.unit_hours))} up to then?`
        : `Was ${unit} assembled anew when it was fitted on ${engine} on ${from}, so that its run up to ${date} starts at ${hoursText(start_h)}?`,
      choices: ['yes', 'no'],
      guess: '',
      cellsWaiting: Number(row.cells),
    });
    if (answer !== 'yes') continue;
    const placed = (table: string) => `UPDATE ${table} SET start_hours = ${start_h}, unplaced = NULL
        FROM overhauls o WHERE o.id = overhaul_id AND o.overhaul = ${quoted(String(row.overhaul))} AND run = 0 AND unplaced IS NOT NULL;`;
    await connector.run(`${placed('placed_readings')} ${placed('placed_sets')}
      INSERT INTO problems VALUES ('overhauls', ${quoted(file)}, ${row.line}, 'date', ${quoted(date)}, ${quoted(`as answered: ${isFromNew ? unopened : assembled}`)}, 'interpreted')`);
  }
}
