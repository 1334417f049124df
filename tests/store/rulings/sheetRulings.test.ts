import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { textFile } from '../../support/textFile';
import { importRuled, ruling } from './ruled';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

function expectCounts({ files, used }: Awaited<ReturnType<typeof importRuled>>) {
  for (const file of files) {
    expect(file.rowsIn).toBe(file.rowsUsed + file.rowsHeld);
    expect(file.readingsIn).toBe(file.readingsUsed + file.readingsNone + file.readingsHeld);
  }
  expect(files.reduce((sum, file) => sum + file.readingsUsed, 0)).toBe(used.length);
}

describe('a wide sheet with canonical names', () => {
  const sheet = textFile(
    'wide.csv',
    `unit,frame,date,unit_hours,runout_found,runout_left
W-1,Wren,2015-01-01,8000,O.02,0.01
W-1,Wren,2016-13-01,16000,0.03,0.01
W-1,Wren,2017-01-01,2400,0.04,0.02
W-1,Wren,2018-01-01,32000,0.05,n/a`,
  );
  it('takes an edit of a reading and of a date, releases hours, and leaves a cell out', async () => {
    const rulings = [
      ruling('wide.csv:2:runout_found', 'O.02', { edit: '0,02' }),
      ruling('wide.csv:3:date', '2016-13-01', { edit: '2016-12-01' }),
      ruling('wide.csv:4:unit_hours', '2400', 'release'),
      ruling('wide.csv:5:runout_left', 'n/a', 'leave out'),
    ];
    const result = await importRuled(database, [sheet], rulings);
    expect(result.used).toEqual([
      'wide.csv:2 W-1 2015-01-01 8000 runout found 0.02',
      'wide.csv:2 W-1 2015-01-01 8000 runout left 0.01',
      'wide.csv:3 W-1 2016-12-01 16000 runout found 0.03',
      'wide.csv:3 W-1 2016-12-01 16000 runout left 0.01',
      'wide.csv:4 W-1 2017-01-01 2400 runout found 0.04',
      'wide.csv:4 W-1 2017-01-01 2400 runout left 0.02',
      'wide.csv:5 W-1 2018-01-01 32000 runout found 0.05',
    ]);
    expect(result.held).toEqual([
      expect.stringMatching(
        /^wide.csv:5:runout_left \| n\/a \| left out: read on the card \(AB\)\. Held because:/,
      ),
    ]);
    expect(result.notApplied).toEqual([null, null, null, null]);
    expect(result.interpreted).toContain(
      'wide.csv:2:runout_found | O.02 | read as ‘0.02’ in place of ‘O.02’: read on the card (AB)',
    );
    expectCounts(result);
  });

  it('leaves a whole overhaul out, with its readings', async () => {
    const result = await importRuled(
      database,
      [sheet],
      [ruling('wide.csv:4:unit_hours', '2400', 'leave out')],
    );
    expect(result.held).toContainEqual(
      expect.stringMatching(/^wide.csv:4:unit_hours \| 2400 \| left out: read on the card/),
    );
    expect(result.used.some((line) => line.startsWith('wide.csv:4'))).toBe(false);
    expectCounts(result);
  });
});

describe('a workshop’s sheet with one row an overhaul', () => {
  const sheet = textFile(
    'karte.csv',
    `Seriennummer;Datum;Betriebsstunden;Axialspiel vorgefunden (mm);Axialspiel Einbau (mm);Bemerkungen
W-1;03.02.2015;8.250;0,31;0,2l;ohne
W-1;31.02.2016;16.400;0,34;0,21;ohne
W-1;14.03.2017;2.400;0,38;0,22;ohne
W-1;20.04.2018;32.100;0,41;0,23;ohne
W-2;20.04.2018;9.100;0,30;0,19;ohne;zu viel
W-3;21.04.2018;9.300;0,29;0,20;ohne
W-4;22.04.2018;9.500;0,28;0,21;ohne`,
  );
  it('takes edits under its own headers, in either decimal sign, and lines that could not be cut', async () => {
    const before = await importRuled(database, [sheet]);
    expect(before.held.map((line) => line.split(' | ', 2).join(' | '))).toEqual(
      expect.arrayContaining([
        'karte.csv:2:Axialspiel Einbau (mm) | 0,2l',
        'karte.csv:3:Datum | 31.02.2016',
        'karte.csv:4:Betriebsstunden | 2.400',
      ]),
    );
    const result = await importRuled(
      database,
      [sheet],
      [
        ruling('karte.csv:2:Axialspiel Einbau (mm)', '0,2l', { edit: '0.21' }),
        ruling('karte.csv:3:Datum', '31.02.2016', { edit: '28.02.2016' }),
        ruling('karte.csv:4:Betriebsstunden', '2.400', { edit: '24.000' }),
        ruling('karte.csv:6:', 'W-2 | 20.04.2018 | 9.100 | 0,30 | 0,19 | ohne | zu viel', {
          edit: 'W-2 | 20.04.2018 | 9.100 | 0,30 | 0,19 | ohne; zu viel',
        }),
      ],
    );
    expect(result.notApplied).toEqual([null, null, null, null]);
    expect(result.used).toEqual([
      'karte.csv:2 W-1 2015-02-03 8250 thrust_play found 0.31',
      'karte.csv:2 W-1 2015-02-03 8250 thrust_play left 0.21',
      'karte.csv:3 W-1 2016-02-28 16400 thrust_play found 0.34',
      'karte.csv:3 W-1 2016-02-28 16400 thrust_play left 0.21',
      'karte.csv:4 W-1 2017-03-14 24000 thrust_play found 0.38',
      'karte.csv:4 W-1 2017-03-14 24000 thrust_play left 0.22',
      'karte.csv:5 W-1 2018-04-20 32100 thrust_play found 0.41',
      'karte.csv:5 W-1 2018-04-20 32100 thrust_play left 0.23',
      'karte.csv:6 W-2 2018-04-20 9100 thrust_play found 0.3',
      'karte.csv:6 W-2 2018-04-20 9100 thrust_play left 0.19',
      ...['7 W-3 2018-04-21 9300', '8 W-4 2018-04-22 9500'].flatMap((job, index) => [
        `karte.csv:${job} thrust_play found ${index === 0 ? 0.29 : 0.28}`,
        `karte.csv:${job} thrust_play left ${index === 0 ? 0.2 : 0.21}`,
      ]),
    ]);
    expect(result.held).toEqual([]);
    expectCounts(result);
  });

  it('releases hours under its own header, and leaves a line and a cell out', async () => {
    const result = await importRuled(
      database,
      [sheet],
      [
        ruling('karte.csv:4:Betriebsstunden', '2.400', 'release'),
        ruling('karte.csv:3:Datum', '31.02.2016', 'leave out'),
        ruling('karte.csv:6:', 'W-2 | 20.04.2018 | 9.100 | 0,30 | 0,19 | ohne | zu viel', 'leave out'),
        ruling('karte.csv:2:Axialspiel Einbau (mm)', '0,2l', 'leave out'),
      ],
    );
    expect(result.notApplied).toEqual([null, null, null, null]);
    expect(result.used).toContain('karte.csv:4 W-1 2017-03-14 2400 thrust_play found 0.38');
    expect(result.interpreted).toContainEqual(
      expect.stringMatching(
        /^karte.csv:4:Betriebsstunden \| 2\.400 \| used as it stands: read on the card \(AB\)/,
      ),
    );
    const out = result.held.filter((line) => line.includes('left out: read on the card (AB)'));
    expect(out.map((line) => line.split(' | ', 1)[0])).toEqual([
      'karte.csv:2:Axialspiel Einbau (mm)',
      'karte.csv:3:Axialspiel Einbau (mm)',
      'karte.csv:3:Axialspiel vorgefunden (mm)',
      'karte.csv:3:Datum',
      'karte.csv:6:',
    ]);
    expectCounts(result);
  });
});

describe('a workshop’s sheet with one row a reading', () => {
  const sheet = textFile(
    'long.csv',
    `Serial No;Date;Hours;Item;Condition;Reading mm
W-1;2015-02-03;8250;Runout;as found;0.02
W-1;2015-02-03;8250;Runout;as found;0.02
W-1;2015-02-03;8250;Runout;as left;0.0l
W-1;2016-02-03;16250;Runout;as found;0.03
W-1;2016-02-03;16250;Runout;as left;0.01`,
  );
  const repeated = 'W-1 | 2015-02-03 | 8250 | Runout | as found | 0.02';
  it('releases a repeated line as a reading taken twice, edits one and leaves one out', async () => {
    const before = await importRuled(database, [sheet]);
    expect(before.used).toHaveLength(3);
    expect(before.problems.find(({ row }) => row === 3)).toMatchObject({
      column: '',
      raw: repeated,
      releasable: true,
    });
    const result = await importRuled(
      database,
      [sheet],
      [ruling('long.csv:3:', repeated, 'release'), ruling('long.csv:4:Reading mm', '0.0l', { edit: '0.01' })],
    );
    expect(result.used).toEqual([
      'long.csv:2 W-1 2015-02-03 8250 runout found 0.02',
      'long.csv:3 W-1 2015-02-03 8250 runout found 0.02',
      'long.csv:4 W-1 2015-02-03 8250 runout left 0.01',
      'long.csv:5 W-1 2016-02-03 16250 runout found 0.03',
      'long.csv:6 W-1 2016-02-03 16250 runout left 0.01',
    ]);
    expect(result.notApplied).toEqual([null, null]);
    expectCounts(result);
    const out = await importRuled(database, [sheet], [ruling('long.csv:3:', repeated, 'leave out')]);
    expect(out.used).toEqual(before.used);
    expect(out.held.filter((line) => line.startsWith('long.csv:3'))).toEqual([
      `long.csv:3: | ${repeated} | left out: read on the card (AB)`,
    ]);
    expectCounts(out);
  });
});

describe('rulings beside one another', () => {
  const header = 'Serial;Date;Hours;Thrust play as found (mm);Runout as found (mm)';
  const sheet = textFile(
    'twice.csv',
    `${header}
W-1;2015-02-11;2000;0.31;0.02
W-1;2015-03-11;2000;0.31;0.02
W-2;2015-03-11;2000;0.33;0.03`,
  );
  const units = textFile('units.csv', 'unit,frame\nW-1,Wren');

  it('a job dated twice and an unknown unit are used as they stand', async () => {
    const result = await importRuled(
      database,
      [sheet, units],
      [
        ruling('twice.csv:3:overhaul', 'W-1/2015-03-11', 'release'),
        ruling('twice.csv:4:Serial', 'W-2', 'release'),
      ],
    );
    expect(result.used).toHaveLength(6);
    expect(result.held).toEqual([]);
    expectCounts(result);
  });

  it('an overhaul left out leaves its name and its readings to another line', async () => {
    const result = await importRuled(
      database,
      [sheet, units],
      [
        ruling('twice.csv:3:overhaul', 'W-1/2015-03-11', 'leave out'),
        ruling('twice.csv:4:Serial', 'W-2', { edit: 'W-1' }),
      ],
    );
    expect(result.used).toEqual([
      'twice.csv:2 W-1 2015-02-11 2000 runout found 0.02',
      'twice.csv:2 W-1 2015-02-11 2000 thrust_play found 0.31',
      'twice.csv:4 W-1 2015-03-11 2000 runout found 0.03',
      'twice.csv:4 W-1 2015-03-11 2000 thrust_play found 0.33',
    ]);
    expect(result.held).toEqual([
      'twice.csv:3:Runout as found (mm) | 0.02 | left out: read on the card (AB)',
      'twice.csv:3:Thrust play as found (mm) | 0.31 | left out: read on the card (AB)',
      'twice.csv:3:overhaul | W-1/2015-03-11 | left out: read on the card (AB)',
    ]);
    expectCounts(result);
  });

  it('hold for what they were made on only: another file of the same name is not touched', async () => {
    const other = textFile(
      'twice.csv',
      `${header}
W-1;2015-02-11;2000;0.31;0.02
W-1;2016-03-11;4000;0.35;0.04
W-1;2017-03-11;2900;0.33;0.03`,
    );
    const rulings = [
      ruling('twice.csv:2:Thrust play as found (mm)', '0.3l', 'leave out'),
      ruling('twice.csv:3:Runout as found (mm)', '0.O4', { edit: '0.05' }),
      ruling('twice.csv:4:Hours', '290', 'release'),
    ];
    const without = await importRuled(database, [other]);
    const result = await importRuled(database, [other], rulings);
    expect(result.used).toEqual(without.used);
    expect(result.held).toEqual(without.held);
    expect(result.notApplied).toEqual([
      'nothing is held there',
      'the file has ‘0.04’ there, not ‘0.O4’',
      'the file has ‘2900’ there, not ‘290’',
    ]);
  });

  it('a whole line that was cut can be edited, too', async () => {
    const repeated = textFile(
      'again.csv',
      `${header}
W-1;2015-02-11;2000;0.31;0.02
W-1;2015-02-11;2000;0.31;0.02`,
    );
    const raw = 'W-1 | 2015-02-11 | 2000 | 0.31 | 0.02';
    const edit = 'W-1 | 2016-02-11 | 9000 | 0,35 | 0.04';
    const result = await importRuled(database, [repeated], [ruling('again.csv:3:', raw, { edit })]);
    expect(result.used.slice(2)).toEqual([
      'again.csv:3 W-1 2016-02-11 9000 runout found 0.04',
      'again.csv:3 W-1 2016-02-11 9000 thrust_play found 0.35',
    ]);
    expect(result.interpreted).toContain(
      `again.csv:3: | ${raw} | read as ‘${edit}’ in place of ‘${raw}’: read on the card (AB)`,
    );
    expectCounts(result);
  });
});
