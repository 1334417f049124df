import { describe, expect, it } from 'vitest';
import { builtInCharacteristics, type Characteristic } from '../../../../lib/records/characteristics';
import { columnMeanings } from '../../../../lib/records/intake/columnMeanings';
import { englishSheets } from './sheets/englishSheets';
import { germanSheets } from './sheets/germanSheets';
import { northernSheets } from './sheets/northernSheets';
import { romanceSheets } from './sheets/romanceSheets';
import { samplesOf, shortForm } from './sheets/sheet';

const sheets = [...englishSheets, ...germanSheets, ...romanceSheets, ...northernSheets];

function meaningsOf(columns: string, ...lines: readonly string[]) {
  const names = columns.split('|');
  const samples = names.map((_, index) => lines.map((line) => line.split('|')[index] ?? ''));
  return columnMeanings(names, samples, builtInCharacteristics);
}

describe('columnMeanings of invented sheets', () => {
  it.each(sheets.map((sheet) => [sheet.name, sheet] as const))('%s', (_, sheet) => {
    const found = columnMeanings(sheet.columns, samplesOf(sheet), builtInCharacteristics);
    expect(found.map((meaning) => `${meaning.name}: ${shortForm(meaning)}`)).toEqual(
      sheet.columns.map((column, index) => `${column}: ${sheet.meanings[index]}`),
    );
  });

  it('states index, evidence and a sureness from 0 to 1 of every column', () => {
    for (const sheet of sheets) {
      columnMeanings(sheet.columns, samplesOf(sheet), builtInCharacteristics).forEach((meaning, index) => {
        expect(meaning.index).toBe(index);
        expect(meaning.evidence).toContain('header');
        expect(meaning.evidence).not.toMatch(/undefined|null|NaN/);
        expect(meaning.sureness).toBeGreaterThanOrEqual(0);
        expect(meaning.sureness).toBeLessThanOrEqual(1);
        if (meaning.role !== 'unused') expect(meaning.sureness).toBeGreaterThan(0);
      });
    }
  });
});

describe('evidence and sureness of columnMeanings', () => {
  it('quotes the header row that each part comes from', () => {
    const [axial] = meaningsOf('Vor Zerlegung / Axialspiel|Läufer-Nr.|Datum');
    expect(axial?.evidence).toBe(
      'header says "Axialspiel", upper header says "Vor Zerlegung": thrust play; as found',
    );
  });

  it('is certain of canonical names only', () => {
    const certain = meaningsOf('unit|date|unit_hours|tip_turbine_left_3_um');
    expect(certain.map(({ sureness }) => sureness)).toEqual([1, 1, 1, 1]);
    for (const { sureness } of meaningsOf('Serial|Overhaul date|Hours|Thrust play found')) {
      expect(sureness).toBeLessThan(1);
    }
  });

  it('says that bare hours were taken as the unit’s own, less surely than named ones', () => {
    const bare = meaningsOf('Serial|Date|Hours|Thrust play found')[2];
    const named = meaningsOf('Serial|Date|TC hours|Thrust play found')[2];
    expect(bare?.evidence).toContain('taken as the unit’s own');
    expect(bare?.sureness).toBeLessThan(named?.sureness ?? 0);
  });

  it('gives one role to the surer of two columns and says why the other has none', () => {
    const [hours, , , own] = meaningsOf('Hours|Serial|Date|TC hours|Thrust play found');
    expect([hours?.role, own?.role]).toEqual(['unused', 'unit_hours']);
    expect(hours?.evidence).toContain('column "TC hours" is surer');
  });

  it('doubts a stage that is not said, a second column of the same reading and a unit of measure such as cm', () => {
    const [, , silent, twin, centimetres] = meaningsOf('Serial|Date|Runout|Runout|Thrust play found (cm)');
    expect(silent?.sureness).toBe(0.3);
    expect(twin?.evidence).toContain('same reading');
    expect(centimetres?.uom).toBeNull();
    expect(centimetres?.sureness).toBeLessThanOrEqual(0.4);
    expect(centimetres?.evidence).toContain('not known');
  });

  it('doubts a date column without dates and a reading column without numbers', () => {
    const [, date, runout] = meaningsOf('Serial|Date|Runout found', 'A1|north|good', 'A2|south|worn');
    expect(date?.sureness).toBeLessThan(0.5);
    expect(runout?.sureness).toBeLessThan(0.5);
  });

  it('tells kind of overhaul from type of unit by the texts', () => {
    const kind = meaningsOf('Serial|Date|Type|Runout found', 'A1|2020-01-01|planned|0.1')[2];
    const frame = meaningsOf('Serial|Date|Type|Runout found', 'A1|2020-01-01|Heron 4|0.1')[2];
    expect([kind?.role, frame?.role]).toEqual(['kind', 'frame']);
  });

  it('knows characteristics that the user added, by code and by name', () => {
    const added: Characteristic = {
      code: 'liner_wear',
      name: 'Cylinder liner wear',
      shape: 'single',
      neverNegative: true,
    };
    const found = columnMeanings(
      ['unit', 'date', 'liner_wear_found_um', 'Cylinder liner wear left [mm]'],
      [],
      [...builtInCharacteristics, added],
    );
    expect(found.slice(2).map(shortForm)).toEqual([
      'reading liner_wear found um',
      'reading liner_wear left mm',
    ]);
    expect(meaningsOf('unit|date|Cylinder liner wear left [mm]').map(({ role }) => role)).toEqual([
      'unused',
      'unused',
      'unused',
    ]);
  });

  it('takes nothing from empty, odd and endless headers', () => {
    for (const name of ['', ' / ', '"', '()', '///', '1/', '\u0000', '%'.repeat(2000), 'x'.repeat(2000)]) {
      expect(columnMeanings([name, name], [[]], builtInCharacteristics).map(({ role }) => role)).toEqual([
        'unused',
        'unused',
      ]);
    }
    expect(columnMeanings([], [], builtInCharacteristics)).toEqual([]);
  });
});
