import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { InputFile } from '../../../lib/records/importReport';
import type { Database } from '../../../lib/store/Connector';
import { importFiles } from '../../../lib/store/importFiles';
import { previewSheet } from '../../../lib/store/intake/previewSheet';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { textFile } from '../../support/textFile';
import { bytesOf } from './ownSheet';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

/** Our own sheets in forms of their own; 05 has canonical names and is no case for it. */
const sheets = readdirSync('data/examples/sheets').filter((name) => /^0[^5].*\.csv$/.test(name));

async function previewed(files: readonly InputFile[], name: string) {
  const connector = await database.connect();
  try {
    return await previewSheet(connector, files, name, {});
  } finally {
    await connector.close();
  }
}

describe('preview of a sheet', () => {
  test.each(sheets)('shows of each line what an import uses and holds of it: %s', async (name) => {
    const file = { name, bytes: bytesOf(name) };
    const preview = await previewed([file], name);
    const connector = await database.connect();
    const imported = await importFiles(connector, [file], async () => {});
    const rows = await connector.query(
      `SELECT m.line, concat_ws(' ', o.unit, CAST(o.date AS VARCHAR), CAST(o.unit_hours AS DOUBLE), m.characteristic, m.stage, m.clock, CAST(m.value_mm AS DOUBLE)) AS text
       FROM readings_mm m JOIN readings r USING (id) JOIN overhauls o ON o.overhaul = m.overhaul`,
    );
    await connector.close();
    const shown = new Set(preview.lines.map(({ line }) => line));
    const texts = preview.lines.flatMap((line) =>
      line.readings.map((one) => {
        const number = (value: number | null) =>
          value === null ? null : Number.isInteger(value) ? value.toFixed(1) : String(value);
        const place = [
          line.unit,
          line.date,
          number(line.unitHours),
          one.characteristic,
          one.stage,
          one.clock,
        ];
        return `${line.line} ${[...place, number(one.value_mm)].filter((part) => part !== null).join(' ')}`;
      }),
    );
    expect(texts.sort()).toEqual(
      rows
        .filter((row) => shown.has(Number(row.line)))
        .map((row) => `${row.line} ${row.text}`)
        .sort(),
    );
    expect(preview.lines.flatMap(({ problems }) => problems)).toEqual(
      imported.problems.filter(({ row }) => shown.has(row)),
    );
    expect(preview.sheet).toEqual(imported.sheets.get(name));
    expect(preview.isPart).toBe(false);
    expect([preview.readingsIn, preview.readingsUsed, preview.questions]).toEqual([
      imported.files[0]?.readingsIn,
      imported.files[0]?.readingsUsed,
      imported.questions.length,
    ]);
  });

  test('shows the first eight lines of a long file in cells, and reads 200 of them', async () => {
    const lines = Array.from(
      { length: 500 },
      (_, n) => `U-${n},2016-02-03,${8000 + n},0.${String(100 + n)},"a, b"`,
    );
    const file = textFile('long.csv', `serial,date,hours,thrust play found (mm),note\n${lines.join('\n')}`);
    const preview = await previewed([file], 'long.csv');
    expect(preview.lines.map(({ line }) => line)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
    expect(preview.lines[0]?.cells).toEqual(['U-0', '2016-02-03', '8000', '0.100', 'a, b']);
    expect([preview.isPart, preview.readingsIn]).toEqual([true, 200]);
  });

  test('knows added characteristics and installations, and leaves other sheets out', async () => {
    const added = textFile(
      'characteristics.csv',
      'characteristic,name,shape,never_negative\nfin_gap,Fin gap,single,yes',
    );
    const sheet = textFile('s.csv', 'serial,date,hours,fin gap found (mm)\nR-1,2016-02-03,8120,0.31');
    const other = textFile('t.csv', 'serial,date,hours,fin gap found (mm)\nR-2,2016-02-03,8120,0.31');
    const preview = await previewed([other, sheet, added], 's.csv');
    expect(preview.lines[0]?.readings.map(({ characteristic }) => characteristic)).toEqual(['fin_gap']);
    expect(preview.sheet.characteristics.map(({ code }) => code)).toContain('fin_gap');
    expect(preview.readingsIn).toBe(1);
  });

  test('says why there is none', async () => {
    const file = textFile('units.csv', 'unit,frame\nR-1,Lark');
    await expect(previewed([file], 'other.csv')).rejects.toThrow('is not among those read');
    await expect(previewed([file], 'units.csv')).rejects.toThrow('columns need no correction');
    await expect(previewed([{ name: 'e.csv', bytes: new Uint8Array() }], 'e.csv')).rejects.toThrow(
      'cannot be shown',
    );
  });
});
