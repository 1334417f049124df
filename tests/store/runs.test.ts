import { describe, expect, it } from 'vitest';
import type { Connector } from '../../lib/store/Connector';
import { textFile } from '../support/textFile';
import { withRecords } from '../support/withRecords';

const units = textFile('units.csv', 'unit,frame\nW-1,Wren\nW-2,Wren');
const limits = textFile(
  'limits.csv',
  'frame,series,limit_kind,limit,reset_by\nWren,thrust_play,upper,0.45,TB-W\nWren,runout,upper,0.06,assembly',
);

/** Run number, run hours and value of a unit's readings of one series, in order. */
async function runsOf(connector: Connector, unit: string, series: string): Promise<readonly unknown[][]> {
  const rows = await connector.query(
    `SELECT run::INTEGER AS run, run_hours::DOUBLE AS run_hours, value_mm::DOUBLE AS value_mm FROM run_readings WHERE unit = $1 AND series = $2
     ORDER BY date, unit_hours, stage`,
    [unit, series],
  );
  return rows.map((row) => [row.run, row.run_hours, row.value_mm]);
}

const sheet = (rows: string) =>
  textFile(
    'sheet.csv',
    `unit,date,unit_hours,fitted,thrust_play_found,thrust_play_left,runout_found,runout_left\n${rows.trim()}`,
  );

describe('runs', () => {
  it('go on over overhauls until the part is fitted, and end at every assembly where that is the rule', async () => {
    const rows = sheet(`
W-1,2015-01-01,0,,,0.20,,0.01
W-1,2017-01-01,12000,GK-W,0.27,0.27,0.02,0.01
W-1,2019-01-01,25000,TB-W;GK-W,0.36,0.21,0.03,0.01
W-1,2021-01-01,37000, gk-w ; TB-W ,0.29,0.22,0.02,0.01`);
    await withRecords([units, limits, rows], async (connector) => {
      expect(await runsOf(connector, 'W-1', 'thrust_play')).toEqual([
        [0, 0, 0.2],
        [0, 12000, 0.27],
        [0, 12000, 0.27],
        [0, 25000, 0.36],
        [1, 0, 0.21],
        [1, 12000, 0.29],
        [2, 0, 0.22],
      ]);
      expect(await runsOf(connector, 'W-1', 'runout')).toEqual([
        [1, 0, 0.01],
        [1, 12000, 0.02],
        [2, 0, 0.01],
        [2, 13000, 0.03],
        [3, 0, 0.01],
        [3, 12000, 0.02],
        [4, 0, 0.01],
      ]);
    });
  });

  it('count their hours from the reset even where the as-left reading is missing', async () => {
    const rows = sheet(`
W-1,2015-01-01,0,,,0.20,,0.01
W-1,2017-01-01,12000,TB-W,0.30,,0.02,
W-1,2019-01-01,25000,,0.29,0.29,0.03,0.01`);
    await withRecords([units, limits, rows], async (connector) => {
      expect(await runsOf(connector, 'W-1', 'thrust_play')).toEqual([
        [0, 0, 0.2],
        [0, 12000, 0.3],
        [1, 13000, 0.29],
        [1, 13000, 0.29],
      ]);
    });
  });

  it('draw no line across a held overhaul: what follows waits for it', async () => {
    const rows = sheet(`
W-1,2015-01-01,0,,,0.20,,0.01
W-1,2017-02-30,12000,TB-W,0.30,0.20,0.02,0.01
W-1,2019-01-01,25000,,0.29,0.29,0.03,0.01
W-1,2021-01-01,37000,TB-W,0.38,0.21,0.02,0.01`);
    await withRecords([units, limits, rows], async (connector, imported) => {
      expect(await runsOf(connector, 'W-1', 'thrust_play')).toEqual([
        [0, 0, 0.2],
        [2, 0, 0.21],
      ]);
      expect(await runsOf(connector, 'W-1', 'runout')).toEqual([
        [1, 0, 0.01],
        [3, 0, 0.01],
        [3, 12000, 0.02],
        [4, 0, 0.01],
      ]);
      const waiting = imported.problems.filter((problem) => problem.reason.includes('settle that row first'));
      expect(waiting.map((problem) => [problem.row, problem.column, problem.raw])).toEqual([
        [4, 'runout_found', '0.03'],
        [4, 'thrust_play_found', '0.29'],
        [4, 'thrust_play_left', '0.29'],
        [5, 'thrust_play_found', '0.38'],
      ]);
    });
  });

  it('need a start: a first opening at 61,200 h tells nothing of the assembly before it', async () => {
    const rows = sheet('W-1,2014-01-01,61200,TB-W,0.30,0.20,0.02,0.01');
    await withRecords([units, limits, rows], async (connector, imported) => {
      expect(await runsOf(connector, 'W-1', 'runout')).toEqual([[1, 0, 0.01]]);
      expect(imported.problems.find((problem) => problem.column === 'runout_found')?.reason).toContain(
        'first overhaul of the unit in the files is at 61200 h',
      );
      expect(imported.problems.find((problem) => problem.action === 'interpreted')?.reason).toContain(
        'taken to start at 0 h',
      );
    });
  });

  it('follow a unit that moves to another engine: its hours are its own', async () => {
    const moved = textFile(
      'overhauls.csv',
      `overhaul,unit,date,unit_hours,engine_hours,engine
A,W-1,2015-01-01,0,100,E14
B,W-1,2017-06-11,18880,80080,E14
C,W-1,2019-03-10,,88010,E09`,
    );
    const installations = textFile(
      'installations.csv',
      `unit,engine,from_date,to_date,engine_hours_at_fit,unit_hours_at_fit
W-1,E14,2015-01-01,2017-06-11,61200,0
W-1,E09,2017-08-15,,78020,18880`,
    );
    const readings = textFile(
      'readings.csv',
      `overhaul,characteristic,stage,value,uom
B,runout,left,10,um
C,runout,found,0.8,mil`,
    );
    await withRecords([units, limits, moved, installations, readings], async (connector, imported) => {
      const [left, found] = await runsOf(connector, 'W-1', 'runout');
      expect(left).toEqual([2, 0, 0.01]);
      expect(found?.slice(0, 2)).toEqual([2, 9990]);
      expect(found?.[2]).toBeCloseTo(0.02032, 12);
      expect(imported.problems.map((problem) => problem.reason)).toContain(
        'unit hours 28870 derived from the meter of engine E09',
      );
    });
  });
});

describe('unit hours from an engine meter', () => {
  const installations = textFile(
    'installations.csv',
    `unit,engine,from_date,to_date,engine_hours_at_fit,unit_hours_at_fit
W-1,E14,2014-05-04,,61200,61200
W-2,E15,2019-02-02,,,`,
  );
  const overhauls = textFile(
    'overhauls.csv',
    `overhaul,unit,date,engine_hours,engine
A,W-1,2015-11-20,71950,E14
B,W-1,2017-06-11,4180,E14
C,W-1,2018-06-11,12000,E14
D,W-2,2020-01-01,15020,E15
E,W-1,2013-01-01,50000,E14`,
  );
  const events = textFile(
    'events.csv',
    'date,engine,kind,value\n2016-08-01,E14,meter_replaced,75900\n2018-01-01,E14,meter_corrected,-300',
  );

  it('carry replaced and corrected meters on, and are held where they cannot be derived', async () => {
    await withRecords([units, installations, overhauls, events], async (connector, imported) => {
      const rows = await connector.query(
        'SELECT overhaul, unit_hours::DOUBLE AS unit_hours FROM overhauls ORDER BY overhaul',
      );
      expect(rows.map((row) => [row.overhaul, row.unit_hours])).toEqual([
        ['A', 71_950],
        ['B', 75_900 + 4_180],
        ['C', 75_900 + 12_000 - 300],
      ]);
      const held = imported.problems.filter((problem) => problem.action === 'held');
      expect(held.map((problem) => [problem.row, problem.raw])).toEqual([
        [5, '15020'],
        [6, '50000'],
      ]);
    });
  });
});
