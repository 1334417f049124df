import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvFormat, csvParse } from 'd3-dsv';
import { afterAll, describe, expect, it } from 'vitest';
import { meaningDecision } from '../../lib/records/decisions/meaningDecision';
import { savedDecisions } from '../../lib/records/decisions/savedDecisions';
import { questionId } from '../../lib/records/intake/Answers';
import { sheetShape } from '../../lib/records/intake/sheetShape';
import { filesOf, withRecords } from '../support/withRecords';

const folder = mkdtempSync(join(tmpdir(), 'intake-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

function intake(...words: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile('node_modules/.bin/tsx', ['lib/batch/intake.ts', ...words], (error, stdout, stderr) => {
      resolve({ status: error === null ? 0 : Number(error.code), stdout, stderr });
    });
  });
}

const sheet = (name: string) => join('data/examples/sheets', name);
const sheets = readdirSync('data/examples/sheets')
  .filter((name) => /^0[123467].*\.csv$/.test(name))
  .map(sheet);
const rowsOf = (out: string, table: string) =>
  csvParse(readFileSync(join(folder, out, `${table}.csv`), 'utf8'));
const written = ['overhauls.csv', 'problems.csv', 'questions.csv', 'readings.csv'];

/** Used readings by unit, day, hours and place, in mm, from canonical tables read in anew. */
async function readingsIn(out: string): Promise<readonly string[]> {
  const canonical = filesOf(join(folder, out)).filter(({ name }) =>
    /^(?:overhauls|readings)\.csv$/.test(name),
  );
  return withRecords(canonical, async (connector, imported) => {
    expect(imported.questions).toEqual([]);
    expect(imported.problems.filter(({ action }) => action === 'held')).toEqual([]);
    const rows = await connector.query(
      `SELECT concat_ws(' ', o.unit, CAST(o.date AS VARCHAR), CAST(o.unit_hours AS BIGINT), m.characteristic, m.stage, m.clock) AS place,
        m.value_mm::DOUBLE AS value FROM readings_mm m JOIN overhauls o ON o.overhaul = m.overhaul`,
    );
    return rows.map((row) => `${row.place} ${Number(Number(row.value).toFixed(9))}`).sort();
  });
}

describe('intake of workshops’ sheets', () => {
  it('writes canonical tables, problems and questions with status 0; answered, more is used', async () => {
    const first = await intake(...sheets, '--out', join(folder, 'first'));
    expect(first.status, first.stderr).toBe(0);
    expect(first.stderr).toBe('');
    expect(readdirSync(join(folder, 'first')).sort()).toEqual(written);
    for (const name of written)
      expect(readFileSync(join(folder, 'first', name), 'utf8')).not.toMatch(
        /\b(NaN|Infinity|undefined|null)\b/,
      );
    expect(first.stdout).toContain(
      '01-two-header-rows-latin1.csv: a workshop’s sheet, one row an overhaul: 46 readings in, 34 used, 0 no reading, 12 held.',
    );
    expect(first.stdout).toMatch(/\n6 questions\n$/);

    const readings = rowsOf('first', 'readings');
    expect(readings).toHaveLength(34 + 5 + 13 + 6 + 6 + 7);
    expect(readings.columns.slice(-2)).toEqual(['source_file', 'source_row']);
    expect(new Set(readings.map((row) => row.source_file)).size).toBe(sheets.length);

    const questions = rowsOf('first', 'questions');
    expect(questions.columns).toEqual(['file', 'column', 'question', 'choices', 'guess', 'cells_waiting']);
    expect(questions.every((row) => (row.choices ?? '').split('; ').includes(row.guess ?? ''))).toBe(true);
    const answers = join(folder, 'answers.csv');
    writeFileSync(answers, csvFormat(questions.map((row) => ({ ...row, answer: row.guess }))));
    const second = await intake(...sheets, '--answers', answers, '--out', join(folder, 'second'));
    expect(second.status, second.stderr).toBe(0);
    expect(second.stdout).toMatch(/\n0 questions\n$/);
    expect(rowsOf('second', 'questions')).toHaveLength(0);
    // The sides of 02 and its two slips, the serial day of 03, the millimetres of 07; 04 stays one job.
    expect(rowsOf('second', 'readings')).toHaveLength(readings.length + 4 + 2 + 3 + 1);

    for (const out of ['first', 'second']) {
      const again = await readingsIn(out);
      expect(again).toHaveLength(rowsOf(out, 'readings').length);
      expect(again).toContain('P-6101 2016-05-07 11240 tip_turbine found 12 0.88');
      expect(again.includes('P-6161 2016-01-08 19215 thrust_play found 0.19')).toBe(out === 'second');
      expect(again).toContain('P-6120 2018-09-08 23905 thrust_play found 0.4');
    }
  });

  it('an answer that is no choice, and an empty one, leave their questions open', async () => {
    const answers = join(folder, 'no-choice.csv');
    const rows = rowsOf('first', 'questions').map((row, at) => ({
      ...row,
      answer: at % 2 === 0 ? 'perhaps' : '',
    }));
    writeFileSync(answers, csvFormat(rows));
    const ended = await intake(...sheets, '--answers', answers, '--out', join(folder, 'open'));
    expect(ended.status).toBe(0);
    expect(rowsOf('open', 'questions')).toEqual(rowsOf('first', 'questions'));
    expect(rowsOf('open', 'readings')).toEqual(rowsOf('first', 'readings'));
  });

  it('takes column meanings and answers as the Records page saves them, for every file of the shape', async () => {
    const names = ['Kennung', 'Wann', 'Zähler', 'M1'];
    const shape = sheetShape(names);
    const day = { kind: 'answer', id: questionId('date order', 'old.csv', 'Wann'), file: 'old.csv' } as const;
    const saved = join(folder, 'saved.json');
    const text = savedDecisions(
      [
        { ...day, column: 'Wann', question: 'In which order?', answer: 'day first', shape },
        ...(['unit', 'date', 'unit_hours', 'reading'] as const).map((role, index) =>
          meaningDecision({
            file: 'old.csv',
            shape,
            index,
            column: names[index] ?? '',
            role,
            characteristic: role === 'reading' ? 'thrust_play' : null,
            stage: role === 'reading' ? 'left' : null,
            clock: null,
            uom: role === 'reading' ? 'mm' : null,
          }),
        ),
      ],
      [],
    );
    writeFileSync(saved, text);
    const mute = join(folder, 'mute.csv');
    writeFileSync(mute, `${names.join('\t')}\nM-1\t02/03/2016\t1000\t0.11\n`);
    expect((await intake(mute, '--out', join(folder, 'unsaid'))).status).toBe(2);
    const ended = await intake(mute, '--answers', saved, '--out', join(folder, 'said'));
    expect(ended.status, ended.stderr).toBe(0);
    expect(rowsOf('said', 'questions')).toHaveLength(0);
    expect(await readingsIn('said')).toEqual(['M-1 2016-03-02 1000 thrust_play left 0.11']);

    writeFileSync(saved, text.slice(0, -20));
    const damaged = await intake(mute, '--answers', saved, '--out', join(folder, 'damaged'));
    expect(damaged.status).toBe(2);
    expect(damaged.stderr).toContain('it is not in JSON, or it is cut off');
    expect(existsSync(join(folder, 'damaged'))).toBe(false);
  });

  it('ends with status 3 while nothing can be used before a question is answered', async () => {
    const file = join(folder, 'ambiguous.csv');
    writeFileSync(file, 'serial,date,hours,thrust play left (mm)\nM-1,02/03/2016,1000,0.11\n');
    const ended = await intake(file, '--out', join(folder, 'three'));
    expect(ended.status).toBe(3);
    expect(ended.stderr).toBe('Nothing can be used before a question is answered: see questions.csv.\n');
    expect(rowsOf('three', 'readings')).toHaveLength(0);
    expect(rowsOf('three', 'questions').map((row) => row.choices)).toEqual([
      'day first; month first; year first',
    ]);
  });

  it('ends with status 2 and a sentence when there is nothing to use or the arguments are wrong', async () => {
    const none = await intake(sheet('08-not-readings.csv'), '--out', join(folder, 'two'));
    expect(none.status).toBe(2);
    expect(none.stderr).toBe('No reading in these files can be used.\n');
    expect(none.stdout).toContain('08-not-readings.csv: not recognised');
    expect(readdirSync(join(folder, 'two')).sort()).toEqual(written);

    const answersWithout = join(folder, 'without.csv');
    writeFileSync(answersWithout, 'file,column\n');
    const given = sheet('06-utf16-tab.csv');
    const unusable = [
      [['--out', join(folder, 'x')], 'no file is named'],
      [[given], '--out is missing'],
      [['nowhere.csv', '--out', join(folder, 'x')], "the file 'nowhere.csv' cannot be read"],
      [[given, '--colour', 'red', '--out', join(folder, 'x')], '--colour'],
      [[given, '--answers', answersWithout, '--out', join(folder, 'x')], 'has no column question, answer'],
    ] as const;
    const ended = await Promise.all(unusable.map(([words]) => intake(...words)));
    unusable.forEach(([, said], at) => {
      expect(ended[at]?.status, said).toBe(2);
      expect(ended[at]?.stderr).toContain(said);
      expect(ended[at]?.stderr).toContain('Usage: npm run -s intake');
    });
    expect(existsSync(join(folder, 'x'))).toBe(false);
  });
});
