import { describe, expect, test } from 'vitest';
import { correctedReport, partCorrected } from '../../../lib/records/decisions/correctedFiles';
import { heldRowsCsv } from '../../../lib/records/decisions/heldRowsCsv';
import { readHeldRowsCsv } from '../../../lib/records/decisions/readHeldRowsCsv';
import type { Problem } from '../../../lib/records/importReport';
import { type SpreadsheetHabits, spreadsheetSave } from '../../support/spreadsheetSave';
import { textFile } from '../../support/textFile';

const held = (row: number, column: string, raw: string, reason = 'no number'): Problem => ({
  file: 'Kärtchen; Mai.csv',
  row,
  column,
  raw,
  reason,
  action: 'held',
});
const problems = [
  held(3, 'Axialspiel (mm)', 'O.31'),
  held(4, 'Axialspiel (mm)', '=2*0.01', 'a formula, never evaluated'),
  held(5, 'Wert', '-0.010 mm'),
  held(6, '', 'W-1 | "x | 0,3'),
  held(7, 'Wert', 'zwei\nZeilen'),
  { ...held(8, 'Wert', '0.2'), action: 'interpreted' as const },
];
const filled = {
  2: { corrected: '0.31', why: 'Karte gelesen' },
  3: { corrected: "'=0.02" },
  4: { ruling: 'Release', why: 'seen' },
  5: { ruling: 'leave  out', why: 'no overhaul' },
} as const;

describe('the file of held rows', () => {
  test('lists every held row, and nothing in it starts as a formula does', () => {
    const lines = heldRowsCsv(problems).split('\n');
    expect(lines[0]).toBe('\uFEFFfile,line,column,raw,reason,corrected,ruling,why');
    expect(lines[2]).toBe('Kärtchen; Mai.csv,4,Axialspiel (mm),\'=2*0.01,"a formula, never evaluated",,,');
    expect(heldRowsCsv(problems)).not.toContain('0.2,');
  });

  test.each<SpreadsheetHabits>([
    { delimiter: ',', decimalComma: false, encoding: 'utf-8' },
    { delimiter: ';', decimalComma: true, encoding: 'utf-8 with mark' },
    { delimiter: ';', decimalComma: true, encoding: 'latin1' },
    { delimiter: '\t', decimalComma: true, encoding: 'utf-16le' },
  ])('comes back as rulings from a spreadsheet: %o', (habits) => {
    const bytes = spreadsheetSave(heldRowsCsv(problems), filled, habits);
    const read = readHeldRowsCsv({ name: 'held-rows.csv', bytes }, 'AB');
    expect(read?.faults).toEqual([]);
    expect(read?.untouched).toBe(1);
    expect(
      read?.given.map(({ line, ruling }) => [
        line,
        ruling.file,
        ruling.line,
        ruling.column,
        ruling.raw,
        ruling.ruling,
        ruling.text,
        ruling.reason,
        ruling.by,
      ]),
    ).toEqual([
      [2, 'Kärtchen; Mai.csv', 3, 'Axialspiel (mm)', 'O.31', 'edit', '0.31', 'Karte gelesen', 'AB'],
      [
        3,
        'Kärtchen; Mai.csv',
        4,
        'Axialspiel (mm)',
        '=2*0.01',
        'edit',
        '=0.02',
        'as corrected in held-rows.csv, line 3',
        'AB',
      ],
      [4, 'Kärtchen; Mai.csv', 5, 'Wert', '-0.010 mm', 'release', null, 'seen', 'AB'],
      [5, 'Kärtchen; Mai.csv', 6, '', 'W-1 | "x | 0,3', 'leave out', null, 'no overhaul', 'AB'],
    ]);
  });

  test('with semicolons a decimal comma is a decimal point, three decimals included', () => {
    const file = textFile(
      'held-rows.csv',
      'sep=;\nfile;line;column;raw;corrected;ruling\na.csv;3,0;v;1;0,31;\na.csv;4;v;1;12,480;edit',
    );
    const read = readHeldRowsCsv(file, '');
    expect(read?.given.map(({ line, ruling }) => [line, ruling.line, ruling.text])).toEqual([
      [3, 3, '0.31'],
      [4, 4, '12.4800'],
    ]);
  });

  test('says by line what cannot be taken', () => {
    const read = readHeldRowsCsv(
      textFile(
        'held-rows.csv',
        `file,line,column,raw,reason,corrected,ruling,why
a.csv,3,v,x,,,edit,
a.csv,4,v,x,,0.3,release,
a.csv,5,v,x,,,delete,
a.csv,x,v,x,,0.3,,
a.csv,7,v,x,,0.3,,
a.csv,7,v,x,,0.4,,
a.csv,7,v,x,,0.3,,
a.csv,8,v,x,,0,3,,,`,
      ),
      '',
    );
    expect(read?.faults).toEqual([
      { line: 2, reason: 'the ruling is edit and the cell ‘corrected’ is empty: give the right text' },
      {
        line: 3,
        reason: 'a corrected text and the ruling ‘release’ contradict each other: give one of them',
      },
      { line: 4, reason: 'the ruling ‘delete’ is none of edit, release, leave out' },
      { line: 5, reason: 'file ‘a.csv’ and line ‘x’ name no held row' },
      { line: 7, reason: 'ruled otherwise in line 6' },
      { line: 9, reason: 'the ruling ‘3’ is none of edit, release, leave out' },
    ]);
    expect(read?.given).toHaveLength(1);
  });

  test('is told from other files, and its report counts what was applied', () => {
    const corrected = {
      name: 'held-rows.csv',
      bytes: spreadsheetSave(heldRowsCsv(problems), filled, {
        delimiter: ',',
        decimalComma: false,
        encoding: 'utf-8',
      }),
    };
    const others = [
      textFile('problems.csv', 'file,row,column,raw,reason,action\na.csv,3,value,x,no number,held'),
      textFile('readings.csv', 'overhaul,characteristic,stage,value,uom\nA,runout,left,0.1,mm'),
    ];
    const parted = partCorrected([...others.slice(0, 1), corrected, ...others.slice(1)], 'AB');
    expect(parted.files).toEqual(others);
    const [rows] = parted.corrected;
    if (rows === undefined) throw new Error('no corrected file was found');
    const outcomes = rows.given.map(({ ruling }) => ({
      ...ruling,
      notApplied: ruling.line === 5 ? 'nothing is held there' : null,
    }));
    expect(correctedReport(rows, outcomes)).toBe(
      'held-rows.csv: 3 of 4 rulings applied; lines without one: 1. Line 4: nothing is held there.',
    );
  });
});
