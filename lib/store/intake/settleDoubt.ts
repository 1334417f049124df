import { type QuestionKind, type QuestionList, questionId } from '../../records/intake/Answers';
import type { Connector } from '../Connector';
import { holdRows } from '../holdRows';
import { quoted } from '../sql/quoted';

/** Column names given with a question. */
const namesShown = 3;

/** A doubt about readings that one answer settles. */
export interface Doubt {
  readonly kind: QuestionKind;
  readonly file: string;
  /** Characteristics it is about; empty for all of them. */
  readonly about: string;
  /** Tells this doubt from others of its kind in the file; empty if it is about the whole file. */
  readonly detail: string;
  readonly question: string;
  readonly choices: readonly [string, string];
  /** SQL condition on readings r. */
  readonly readings: string;
  /** Why they are held while nobody has answered. */
  readonly waiting: string;
}

const listedSql = `SELECT r.id, coalesce(r.value_column, 'value') AS column_name, r.raw_text AS raw`;
const fromSql = (condition: string) =>
  `FROM readings r WHERE r.id IN (SELECT r.id FROM readings r WHERE ${condition})`;

/** Asks about a doubt; its readings are held until it is answered. Returns the answer, or null while there is none. */
export async function settleDoubt(
  connector: Connector,
  doubt: Doubt,
  questions: QuestionList,
): Promise<string | null> {
  const columns = await connector.query(
    `SELECT coalesce(value_column, 'value') AS name, count(*)::INTEGER AS n FROM readings r WHERE ${doubt.readings} GROUP BY 1 ORDER BY min(r.id)`,
  );
  const answer = questions.ask({
    id: questionId(doubt.kind, doubt.file, doubt.about, doubt.detail),
    file: doubt.file,
    column: doubt.detail === '' ? '' : namesInWords(columns.map(({ name }) => String(name))),
    question: doubt.question,
    choices: doubt.choices,
    guess: doubt.choices[0],
    cellsWaiting: columns.reduce((sum, { n }) => sum + Number(n), 0),
  });
  if (answer === null) await holdReadings(connector, doubt.readings, doubt.waiting, true);
  return answer;
}

/**
 * Holds the readings of the condition, each with its own cell.
 *
 * @param isDoubt they are only doubted, so that a person may release them
 */
export async function holdReadings(
  connector: Connector,
  condition: string,
  reason: string,
  isDoubt: boolean,
): Promise<void> {
  const question = `${listedSql}, ${quoted(reason)} AS reason ${fromSql(condition)}`;
  await holdRows(connector, 'readings', question, String(isDoubt));
}

/** Lists the readings of the condition as interpreted and changes one of their columns. */
export async function interpretReadings(
  connector: Connector,
  condition: string,
  note: string,
  change: string,
): Promise<void> {
  await connector.run(`CREATE OR REPLACE TABLE interpreted AS SELECT r.id FROM readings r WHERE ${condition};
    INSERT INTO problems SELECT 'readings', r.file, r.line, coalesce(r.value_column, 'value'), r.raw_text, ${quoted(note)}, 'interpreted'
      ${fromSql('r.id IN (SELECT id FROM interpreted)')};
    UPDATE readings SET ${change} WHERE id IN (SELECT id FROM interpreted); DROP TABLE interpreted`);
}

/** The first names, and how many more. */
function namesInWords(names: readonly string[]): string {
  const rest = names.length - namesShown;
  return `${names.slice(0, namesShown).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

/** 'line 4', or 'lines 4 to 9'. */
export function linesInWords(first: number, last: number): string {
  return first === last ? `line ${first}` : `lines ${first} to ${last}`;
}

/** A characteristic's code as words. */
export function codeInWords(characteristic: string): string {
  return characteristic.replaceAll('_', ' ');
}
