import { group } from 'd3-array';
import type { QuestionList } from '../../records/intake/Answers';
import type { Connector } from '../Connector';
import { quoted } from '../sql/quoted';
import { copiedSetsSql } from './copiedSets';
import { holdReadings, linesInWords, settleDoubt } from './settleDoubt';
import { withNamesSql } from './sizedReadings';

interface CopiedSet {
  readonly file: string;
  readonly overhaul: string;
  readonly unit: string;
  readonly date: string;
  readonly firstLine: number;
  readonly lastLine: number;
  readonly cells: number;
  readonly source: 'previous' | 'other unit' | 'as found';
  readonly of: string;
}

/** Copied overhauls from which, and share of a file's overhauls from which, one question is asked for all of them. */
const fewestOfFile = 4;
const mostOfFile = 0.5;

const reasons: Readonly<Record<CopiedSet['source'], string>> = {
  previous: 'the unit’s overhaul before',
  'other unit': 'another unit',
  'as found': 'as found at the same overhaul',
};

/**
 * Asks whether as-left readings of a whole overhaul were copied: from the unit's overhaul before, from another unit or from
 * as found. They wait until it is answered; copied ones stay held. Returns whether it did.
 */
export async function askAboutCopiedReadings(
  connector: Connector,
  foreign: ReadonlySet<string>,
  questions: QuestionList,
): Promise<boolean> {
  await connector.run(copiedSetsSql);
  const sets = (
    await connector.query(`SELECT file, overhaul, unit, CAST(date AS VARCHAR) AS date, first_line, last_line, cells, source, "of"
      FROM ${withNamesSql('copied_sets')} ORDER BY file, first_line, overhaul`)
  )
    .map(
      (row): CopiedSet => ({
        file: String(row.file),
        overhaul: String(row.overhaul),
        unit: String(row.unit),
        date: String(row.date),
        firstLine: Number(row.first_line),
        lastLine: Number(row.last_line),
        cells: Number(row.cells),
        source: row.source as CopiedSet['source'],
        of: String(row.of),
      }),
    )
    .filter(({ file }) => foreign.has(file));
  const overhauls = new Map(
    (await connector.query('SELECT file, overhauls FROM left_overhauls')).map((row) => [
      String(row.file),
      Number(row.overhauls),
    ]),
  );
  await connector.run('DROP TABLE copied_sets; DROP TABLE left_overhauls');
  for (const alike of group(sets, ({ file, source }) => `${file}\u0000${source}`).values()) {
    const { file, source } = alike[0] as CopiedSet;
    const all = overhauls.get(file) ?? 0;
    if (alike.length >= fewestOfFile && alike.length >= mostOfFile * all) {
      const what = `the as left readings of ${alike.length} of ${all} overhauls are, cell for cell, those of ${reasons[source]}`;
      await settle(
        connector,
        questions,
        alike,
        '',
        `In ${file} ${what} (first in line ${alike[0]?.firstLine}).`,
      );
      continue;
    }
    for (const set of alike) {
      const lines = linesInWords(set.firstLine, set.lastLine);
      await settle(
        connector,
        questions,
        [set],
        set.overhaul,
        `The ${set.cells} as left readings of ${set.unit} of ${set.date} in ${file} ${lines} are, cell for cell, those of ${reasons[source]}${set.of === '' ? '' : ` (${set.of})`}.`,
      );
    }
  }
  return sets.length > 0;
}

async function settle(
  connector: Connector,
  questions: QuestionList,
  sets: readonly CopiedSet[],
  detail: string,
  sentence: string,
): Promise<void> {
  const { file, source } = sets[0] as CopiedSet;
  const readings = `r.file = ${quoted(file)} AND r.stage = 'left' AND r.overhaul IN (${sets.map(({ overhaul }) => quoted(overhaul)).join(', ')})`;
  const answer = await settleDoubt(
    connector,
    {
      kind: 'copied readings',
      file,
      about: source,
      detail,
      question: `${sentence} Were they copied or measured?`,
      choices: ['copied', 'measured'],
      readings,
      waiting: `waits for an answer: copied from ${reasons[source]}, or measured?`,
    },
    questions,
  );
  if (answer === 'copied')
    await holdReadings(connector, readings, `copied from ${reasons[source]}, as answered`, false);
}
