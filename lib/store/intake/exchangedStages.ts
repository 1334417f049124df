import { group } from 'd3-array';
import type { QuestionList } from '../../records/intake/Answers';
import type { Connector } from '../Connector';
import { quoted } from '../sql/quoted';
import { codeInWords, interpretReadings, linesInWords, settleDoubt } from './settleDoubt';
import { withNamesSql } from './sizedReadings';
import { stagePairsSql } from './stagePairs';

interface Pair {
  readonly file: string;
  readonly overhaul: string;
  readonly unit: string;
  readonly characteristic: string;
  readonly firstLine: number;
  readonly lastLine: number;
}
interface Column {
  readonly file: string;
  readonly characteristic: string;
  readonly tellable: number;
  readonly turned: number;
  readonly reversed: boolean;
}

/** Turned pairs from which, and share of the tellable ones from which, the doubt is about the whole column pair. */
const fewestOfColumn = 4;
const mostOfColumn = 0.7;

/**
 * Asks whether as found and as left are exchanged, once a file, a pair of columns or an overhaul, whichever holds all of the
 * doubt; both stages wait until it is answered. Returns whether it did.
 */
export async function askAboutExchangedStages(
  connector: Connector,
  foreign: ReadonlySet<string>,
  questions: QuestionList,
): Promise<boolean> {
  await connector.run(stagePairsSql);
  const columns = (
    await connector.query(`SELECT file, characteristic, tellable, turned, reversed FROM stage_columns
      WHERE turned > 0 OR reversed > 0 OR tellable > 0 ORDER BY file, characteristic`)
  )
    .map(
      (row): Column => ({
        file: String(row.file),
        characteristic: String(row.characteristic),
        tellable: Number(row.tellable),
        turned: Number(row.turned),
        reversed: Number(row.reversed) > 0,
      }),
    )
    .filter(({ file }) => foreign.has(file));
  const pairs = (
    await connector.query(`SELECT file, overhaul, unit, characteristic, first_line, last_line FROM ${withNamesSql('stage_pairs')}
      WHERE is_doubtful ORDER BY file, first_line, overhaul, characteristic`)
  )
    .map(
      (row): Pair => ({
        file: String(row.file),
        overhaul: String(row.overhaul),
        unit: String(row.unit),
        characteristic: String(row.characteristic),
        firstLine: Number(row.first_line),
        lastLine: Number(row.last_line),
      }),
    )
    .filter(({ file }) => foreign.has(file));
  const straight = new Set(
    (
      await connector.query(
        `SELECT DISTINCT overhaul FROM ${withNamesSql('stage_pairs')} WHERE is_straight AND overhaul_id IN (SELECT overhaul_id FROM stage_pairs WHERE is_doubtful)`,
      )
    ).map((row) => String(row.overhaul)),
  );
  await connector.run('DROP TABLE stage_pairs; DROP TABLE stage_columns');
  const whole = new Set<string>();
  for (const [file, ofFile] of group(columns, (one) => one.file)) {
    const exchanged = ofFile.filter(isWholeColumn);
    for (const { characteristic } of exchanged) whole.add(`${file}\u0000${characteristic}`);
    const isWholeFile =
      exchanged.length > 1 && ofFile.every((one) => one.tellable < 3 || exchanged.includes(one));
    if (isWholeFile) {
      for (const { characteristic } of pairs) whole.add(`${file}\u0000${characteristic}`);
      await settle(connector, questions, file, '', '', `in the whole of ${file}`, `r.file = ${quoted(file)}`);
      continue;
    }
    for (const { characteristic } of exchanged)
      await settle(
        connector,
        questions,
        file,
        characteristic,
        'all',
        `in all readings of ${codeInWords(characteristic)} in ${file}`,
        `r.file = ${quoted(file)} AND r.characteristic = ${quoted(characteristic)}`,
      );
  }
  const single = pairs.filter(({ file, characteristic }) => !whole.has(`${file}\u0000${characteristic}`));
  for (const [overhaul, ofOverhaul] of group(single, (one) => one.overhaul)) {
    const { file, unit } = ofOverhaul[0] as Pair;
    const codes = ofOverhaul.map(({ characteristic }) => characteristic);
    const isAll = !straight.has(overhaul) && codes.length > 1;
    const lines = linesInWords(
      Math.min(...ofOverhaul.map(({ firstLine }) => firstLine)),
      Math.max(...ofOverhaul.map(({ lastLine }) => lastLine)),
    );
    await settle(
      connector,
      questions,
      file,
      isAll ? '' : codes.join(', '),
      overhaul,
      `in ${file} ${lines} (${unit}${isAll ? '' : `, ${codes.map(codeInWords).join(', ')}`})`,
      `r.file = ${quoted(file)} AND r.overhaul = ${quoted(overhaul)}${isAll ? '' : ` AND r.characteristic IN (${codes.map(quoted).join(', ')})`}`,
    );
  }
  return single.length + whole.size > 0;
}

function isWholeColumn({ tellable, turned, reversed }: Column): boolean {
  return reversed || (turned >= fewestOfColumn && turned >= mostOfColumn * tellable);
}

async function settle(
  connector: Connector,
  questions: QuestionList,
  file: string,
  about: string,
  detail: string,
  where: string,
  readings: string,
): Promise<void> {
  const answer = await settleDoubt(
    connector,
    {
      kind: 'stages exchanged',
      file,
      about,
      detail,
      question: `Are as found and as left exchanged ${where}? The readings fit far better the other way round.`,
      choices: ['exchanged', 'as written'],
      readings,
      waiting: 'waits for an answer: are as found and as left exchanged?',
    },
    questions,
  );
  if (answer === 'exchanged')
    await interpretReadings(
      connector,
      readings,
      'as found and as left exchanged, as answered',
      `stage = CASE stage WHEN 'found' THEN 'left' ELSE 'found' END`,
    );
}
