import { mkdir, readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { csvParse } from 'd3-dsv';
import { problemsTable } from '../analysis/fleetTables';
import { canonicalRows, questionsTable } from '../analysis/intakeTables';
import type { InputFile } from '../records/importReport';
import { type Answers, noAnswers } from '../records/intake/Answers';
import { withUniqueNames } from '../records/uniqueNames';
import { importFiles } from '../store/importFiles';
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

/** Answers from a file with the columns of questions.csv and `answer`; an empty answer leaves its question open. */
async function answersFrom(path: string | undefined): Promise<Answers> {
  if (path === undefined) return noAnswers;
  const rows = csvParse(new TextDecoder().decode(await read(path)));
  const missing = ['file', 'column', 'question', 'answer'].filter((name) => !rows.columns.includes(name));
  if (missing.length > 0)
    throw new UnusableArguments(`--answers: the file '${path}' has no column ${missing.join(', ')}`);
  const key = (file: string, column: string, question: string) => [file, column, question].join('\u0000');
  const given = new Map(
    rows.map((row) => [key(row.file ?? '', row.column ?? '', row.question ?? ''), row.answer?.trim() ?? '']),
  );
  return (question) => given.get(key(question.file, question.column, question.question));
}

/** The intake command: any exports in, canonical overhauls.csv and readings.csv, problems.csv and questions.csv out. */
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
  const files: InputFile[] = await Promise.all(
    positionals.map(async (path) => ({ name: basename(path), bytes: await read(path) })),
  );
  const answers = await answersFrom(values.answers);
  await mkdir(values.out, { recursive: true });
  const database = await openNodeDatabase();
  try {
    const connector = await database.connect();
    const imported = await importFiles(connector, withUniqueNames(files), async () => {}, { answers });
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
    process.stdout.write(`${imported.questions.length} questions\n`);
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
