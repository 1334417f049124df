import { afterAll, beforeAll, expect, test } from 'vitest';
import { heldRowsCsv } from '../../../lib/records/decisions/heldRowsCsv';
import { readHeldRowsCsv } from '../../../lib/records/decisions/readHeldRowsCsv';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { spreadsheetSave } from '../../support/spreadsheetSave';
import { textFile } from '../../support/textFile';
import { importRuled } from './ruled';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

test('held rows corrected in a spreadsheet with semicolons and decimal commas are used', async () => {
  const files = [
    textFile(
      'karte.csv',
      `Seriennummer;Datum;Betriebsstunden;Axialspiel vorgefunden (mm);Axialspiel Einbau (mm)
W-1;03.02.2015;8.250;0,31;0,2l
W-1;14.03.2017;2.400;0,38;0,22
W-1;20.04.2018;32.100;=0,41;0,23`,
    ),
    textFile(
      'readings.csv',
      'overhaul,characteristic,stage,value,uom\nX-1,runout,left,0.010,mm\nX-1,runout,found,0.0O2,mm',
    ),
    textFile('overhauls.csv', 'overhaul,unit,date,unit_hours\nX-1,W-9,2019-01-01,900'),
  ];
  const before = await importRuled(database, files);
  expect(before.used).toHaveLength(3);
  const csv = heldRowsCsv(before.problems);
  const lineOf = (text: string) => csv.split('\n').findIndex((line) => line.includes(text)) + 1;
  const saved = spreadsheetSave(
    csv,
    {
      [lineOf('0,2l')]: { corrected: '0,21', why: 'on the card' },
      [lineOf('=0,41')]: { corrected: '0,41', why: 'on the card' },
      [lineOf('2.400')]: { ruling: 'release', why: 'new rotor' },
      [lineOf('0.0O2')]: { corrected: '0,002', why: 'on the card' },
    },
    { delimiter: ';', decimalComma: true, encoding: 'latin1' },
  );
  const read = readHeldRowsCsv({ name: 'held-rows.csv', bytes: saved }, 'CD');
  const after = await importRuled(
    database,
    files,
    read?.given.map(({ ruling }) => ruling),
  );
  expect(after.notApplied).toEqual([null, null, null, null]);
  expect(after.used).toEqual([
    'karte.csv:2 W-1 2015-02-03 8250 thrust_play found 0.31',
    'karte.csv:2 W-1 2015-02-03 8250 thrust_play left 0.21',
    'karte.csv:3 W-1 2017-03-14 2400 thrust_play found 0.38',
    'karte.csv:3 W-1 2017-03-14 2400 thrust_play left 0.22',
    'karte.csv:4 W-1 2018-04-20 32100 thrust_play found 0.41',
    'karte.csv:4 W-1 2018-04-20 32100 thrust_play left 0.23',
    'readings.csv:2 W-9 2019-01-01 900 runout left 0.01',
    'readings.csv:3 W-9 2019-01-01 900 runout found 0.002',
  ]);
  expect(after.held).toEqual([]);
  expect(after.interpreted).toContain(
    'karte.csv:2:Axialspiel Einbau (mm) | 0,2l | read as ‘0,21’ in place of ‘0,2l’: on the card (CD)',
  );
});
