import { group, mean, sum } from 'd3-array';
import { expect, it } from 'vitest';
import { createRunSumsSql, runSumsTable, seriesOfRunSumsSql } from '../../lib/store/sql/runSums';
import { filesOf, withRecords } from '../support/withRecords';

const days = ['2026-10-21', '2022-06-30'];

it.each(days)('the sums of every run up to %s are those of its single readings', (day) =>
  withRecords(filesOf('data/demo'), async (connector) => {
    await connector.run(createRunSumsSql(day));
    const sums = await connector.query(
      `SELECT r.* EXCLUDE (series, unit_id, run), r.series::VARCHAR AS series, u.unit, r.run::INTEGER AS run FROM ${runSumsTable(day)} r JOIN units u ON u.id = r.unit_id`,
    );
    const readings = await connector.query(
      `SELECT series::VARCHAR AS series, unit, run::INTEGER AS run, CAST(run_hours / 10000 AS DOUBLE) AS x, CAST(value_mm AS DOUBLE) AS y,
        CAST(interval_variance AS DOUBLE) AS variance FROM run_readings WHERE date <= '${day}'::DATE`,
    );
    const key = (row: (typeof readings)[number]) => `${row.series} ${row.unit} ${row.run}`;
    const byRun = group(readings, key);
    expect(sums.length).toBeGreaterThan(1000);
    expect(new Set(sums.map(key))).toEqual(new Set(byRun.keys()));
    for (const row of sums) {
      const own = byRun.get(key(row)) ?? [];
      const [xs, ys] = [own.map(({ x }) => Number(x)), own.map(({ y }) => Number(y))];
      const [mx, my] = [mean(xs) as number, mean(ys) as number];
      const product = (a: readonly number[], b: readonly number[], ma: number, mb: number) =>
        sum(a, (value, i) => (value - ma) * ((b[i] as number) - mb));
      expect(row.count).toBe(own.length);
      expect(row.weighted).toBe(own.some(({ variance }) => Number(variance) > 0) ? 1 : 0);
      const wanted = {
        mean_x: mx,
        mean_y: my,
        min_x: Math.min(...xs),
        max_x: Math.max(...xs),
        sxx_c: product(xs, xs, mx, mx),
        sxy_c: product(xs, ys, mx, my),
        syy_c: product(ys, ys, my, my),
      };
      for (const [name, value] of Object.entries(wanted))
        expect(Math.abs(Number(row[name]) - value), `${key(row)} ${name}`).toBeLessThan(1e-11);
    }
    const series = await connector.query(seriesOfRunSumsSql(day));
    const weighted = new Set(
      readings.filter(({ variance }) => Number(variance) > 0).map((row) => row.series),
    );
    expect(series).toEqual(
      [...new Set(readings.map((row) => row.series))]
        .sort()
        .map((name) => ({ series: name, weighted: weighted.has(name) ? 1 : 0 })),
    );
  }),
);
