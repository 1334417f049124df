import { expect, it } from 'vitest';
import { gaugeRepeatability, unnamedWorkshop } from '../../../lib/analysis/repeatability/gaugeRepeatability';
import { textFile } from '../../support/textFile';
import { withRecords } from '../../support/withRecords';

/** Thrust play as found and as left, um from 0.3 mm, at one overhaul of a unit; fitted parts end its run. */
interface Opening {
  readonly unit: string;
  readonly workshop: string;
  readonly found: string;
  readonly left: string;
  readonly fitted?: string;
}

/** Each unit is delivered with a new bearing, then opened every 10,000 h. */
function files(openings: readonly Opening[]) {
  const visits = new Map<string, number>();
  const overhauls = ['overhaul,unit,date,unit_hours,workshop,kind,fitted'];
  const readings = ['overhaul,characteristic,stage,value,uom,lower,upper'];
  openings.forEach(({ unit, workshop, found, left, fitted = '' }, index) => {
    const visit = (visits.get(unit) ?? 0) + 1;
    visits.set(unit, visit);
    if (visit === 1) {
      overhauls.push(`D-${unit},${unit},2010-01-01,0,,planned,`);
      readings.push(`D-${unit},thrust_play,left,0.25,mm,,`);
    }
    overhauls.push(
      `J-${index},${unit},${2010 + visit}-01-01,${visit * 10_000},${workshop},planned,${fitted}`,
    );
    readings.push(`J-${index},thrust_play,found,${found}`, `J-${index},thrust_play,left,${left}`);
  });
  const units = ['unit,frame', ...[...visits.keys()].map((unit) => `${unit},Lark`)];
  const limits = ['frame,series,limit_kind,limit,reset_by,source', 'Lark,thrust_play,upper,0.6,TB-L,sheet 1'];
  return [
    textFile('units.csv', units.join('\n')),
    textFile('overhauls.csv', overhauls.join('\n')),
    textFile('readings.csv', readings.join('\n')),
    textFile('limits.csv', limits.join('\n')),
  ];
}

const mm = (value: number) => `${value},mm,,`;

it('takes pairs of one state only, by workshop, and pools them by their squares', async () => {
  const openings: Opening[] = [
    { unit: 'A', workshop: 'Dunlin', found: mm(0.3), left: mm(0.31) },
    { unit: 'A', workshop: 'Dunlin', found: mm(0.35), left: mm(0.33) },
    { unit: 'B', workshop: 'Merrow', found: mm(0.32), left: mm(0.36) },
    { unit: 'B', workshop: '', found: mm(0.38), left: mm(0.37) },
    // A new bearing: another state, however close the readings.
    { unit: 'A', workshop: 'Dunlin', found: mm(0.41), left: mm(0.27), fitted: 'TB-L' },
    // Feelers give an interval, which no difference of readings is.
    { unit: 'C', workshop: 'Merrow', found: ',mm,0.30,0.35', left: mm(0.3) },
  ];
  const gauges = await withRecords(files(openings), (connector) =>
    gaugeRepeatability(connector, '2030-01-01'),
  );
  expect(gauges.map(({ series }) => series)).toEqual(['thrust_play']);
  const [{ pairs, pooled, workshops }] = gauges as [(typeof gauges)[number]];
  expect(pairs).toBe(4);
  expect(pooled?.sd_mm).toBeCloseTo(Math.sqrt((0.01 ** 2 + 0.02 ** 2 + 0.04 ** 2 + 0.01 ** 2) / 8), 10);
  const of = (name: string) => workshops.find(({ workshop }) => workshop === name);
  expect(of('Dunlin')).toMatchObject({ pairs: 2 });
  expect(of('Dunlin')?.result?.sd_mm).toBeCloseTo(Math.sqrt((0.01 ** 2 + 0.02 ** 2) / 4), 10);
  // Chi-square quantiles with 2 degrees of freedom are -2 ln(1 - p).
  expect(of('Dunlin')?.result?.lower_mm).toBeCloseTo(
    Math.sqrt((0.01 ** 2 + 0.02 ** 2) / (2 * -2 * Math.log(0.05))),
    10,
  );
  expect(of('Merrow')).toMatchObject({ pairs: 1 });
  expect(of(unnamedWorkshop)?.result?.meanDifference_mm).toBeCloseTo(-0.01, 10);
});

it('later openings than the day asked for are left out; equal readings of every pair give no noise', async () => {
  const openings: Opening[] = [
    { unit: 'A', workshop: 'Dunlin', found: mm(0.3), left: mm(0.3) },
    { unit: 'A', workshop: 'Dunlin', found: mm(0.36), left: mm(0.39) },
  ];
  await withRecords(files(openings), async (connector) => {
    const [early] = await gaugeRepeatability(connector, '2011-06-01');
    expect(early).toEqual({
      series: 'thrust_play',
      pairs: 1,
      pooled: null,
      workshops: [{ workshop: 'Dunlin', pairs: 1, result: null }],
    });
    expect((await gaugeRepeatability(connector, '2010-06-01')).length).toBe(0);
    expect((await gaugeRepeatability(connector, '2030-01-01'))[0]?.pairs).toBe(2);
  });
});
