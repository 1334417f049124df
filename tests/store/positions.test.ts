import { expect, it } from 'vitest';
import { importFiles } from '../../lib/store/importFiles';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { unitPositions } from '../../lib/store/questions';
import { unitPositionsSql } from '../../lib/store/sql/positions';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
const files = [
  file('units.csv', 'unit,frame\nT-1,R1\nT-2,R1\nT-3,R1\n'),
  file(
    'overhauls.csv',
    'overhaul,unit,date,unit_hours,site,engine,bank\nA,T-1,2020-03-01,0,Harbour,E-1,A\nB,T-1,2021-03-01,8000,,E-1,A\nC,T-2,2020-05-01,0,Island,E-2,\nD,T-3,2020-05-01,0,Island,E-3,\n',
  ),
  file(
    'installations.csv',
    'unit,site,engine,bank,from_date,to_date\nT-3,Island,E-3,,2020-05-01,2020-12-31\n',
  ),
  file(
    'plan.csv',
    'engine,bank,hours_per_year,hours_now,hours_now_date,interval_h\nE-1,A,4000,9000,2021-06-01,8000\nE-1,B,4100,100,2021-06-01,8000\nE-2,,5000,5500,2021-06-01,12000\nE-3,,6000,7000,2021-06-01,12000\n',
  ),
];

it('puts every unit where it was last, beside the plan of that engine and bank; one that was taken off has neither', async () => {
  const database = await openNodeDatabase();
  const connector = await database.connect();
  await importFiles(connector, files, async () => {});
  const positions = await unitPositions(connector, '2021-06-30');
  expect(
    positions.map(({ unit, installed, site, engine, bank, last_hours, hours_per_year }) => [
      ...[unit, installed, site, engine, bank],
      ...[last_hours, hours_per_year],
    ]),
  ).toEqual([
    // The last overhaul does not say the site: the one before it does.
    ['T-1', 1, 'Harbour', 'E-1', 'A', 8000, 4000],
    ['T-2', 1, 'Island', 'E-2', null, 0, 5000],
    ['T-3', 0, null, null, null, 0, null],
  ]);
  const plan = await connector.query(`EXPLAIN ${unitPositionsSql.replaceAll('$1', "'2021-06-30'")}`);
  expect(plan.map((row) => Object.values(row).join(' ')).join(' ')).not.toMatch(
    /NL_JOIN|NESTED_LOOP|CROSS_PRODUCT/,
  );
  await database.close();
});
