import { group } from 'd3-array';
import { type QuestionList, questionId } from '../../records/intake/Answers';
import { type ScaleDoubt, scaleDoubt, usualSize } from '../../records/intake/scaleDoubt';
import type { LengthUnit } from '../../records/lengthUnits';
import type { Connector } from '../Connector';
import { holdRows } from '../holdRows';
import { lengthUnitFactorsSql } from '../sql/lengthUnitFactors';
import { quoted } from '../sql/quoted';

const sizesSql = `SELECT r.id, r.file, r.line, coalesce(r.value_column, 'value') AS column_name, r.characteristic, r.uom, r.raw_text AS raw,
    coalesce(r.value, (r.lower + r.upper) / 2) * f.factor AS value_mm
  FROM readings r JOIN ${lengthUnitFactorsSql} ON f.uom = r.uom`;

/** How often each size of each characteristic occurs, over all files. */
const sizeCountsSql = `SELECT characteristic, value_mm::DOUBLE AS value_mm, count(*)::INTEGER AS readings FROM (${sizesSql}) WHERE value_mm > 0 GROUP BY ALL ORDER BY 1, 2`;

/** Readings of the given files whose size is far from the usual one of their characteristic. */
function farReadingsSql(files: readonly string[], usual: ReadonlyMap<string, number>): string {
  const sizes = [...usual]
    .map(([characteristic, size_mm]) => `(${quoted(characteristic)}, ${size_mm}::DOUBLE)`)
    .join(', ');
  return `SELECT s.id::INTEGER AS id, s.file, s.line::INTEGER AS line, s.column_name, s.characteristic, s.uom, s.raw, s.value_mm::DOUBLE AS value_mm
    FROM (${sizesSql}) s JOIN (VALUES ${sizes}) AS u(characteristic, usual_mm) USING (characteristic)
    WHERE s.value_mm > 0 AND abs(ln(s.value_mm / u.usual_mm)) > ln(3.5) AND s.file IN (${files.map(quoted).join(', ')}) ORDER BY s.id`;
}

interface DoubtfulReading {
  readonly id: number;
  readonly file: string;
  readonly line: number;
  readonly column: string;
  readonly characteristic: string;
  readonly raw: string;
  readonly doubt: ScaleDoubt;
}

/** Asks about readings that are out by a usual factor against the rest; they wait until it is answered. */
export async function askAboutScale(
  connector: Connector,
  files: Iterable<string>,
  questions: QuestionList,
): Promise<void> {
  const foreign = [...files];
  if (foreign.length === 0) return;
  const counts = (await connector.query(sizeCountsSql)).map((row) => ({
    characteristic: String(row.characteristic),
    value_mm: Number(row.value_mm),
    readings: Number(row.readings),
  }));
  const usual = new Map<string, number>();
  for (const [characteristic, sizes] of group(counts, (one) => one.characteristic)) {
    const size_mm = usualSize(sizes);
    if (size_mm !== null) usual.set(characteristic, size_mm);
  }
  if (usual.size === 0) return;
  const doubtful: DoubtfulReading[] = [];
  for (const row of await connector.query(farReadingsSql(foreign, usual))) {
    const usual_mm = usual.get(String(row.characteristic)) as number;
    const doubt = scaleDoubt(
      String(row.characteristic),
      Number(row.value_mm),
      usual_mm,
      row.uom as LengthUnit,
    );
    if (doubt === null) continue;
    const { id, line } = row;
    const [file, column, characteristic, raw] = [row.file, row.column_name, row.characteristic, row.raw].map(
      String,
    ) as [string, string, string, string];
    doubtful.push({ id: Number(id), line: Number(line), file, column, characteristic, raw, doubt });
  }
  const alike = group(doubtful, ({ file, column, characteristic, doubt }) =>
    [file, column, characteristic, doubt.words].join('\u0000'),
  );
  for (const readings of alike.values()) await settleAlike(connector, readings, questions);
}

/** One question for the readings of a column that are out by the same factor. */
async function settleAlike(
  connector: Connector,
  readings: readonly DoubtfulReading[],
  questions: QuestionList,
): Promise<void> {
  const { file, column, characteristic, doubt } = readings[0] as DoubtfulReading;
  const named = readings
    .slice(0, 3)
    .map(({ line, raw }) => `‘${raw}’ in line ${line}`)
    .join(', ');
  const answer = questions.ask({
    id: questionId('scale', file, column, `${characteristic} ${doubt.words}`),
    file,
    column,
    question: `${named}${readings.length > 3 ? ` and ${readings.length - 3} more` : ''}: out of scale against the other readings of ${characteristic.replaceAll('_', ' ')}. What is right?`,
    choices: ['as written', doubt.words],
    guess: doubt.words,
    cellsWaiting: readings.length,
  });
  if (answer === 'as written') return;
  const ids = readings.map(({ id }) => id).join(', ');
  const about = `SELECT r.id, coalesce(r.value_column, 'value') AS column_name, r.raw_text AS raw`;
  const from = `FROM readings r WHERE r.id IN (${ids})`;
  if (answer === null) {
    const reason = `waits for an answer: out of scale against the other readings, by the look of it ${doubt.words}`;
    await holdRows(connector, 'readings', `${about}, ${quoted(reason)} AS reason ${from}`, 'true');
    return;
  }
  await connector.run(`INSERT INTO problems SELECT 'readings', r.file, r.line, coalesce(r.value_column, 'value'), r.raw_text, ${quoted(`taken ${doubt.words}, as answered`)}, 'interpreted' ${from};
    UPDATE readings SET value = value * ${doubt.factor}, lower = lower * ${doubt.factor}, upper = upper * ${doubt.factor} WHERE id IN (${ids})`);
}
