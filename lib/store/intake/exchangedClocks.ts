import { group } from 'd3-array';
import type { QuestionList } from '../../records/intake/Answers';
import type { Connector } from '../Connector';
import { quoted } from '../sql/quoted';
import { codeInWords, interpretReadings, linesInWords, settleDoubt } from './settleDoubt';
import { withNamesSql } from './sizedReadings';

/** Floor of the spread of a difference of two clock readings, mm. */
const floor_mm = 0.01;

/**
 * Sets of four clock readings whose difference across one axis (12 less 6, 3 less 9 o'clock) is that of the unit's other
 * sets with the sign turned round.
 *
 * m and s are median and 1.4826 MAD of a unit's differences over its sets of both stages, 3 overhauls or more; s is no less
 * than that of the frame's middle unit and 0.01 mm. Tellable are sets of units with |m| >= 2.5 s; doubtful those with |x - m| >= 6 s and
 * |x + m| <= 2.5 s, and the other stage of the same overhaul if x is nearer to -m than to m.
 */
const clockDoubtsSql = `
  CREATE OR REPLACE TABLE clock_doubts AS
  WITH sets AS (
    SELECT file, overhaul_id, any_value(unit_id) AS unit_id, any_value(frame) AS frame, characteristic, stage, min(line) AS first_line, max(line) AS last_line,
      max(value_mm) FILTER (clock = '12') - max(value_mm) FILTER (clock = '6') AS vertical,
      max(value_mm) FILTER (clock = '3') - max(value_mm) FILTER (clock = '9') AS horizontal
    FROM sized_readings WHERE clock <> '' GROUP BY file, overhaul_id, characteristic, stage HAVING count(*) = 4),
  axes AS (
    SELECT * EXCLUDE (vertical, horizontal), '12 and 6' AS axis, vertical AS x FROM sets
    UNION ALL SELECT * EXCLUDE (vertical, horizontal), '3 and 9', horizontal FROM sets),
  own AS (
    SELECT unit_id, frame, characteristic, axis, count(DISTINCT overhaul_id) AS overhauls, median(x) AS m, 1.4826 * mad(x) AS own_s
    FROM axes WHERE x IS NOT NULL GROUP BY ALL),
  usual AS (SELECT frame, characteristic, median(own_s) AS usual_s FROM own WHERE overhauls >= 3 GROUP BY ALL),
  scaled AS (
    SELECT a.*, m, overhauls, greatest(own_s, usual_s, ${floor_mm}) AS s, overhauls >= 3 AND abs(m) >= 2.5 * s AS is_tellable,
      is_tellable AND abs(x - m) >= 6 * s AND abs(x + m) <= 2.5 * s AS is_turned
    FROM axes a JOIN own USING (unit_id, frame, characteristic, axis) JOIN usual USING (frame, characteristic))
  SELECT file, overhaul_id, characteristic, stage, axis, first_line, last_line, is_tellable,
    abs(x + m) < abs(x - m) AND (file, overhaul_id, characteristic, axis) IN (SELECT (file, overhaul_id, characteristic, axis) FROM scaled WHERE is_turned) AS is_doubtful
  FROM scaled WHERE is_tellable OR abs(x + m) < abs(x - m)`;

interface ClockSet {
  readonly file: string;
  readonly overhaul: string;
  readonly unit: string;
  readonly characteristic: string;
  readonly stage: string;
  readonly axis: string;
  readonly firstLine: number;
  readonly lastLine: number;
}

/** Sets from which, and share of the tellable ones from which, the doubt is about a whole file. */
const fewestOfFile = 4;
const mostOfFile = 0.7;

const sides: Readonly<Record<string, string>> = {
  '12 and 6': 'top and bottom (12 and 6 o’clock)',
  '3 and 9': 'left and right (3 and 9 o’clock)',
};

/** Asks whether opposite clock positions are exchanged, once a file or an overhaul; the readings wait until it is answered. Returns whether it did. */
export async function askAboutExchangedClocks(
  connector: Connector,
  foreign: ReadonlySet<string>,
  questions: QuestionList,
): Promise<boolean> {
  await connector.run(clockDoubtsSql);
  const tellable = new Map(
    (
      await connector.query(
        `SELECT file, axis, count(*)::INTEGER AS n FROM clock_doubts WHERE is_tellable GROUP BY ALL`,
      )
    ).map((row) => [`${row.file}\u0000${row.axis}`, Number(row.n)]),
  );
  const sets = (
    await connector.query(`SELECT file, overhaul, unit, characteristic, stage, axis, first_line, last_line FROM ${withNamesSql('clock_doubts')}
      WHERE is_doubtful ORDER BY file, first_line, overhaul, characteristic, stage, axis`)
  )
    .map(
      (row): ClockSet => ({
        file: String(row.file),
        overhaul: String(row.overhaul),
        unit: String(row.unit),
        characteristic: String(row.characteristic),
        stage: String(row.stage),
        axis: String(row.axis),
        firstLine: Number(row.first_line),
        lastLine: Number(row.last_line),
      }),
    )
    .filter(({ file }) => foreign.has(file));
  await connector.run('DROP TABLE clock_doubts');
  for (const [key, ofFile] of group(sets, ({ file, axis }) => `${file}\u0000${axis}`)) {
    const { file } = ofFile[0] as ClockSet;
    const isWhole = ofFile.length >= fewestOfFile && ofFile.length >= mostOfFile * (tellable.get(key) ?? 0);
    if (isWhole) {
      await settle(connector, questions, ofFile, '', `in the whole of ${file}`, `r.file = ${quoted(file)}`);
      continue;
    }
    for (const [overhaul, ofOverhaul] of group(ofFile, (one) => one.overhaul)) {
      const { unit } = ofOverhaul[0] as ClockSet;
      const lines = linesInWords(
        Math.min(...ofOverhaul.map(({ firstLine }) => firstLine)),
        Math.max(...ofOverhaul.map(({ lastLine }) => lastLine)),
      );
      const named = ofOverhaul.map(
        ({ characteristic, stage }) => `${codeInWords(characteristic)} as ${stage}`,
      );
      const these = ofOverhaul.map(
        ({ characteristic, stage }) =>
          `(r.characteristic = ${quoted(characteristic)} AND r.stage = ${quoted(stage)})`,
      );
      await settle(
        connector,
        questions,
        ofOverhaul,
        overhaul,
        `in ${file} ${lines} (${unit}, ${named.join(', ')})`,
        `r.file = ${quoted(file)} AND r.overhaul = ${quoted(overhaul)} AND (${these.join(' OR ')})`,
      );
    }
  }
  return sets.length > 0;
}

async function settle(
  connector: Connector,
  questions: QuestionList,
  sets: readonly ClockSet[],
  detail: string,
  where: string,
  readings: string,
): Promise<void> {
  const { file, axis } = sets[0] as ClockSet;
  const [one, other] = axis.split(' and ') as [string, string];
  const ofAxis = `${readings} AND r.clock IN (${quoted(one)}, ${quoted(other)})`;
  const answer = await settleDoubt(
    connector,
    {
      kind: 'clock positions exchanged',
      file,
      about: [axis, ...new Set(sets.map(({ characteristic }) => characteristic))].join(', '),
      detail,
      question: `Are ${sides[axis]} exchanged ${where}? The readings fit the unit’s other overhauls far better the other way round.`,
      choices: ['exchanged', 'as written'],
      readings: ofAxis,
      waiting: `waits for an answer: are ${axis} o’clock exchanged?`,
    },
    questions,
  );
  if (answer === 'exchanged')
    await interpretReadings(
      connector,
      ofAxis,
      `${axis} o’clock exchanged, as answered`,
      `clock = CASE clock WHEN ${quoted(one)} THEN ${quoted(other)} ELSE ${quoted(one)} END`,
    );
}
