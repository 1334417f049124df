import { describe, expect, it } from 'vitest';
import type { InputFile } from '../../../lib/records/importReport';
import { withRecords } from '../../support/withRecords';

const hostile = [
  '<img src=x onerror=alert(1)>',
  "Robert'); DROP TABLE readings; --",
  '\u202Ename" OR 1=1',
  '{{7*7}} %s \\n',
];
const quotedCell = (text: string) => `"${text.replaceAll('"', '""')}"`;

describe('names that look like markup, SQL or a template', () => {
  it.each(hostile)('%s comes back as the text it is, in every field', async (name) => {
    const header = `serial,date,hours,frame,site,engine,bank,workshop,parts fitted,remarks,thrust play left (mm),${quotedCell(`${name} runout left (mm)`)}`;
    const cell = quotedCell(name);
    const row = `${cell},2016-04-18,9000,${cell},${cell},${cell},${cell},${cell},${cell},${cell},0.21,${cell}`;
    const file: InputFile = {
      name: `${name}.csv`,
      bytes: new TextEncoder().encode(`${header}\n${row}\n`),
    };
    await withRecords([file], async (connector, imported) => {
      const [overhaul] = await connector.query(
        'SELECT unit, site, engine, bank, workshop, fitted, remarks FROM overhauls',
      );
      expect(Object.values(overhaul ?? {})).toEqual(Array(7).fill(name));
      const [unit] = await connector.query('SELECT unit, frame FROM units');
      expect(unit).toEqual({ unit: name, frame: name });
      const [reading] = await connector.query('SELECT value_mm::DOUBLE AS value FROM readings_mm');
      expect(reading?.value).toBeCloseTo(0.21, 12);
      expect(imported.readingsUsed).toBe(1);
      const held = imported.problems.filter(({ action }) => action === 'held');
      expect(held).toMatchObject([
        { file: file.name, row: 2, raw: name, column: `${name} runout left (mm)` },
      ]);
    });
  });
});
