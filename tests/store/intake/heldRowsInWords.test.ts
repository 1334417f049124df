import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { encodeAs } from '../../records/intake/layout/encodeAs';
import { importSheets } from './importSheets';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const sheet = (lines: readonly string[]) => ({
  name: 'shop.csv',
  bytes: new TextEncoder().encode(['serial;date;hours;thrust play left (mm)', ...lines].join('\n')),
});

describe('rows held for date or hours', () => {
  it('are counted together in the file’s message, with the first of them', async () => {
    const lines = ['H-1;01.04.2011;1000;0,11', 'H-1;31.04.2012;2000;0,12', 'H-1;31.02.2013;3000;0,13'];
    const without = [4, 5, 6, 7, 8, 9].map((year) => `H-1;01.04.201${year};;0,1${year}`);
    const { files, questions } = await importSheets(database, [
      sheet([...lines, ...without, 'H-2;;500;0,11']),
    ]);
    expect(files[0]?.message).toContain(
      '2 rows are held for a date that is not in the calendar or cannot be read: ‘31.04.2012’ in line 3, ‘31.02.2013’ in line 4.',
    );
    expect(files[0]?.message).toContain(
      '6 rows are held since the hours are missing or cannot be read: line 5, line 6, line 7, line 8 and 2 more.',
    );
    expect(files[0]?.message).toContain('1 row is held since the date is missing: line 11.');
    expect(files[0]).toMatchObject({ readingsIn: 10, readingsUsed: 1, readingsHeld: 9 });
    expect(questions).toEqual([]);
  });

  it('are not mentioned where none is, or where a question waits', async () => {
    const sound = await importSheets(database, [sheet(['H-1;01.04.2011;1000;0,11'])]);
    const asked = await importSheets(database, [sheet(['H-1;01.04.2011;1000;0,11', 'H-1;41000;2000;0,11'])]);
    expect(asked.questions).toHaveLength(1);
    for (const { files } of [sound, asked]) expect(files[0]?.message).not.toContain('held');
  });
});

it('a sheet in windows-1251 is read as the same sheet in UTF-8', async () => {
  const text =
    'Серийный номер;Дата ремонта;Наработка;Осевой зазор до разборки, мм\nТК-1;14.03.2019;9000;0,31\nТК-1;14.03.2021;18000;0,33';
  const [old, utf8] = await Promise.all([
    importSheets(database, [{ name: 'a.csv', bytes: encodeAs(text, 'windows-1251') }]),
    importSheets(database, [{ name: 'a.csv', bytes: encodeAs(text, 'UTF-8') }]),
  ]);
  expect(old.used).toEqual([
    'ТК-1 2019-03-14 9000.0 thrust_play found 0.31',
    'ТК-1 2021-03-14 18000.0 thrust_play found 0.33',
  ]);
  expect(old.used).toEqual(utf8.used);
});
