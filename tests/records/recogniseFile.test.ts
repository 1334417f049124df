import { describe, expect, it } from 'vitest';
import { canonicalTables } from '../../lib/records/canonicalTables';
import { builtInCharacteristics } from '../../lib/records/characteristics';
import { recogniseFile } from '../../lib/records/recogniseFile';
import { wideColumn } from '../../lib/records/wideColumns';

const recognise = (text: string) => recogniseFile(new TextEncoder().encode(text), builtInCharacteristics);

describe('recogniseFile', () => {
  for (const table of canonicalTables) {
    it(`knows ${table.name} by all of its columns, and by the needed ones in any order`, () => {
      const all = recognise(`${table.columns.map((column) => column.name).join(',')}\n`);
      const needed = table.columns.filter((column) => column.required).map((column) => column.name);
      const few = recognise(`${needed.reverse().join(';').toUpperCase()};note\n`);
      expect(all).toMatchObject({
        kind: 'table',
        table: { name: table.name },
        delimiter: ',',
        unusedColumns: [],
      });
      expect(few).toMatchObject({
        kind: 'table',
        table: { name: table.name },
        delimiter: ';',
        unusedColumns: ['note'],
      });
    });
  }

  it('knows a sheet with one row an overhaul', () => {
    const found = recognise('unit,date,unit_hours,thrust_play_found,tip_turbine_left_9_um,colour\n');
    expect(found).toMatchObject({
      kind: 'wide',
      unusedColumns: ['colour'],
      columns: [
        { characteristic: 'thrust_play', stage: 'found', clock: null, uom: 'mm' },
        { characteristic: 'tip_turbine', stage: 'left', clock: '9', uom: 'um' },
      ],
    });
  });

  it.each([
    ['Pos,Part,Qty\n1,Gasket,4\n', 'No known columns'],
    ['overhaul,unit,unit,date\n', "'unit' stands twice"],
  ])('says what is wrong with %j', (text, words) => {
    expect(recognise(text)).toMatchObject({ kind: 'none', message: expect.stringContaining(words) });
  });
});

describe('wideColumn', () => {
  it.each([
    ['runout_found_um', { characteristic: 'runout', stage: 'found', clock: null, uom: 'um' }],
    ['thrust_play_left_0.01mm', { characteristic: 'thrust_play', stage: 'left', clock: null, uom: '0.01mm' }],
    ['tip_compressor_found_12', { characteristic: 'tip_compressor', stage: 'found', clock: '12', uom: 'mm' }],
  ])('%s', (name, expected) => expect(wideColumn(name, builtInCharacteristics)).toMatchObject(expected));

  it.each([
    'runout',
    'runout_before',
    'runout_found_3',
    'tip_turbine_left',
    'tip_turbine_left_2',
    'runout_found_cm',
  ])('%s is none', (name) => expect(wideColumn(name, builtInCharacteristics)).toBeNull());
});
