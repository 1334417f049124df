import { afterAll, beforeAll, expect, test } from 'vitest';
import { FleetAnswers } from '../../lib/analysis/engine/FleetAnswers';
import { openAnalysis } from '../../lib/analysis/openAnalysis';
import { fitCheckSentences, fitChecks } from '../../lib/stats/wear/fitChecks';
import { fitWear } from '../../lib/stats/wear/fitWear';
import { integrateWear } from '../../lib/stats/wear/integrateWear';
import type { WearReading } from '../../lib/stats/wear/types';
import { wearStatistics } from '../../lib/stats/wear/wearStatistics';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { inRunOrder } from '../stats/wear/inRunOrder';
import { filesOf } from '../support/withRecords';

let database: Awaited<ReturnType<typeof openNodeDatabase>>;
let answers: FleetAnswers;

beforeAll(async () => {
  database = await openNodeDatabase();
  const settings = { asOf: null, groupBy: 'frame' } as const;
  const connector = await database.connect();
  answers = new FleetAnswers(
    await openAnalysis(connector, filesOf('data/demo'), 'demo', settings, async () => {}),
    async () => {},
  );
});

afterAll(() => database.close());

test.each([
  ['Lark', 'thrust_play'],
  ['Heron', 'tip_turbine_largest'],
])('says of %s, %s what the single readings say', async (group, series) => {
  const rows = await answers.analysis.connector.query(
    `SELECT r.unit, CAST(r.run AS VARCHAR) AS run, r.run_hours / 10000 AS x, CAST(r.value_mm AS DOUBLE) AS y, CAST(r.interval_variance AS DOUBLE) AS variance
      FROM run_readings r JOIN units u USING (unit) WHERE u.frame = $1 AND r.series = $2`,
    [group, series],
  );
  const noise = answers.analysis.fleet.fits.find((fit) => fit.group === group && fit.series === series);
  const squared = (noise?.sdNoise_mm ?? 0) ** 2;
  const readings = rows.map(
    ({ variance, ...row }) =>
      ({ ...row, weight: variance === 0 ? 1 : squared / (squared + Number(variance)) }) as WearReading,
  );
  const statistics = wearStatistics(readings);
  const checks = fitChecks(
    statistics,
    fitWear(statistics),
    integrateWear(statistics),
    inRunOrder(statistics, readings),
  );
  expect(await answers.fitChecks(group, series)).toEqual(fitCheckSentences(checks));
});

test('says nothing of a group that has no fit', async () => {
  expect(await answers.fitChecks('Lark', 'not a series')).toEqual([]);
});
