import { mkdir, readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { csvParse } from 'd3-dsv';
import { problemsTable } from '../analysis/fleetTables';
import { canonicalRows, questionsTable } from '../analysis/intakeTables';
import { fromSpreadsheet } from '../records/csv/spreadsheetText';
import { correctedReport, partCorrected, rulingsIn } from '../records/decisions/correctedFiles';
import { answersOf } from '../records/decisions/journal';
import { readSavedDecisions, UnreadableDecisions } from '../records/decisions/savedDecisions';
import type { InputFile } from '../records/importReport';
import { noAnswers } from '../records/intake/Answers';
import { withUniqueNames } from '../records/uniqueNames';
import { type ImportOptions, importFiles } from '../store/importFiles';
import { openNodeDatabase } from '../store/nodeDatabase';
import { runMain, UnusableArguments } from './runMain';
import { writeTable } from './writeTable';

const usage = 'Usage: npm run -s intake -- FILE... [--answers FILE] --out DIR';

async function read(path: string): Promise<Uint8Array> {
  try {
    return new Uint8Array(await readFile(path));
  } catch (error) {
    throw new UnusableArguments(
      `the file '${path}' cannot be read (${error instanceof Error ? error.message : error})`,
    );
  }
}

/**
 * Answers and column meanings from a file as the Records page saves it, or answers from one with the columns of
 * questions.csv and `answer`, where an empty answer leaves its question open.
 */
async function decidedIn(path: string | undefined): Promise<Pick<ImportOptions, 'answers' | 'decisions'>> {
  if (path === undefined) return { answers: noAnswers };
  const text = new TextDecoder().decode(await read(path));
  if (text.trimStart().startsWith('{')) return savedIn(path, text);
  const rows = csvParse(text, (row) =>
    Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, fromSpreadsheet(cell ?? '')])),
  );
  const missing = ['file', 'column', 'question', 'answer'].filter((name) => !rows.columns.includes(name));
  if (missing.length > 0)
    throw new UnusableArguments(`--answers: the file '${path}' has no column ${missing.join(', ')}`);
  const key = (file: string, column: string, question: string) => [file, column, question].join('\u0000');
  const given = new Map(
    rows.map((row) => [key(row.file ?? '', row.column ?? '', row.question ?? ''), row.answer?.trim() ?? '']),
  );
  return { answers: (question) => given.get(key(question.file, question.column, question.question)) };
}

function savedIn(path: string, text: string): Pick<ImportOptions, 'answers' | 'decisions'> {
  try {
    const decisions = readSavedDecisions(text);
    return { answers: answersOf(decisions), decisions };
  } catch (error) {
    if (error instanceof UnreadableDecisions)
      throw new UnusableArguments(`--answers: the file '${path}': ${error.message}`);
    throw error;
  }
}

/**
 * The intake command: any exports in, canonical overhauls.csv and readings.csv, problems.csv and questions.csv out; a file of
 * corrected held rows among them is applied to the others.
 */
async function main(words: readonly string[]): Promise<number> {
  let parsed: { values: { answers?: string; out?: string }; positionals: string[] };
  try {
    parsed = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: { answers: { type: 'string' }, out: { type: 'string' } },
    });
  } catch (error) {
    throw new UnusableArguments(error instanceof Error ? error.message : String(error));
  }
  const { positionals, values } = parsed;
  if (positionals.length === 0) throw new UnusableArguments('no file is named');
  if (values.out === undefined) throw new UnusableArguments('--out is missing: name the folder to write to');
  const given: InputFile[] = await Promise.all(
    positionals.map(async (path) => ({ name: basename(path), bytes: await read(path) })),
  );
  const { files, corrected } = partCorrected(given, '');
  if (files.length === 0)
    throw new UnusableArguments('only corrected held rows are named: name the files that they are from, too');
  const decided = await decidedIn(values.answers);
  await mkdir(values.out, { recursive: true });
  const database = await openNodeDatabase();
  try {
    const connector = await database.connect();
    const imported = await importFiles(connector, withUniqueNames(files), async () => {}, {
      ...decided,
      decisions: [...(decided.decisions ?? []), ...rulingsIn(corrected)],
    });
    await writeTable(values.out, await canonicalRows(connector, 'overhauls'));
    await writeTable(values.out, await canonicalRows(connector, 'readings'));
    await writeTable(values.out, problemsTable(imported));
    await writeTable(values.out, questionsTable(imported.questions));
    for (const file of imported.files) {
      const { readingsIn, readingsUsed, readingsHeld, readingsNone } = file;
      const counts = `${readingsIn} readings in, ${readingsUsed} used, ${readingsNone} no reading, ${readingsHeld} held`;
      process.stdout.write(
        `${file.file}: ${file.table ?? 'not recognised'}: ${counts}${file.message === null ? '' : `. ${file.message}`}\n`,
      );
    }
    for (const rows of corrected) process.stdout.write(`${correctedReport(rows, imported.rulings)}\n`);
    process.stdout.write(
      `${imported.questions.length} ${imported.questions.length === 1 ? 'question' : 'questions'}\n`,
    );
    if (imported.readingsUsed > 0) return 0;
    process.stderr.write(
      imported.questions.length > 0
        ? 'Nothing can be used before a question is answered: see questions.csv.\n'
        : 'No reading in these files can be used.\n',
    );
    return imported.questions.length > 0 ? 3 : 2;
  } finally {
    await database.close();
  }
}

await runMain(main, usage);
