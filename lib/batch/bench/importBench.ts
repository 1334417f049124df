import { readFile } from 'node:fs/promises';
import { DuckDBInstance } from '@duckdb/node-api';
import { importFiles } from '../../store/importFiles';
import { openNodeDatabase } from '../../store/nodeDatabase';
import type { BenchResult } from './BenchResult';
import { type BenchFile, writeCanonicalFiles, writeLongSheet } from './benchFiles';

/** How the peer reads a form: its columns with their types, and its dialect. */
interface PeerRead {
  readonly file: string;
  readonly columns: Readonly<Record<string, string>>;
  readonly dialect: string;
}

const plainComma = `delim = ','`;
const canonicalReads: readonly PeerRead[] = [
  {
    file: 'overhauls.csv',
    columns: {
      overhaul: 'VARCHAR',
      unit: 'VARCHAR',
      date: 'DATE',
      unit_hours: 'DOUBLE',
      engine_hours: 'DOUBLE',
      site: 'VARCHAR',
      engine: 'VARCHAR',
      bank: 'VARCHAR',
      workshop: 'VARCHAR',
      kind: 'VARCHAR',
      fitted: 'VARCHAR',
      remarks: 'VARCHAR',
    },
    dialect: plainComma,
  },
  {
    file: 'readings.csv',
    columns: {
      overhaul: 'VARCHAR',
      characteristic: 'VARCHAR',
      stage: 'VARCHAR',
      clock: 'VARCHAR',
      value: 'DOUBLE',
      uom: 'VARCHAR',
      lower: 'DOUBLE',
      upper: 'DOUBLE',
      source_file: 'VARCHAR',
      source_row: 'INTEGER',
    },
    dialect: plainComma,
  },
];
const sheetReads: readonly PeerRead[] = [
  {
    file: 'workshop.csv',
    columns: {
      unit: 'VARCHAR',
      date: 'DATE',
      hours: 'DOUBLE',
      characteristic: 'VARCHAR',
      stage: 'VARCHAR',
      clock: 'VARCHAR',
      value: 'DOUBLE',
      uom: 'VARCHAR',
    },
    dialect: `delim = ';', decimal_separator = ',', dateformat = '%d.%m.%Y'`,
  },
];

/** Reads the files with the engine alone: typed columns, no checks; returns seconds and the rows of the last file. */
async function peerSeconds(
  files: readonly BenchFile[],
  reads: readonly PeerRead[],
): Promise<[number, number]> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  const start = performance.now();
  for (const { file, columns, dialect } of reads) {
    const path = files.find(({ name }) => name === file)?.path ?? file;
    const types = Object.entries(columns).map(([name, type]) => `'${name}': '${type}'`);
    await connection.run(
      `CREATE TABLE peer_${file.replace('.csv', '')} AS SELECT * FROM read_csv('${path.replaceAll("'", "''")}', header = true, auto_detect = false, quote = '"', ${dialect}, columns = {${types.join(', ')}})`,
    );
  }
  const seconds = (performance.now() - start) / 1000;
  const last = reads.at(-1)?.file.replace('.csv', '');
  const [[rows] = []] = await connection
    .runAndReadAll(`SELECT count(*)::INTEGER FROM peer_${last}`)
    .then((all) => all.getRows());
  connection.closeSync();
  instance.closeSync();
  return [seconds, Number(rows)];
}

/** Takes the files in from their bytes to runs, every check included; returns seconds and the readings used or held. */
async function importSeconds(files: readonly BenchFile[]): Promise<[number, number]> {
  const database = await openNodeDatabase();
  const connector = await database.connect();
  const start = performance.now();
  const inputs = [];
  for (const { name, path } of files) inputs.push({ name, bytes: await readFile(path) });
  const imported = await importFiles(connector, inputs, async () => {}, { problemsListed: 5000 });
  const seconds = (performance.now() - start) / 1000;
  await connector.close();
  await database.close();
  // Of so many sets drawn at random one in a million looks exchanged, and waits for its answer.
  const held = imported.files.reduce((sum, file) => sum + file.readingsHeld, 0);
  if (held > imported.readingsUsed / 10_000)
    throw new Error(
      `${held} readings of the bench files are held: ${imported.questions[0]?.question ?? 'no question'}`,
    );
  return [seconds, imported.readingsUsed + held];
}

async function compared(
  bench: string,
  files: readonly BenchFile[],
  reads: readonly PeerRead[],
): Promise<BenchResult> {
  let [peer, ours] = [Infinity, Infinity];
  for (let round = 0; round < 3; round++) {
    const [peerTime, rows] = await peerSeconds(files, reads);
    const [ourTime, used] = await importSeconds(files);
    if (rows !== used) throw new Error(`${bench}: the peer read ${rows} readings, the import ${used}`);
    peer = Math.min(peer, peerTime);
    ours = Math.min(ours, ourTime);
  }
  return { bench, peer: 'typed read_csv of the same file', peer_s: peer, ours_s: ours };
}

/** Time of the import against the engine's own plain typed read of the same files, the shortest of three runs each. */
export async function importBench(folder: string, readings: number): Promise<readonly BenchResult[]> {
  const canonical = await writeCanonicalFiles(folder, readings);
  const sheet = await writeLongSheet(folder, readings);
  return [
    await compared(`canonical, ${readings} readings`, canonical, canonicalReads),
    await compared(`workshop’s long sheet, ${readings} readings`, sheet, sheetReads),
  ];
}
