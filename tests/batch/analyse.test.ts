import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvParse } from 'd3-dsv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sparesSettings } from '../../app/spares/sparesAddress';
import { usualDriftSettings } from '../../lib/analysis/drift/driftResult';
import { FleetAnswers } from '../../lib/analysis/engine/FleetAnswers';
import { openAnalysis } from '../../lib/analysis/openAnalysis';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { filesOf } from '../support/withRecords';

const folder = mkdtempSync(join(tmpdir(), 'analyse-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

function analyse(...words: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ['--import', 'tsx', 'lib/batch/analyse.ts', ...words],
      (error, stdout, stderr) => {
        resolve({ status: error === null ? 0 : Number(error.code), stdout, stderr });
      },
    );
  });
}

const table = (out: string, name: string) => csvParse(readFileSync(join(folder, out, `${name}.csv`), 'utf8'));

describe('analyse on the demo fleet', () => {
  let ended: Ended;
  beforeAll(async () => {
    ended = await analyse('--data', 'data/demo', '--out', join(folder, 'demo'));
  });

  it('ends with status 0 and a sentence', () => {
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toContain('52 units');
    expect(ended.stdout).toContain('as of 2026-10-21');
  });

  it('writes the columns of the contract, and nothing that is not a finite number or a text', () => {
    expect(table('demo', 'fits').columns).toEqual(
      'group,series,runs,units,readings,intercept_mm,slope_mm_per_10kh,sd_noise_mm,sd_start_mm,sd_slope_unit,sd_slope_run,reml_criterion,boundary,converged'.split(
        ',',
      ),
    );
    expect(table('demo', 'margins').columns).toEqual(
      'unit,group,series,limit_kind,limit_mm,run_hours,level_mm,level_sd_mm,slope_mm_per_10kh,slope_sd,margin_mm,hours_early,hours_median,hours_late,date_early,date_median,date_late,next_overhaul_date,chance_at_next_overhaul,expected_found_lower,expected_found_median,expected_found_upper,capped_by_rated_life,reason'.split(
        ',',
      ),
    );
    expect(table('demo', 'problems').columns).toEqual('file,row,column,raw,reason,action'.split(','));
    expect(table('demo', 'demand').columns).toEqual('part,quarter,mean,p10,p50,p90,p95'.split(','));
    expect(table('demo', 'orders').columns).toEqual('part,quantity,order_by,reason'.split(','));
    expect(table('demo', 'signals').columns).toEqual(
      'unit,series,chart,rule,overhaul,date,statistic,threshold'.split(','),
    );
    expect(table('demo', 'signals').length).toBe(68);
    for (const name of ['fits', 'margins', 'signals', 'demand', 'orders', 'problems']) {
      const text = readFileSync(join(folder, 'demo', `${name}.csv`), 'utf8');
      expect(text).not.toMatch(/\b(NaN|Infinity|undefined|null)\b/);
    }
  });

  it('orders early, median and late, and lets no forecast pass the rated life', () => {
    const life = new Map(
      csvParse(readFileSync('data/demo/units.csv', 'utf8')).map((unit) => [
        unit.unit,
        Number(unit.rated_life_h),
      ]),
    );
    let compared = 0;
    for (const row of table('demo', 'margins')) {
      const hours = [row.hours_early, row.hours_median, row.hours_late]
        .filter((text) => text !== '')
        .map(Number);
      expect([...hours].sort((a, b) => a - b)).toEqual(hours);
      const rated = life.get(row.unit);
      if (rated !== undefined && rated > 0) for (const value of hours) expect(value).toBeLessThan(rated);
      compared += hours.length;
    }
    expect(compared).toBeGreaterThan(500);
  });

  it('gives the signals that the Drift page shows, and the demand and the orders that the Spares page shows with the settings that it starts with', async () => {
    const database = await openNodeDatabase();
    const settings = { asOf: null, groupBy: 'frame' } as const;
    const analysis = await openAnalysis(
      await database.connect(),
      filesOf('data/demo'),
      'demo',
      settings,
      async () => {},
    );
    const answers = new FleetAnswers(analysis, async () => {});
    const page = await answers.spares(sparesSettings(new URLSearchParams()));
    const drift = await answers.drift(usualDriftSettings);
    await database.close();
    const key = (signal: object) => Object.values(signal).join(' | ');
    const drawn = drift.findings
      .flatMap(({ signals }) => signals)
      .map(({ unit, series, chart, rule, overhaul, date, statistic, threshold }) =>
        key({
          unit,
          series,
          chart,
          rule,
          overhaul,
          date,
          statistic: statistic.toFixed(3),
          threshold: threshold.toFixed(3),
        }),
      );
    const signals = table('demo', 'signals');
    expect(signals.length).toBeGreaterThan(50);
    expect(
      signals
        .map(({ statistic, threshold, ...words }) =>
          key({ ...words, statistic: Number(statistic).toFixed(3), threshold: Number(threshold).toFixed(3) }),
        )
        .sort(),
    ).toEqual(drawn.sort());
    const demand = table('demo', 'demand');
    expect(demand.length).toBe(page.demand.length);
    page.demand.forEach((row, k) => {
      const written = demand[k];
      expect([written?.part, written?.quarter]).toEqual([row.part, row.quarter]);
      for (const name of ['mean', 'p10', 'p50', 'p90', 'p95'] as const)
        expect(Number(written?.[name])).toBeCloseTo(row[name], 6);
    });
    expect(
      table('demo', 'orders').map((row) => [row.part, Number(row.quantity), row.order_by, row.reason]),
    ).toEqual(page.orders.map((row) => [row.part, row.quantity, row.orderBy ?? '', row.reason]));
    expect(page.orders.filter(({ quantity }) => quantity > 0).length).toBeGreaterThan(5);
  });

  it('gives the same bytes again', async () => {
    await analyse('--data', 'data/demo', '--out', join(folder, 'again'));
    for (const name of ['fits', 'margins', 'signals', 'demand', 'orders', 'problems']) {
      expect(readFileSync(join(folder, 'again', `${name}.csv`), 'utf8')).toBe(
        readFileSync(join(folder, 'demo', `${name}.csv`), 'utf8'),
      );
    }
  });

  it('uses nothing after the as-of date', async () => {
    const early = await analyse(
      '--data',
      'data/demo',
      '--as-of',
      '2018-06-30',
      '--out',
      join(folder, 'early'),
    );
    expect(early.stdout).toContain('as of 2018-06-30');
    const sum = (out: string) => table(out, 'fits').reduce((total, fit) => total + Number(fit.readings), 0);
    expect(sum('early')).toBeLessThan(sum('demo') / 2);
  });
});

describe('analyse with what it cannot use', () => {
  it.each([
    ['no folder', ['--out', 'x'], '--data is missing'],
    ['a folder that is not there', ['--data', 'no/such', '--out', 'x'], 'cannot be read'],
    ['a day that is none', ['--data', 'data/demo', '--out', 'x', '--as-of', '2026-02-30'], 'YYYY-MM-DD'],
    ['a month that is none', ['--data', 'data/demo', '--out', 'x', '--as-of', '2026-13-45'], 'YYYY-MM-DD'],
    [
      'an unknown group',
      ['--data', 'data/demo', '--out', 'x', '--group', 'colour'],
      '--group requires one of',
    ],
    ['an unknown option', ['--data', 'data/demo', '--out', 'x', '--fast'], '--fast'],
  ])('%s: status 2, a message and the usage', async (_, words, message) => {
    const ended = await analyse(...words);
    expect(ended.status).toBe(2);
    expect(ended.stderr).toContain(message);
    expect(ended.stderr).toContain('Usage:');
    expect(existsSync('x')).toBe(false);
  });

  it('files without a usable reading: status 2, the reason by file, and problems.csv', async () => {
    const data = mkdtempSync(join(folder, 'unusable-'));
    writeFileSync(join(data, 'empty.csv'), '');
    writeFileSync(join(data, 'parts list.csv'), 'Pos,Part\n1,Gasket\n');
    writeFileSync(
      join(data, 'readings.csv'),
      'overhaul,characteristic,stage,value,uom\nX,runout,left,0.02,mm\n',
    );
    const ended = await analyse('--data', data, '--out', join(folder, 'unusable'));
    expect(ended.status).toBe(2);
    expect(ended.stderr).toContain('empty.csv: the file is empty');
    expect(ended.stderr).toContain('parts list.csv: Not an overhaul sheet');
    expect(table('unusable', 'problems').map((row) => [row.file, row.row, row.reason])).toEqual([
      ['readings.csv', '2', 'no overhaul of that name in the files'],
    ]);
  });
});
