import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { circleSentence } from '../../../app/words/circleWords';
import { gaugeSentence } from '../../../app/words/gaugeSentence';
import { findAt } from '../../../app/words/sisterFindings';
import { sistersSentence } from '../../../app/words/sistersSentence';
import { clearanceCircles } from '../../../lib/analysis/circle/clearanceCircles';
import { sistersTable } from '../../../lib/analysis/comparisonTables';
import { type Analysis, openAnalysis } from '../../../lib/analysis/openAnalysis';
import { gaugeRepeatability } from '../../../lib/analysis/repeatability/gaugeRepeatability';
import { sistersResult } from '../../../lib/analysis/sisters/sistersResult';
import type { SistersResult } from '../../../lib/analysis/sisters/types';
import { fastThrustBearing, missingClock, openingTurbineTip } from '../../../lib/batch/demo/oddities';
import type { Frame } from '../../../lib/batch/demo/stations';
import { drawUnit } from '../../../lib/batch/demo/trueRuns';
import { type CharacteristicCode, wearTruths } from '../../../lib/batch/demo/wearTruth';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';

let database: Database;
let analysis: Analysis;
let sisters: SistersResult;

beforeAll(async () => {
  database = await openNodeDatabase();
  const settings = { asOf: null, groupBy: 'frame' } as const;
  const connector = await database.connect();
  analysis = await openAnalysis(connector, filesOf('data/demo'), 'demo', settings, async () => {});
  sisters = sistersResult(analysis);
}, 120_000);
afterAll(() => database.close());

const found = () => sisters.groups.flatMap(({ rows }) => rows).filter(({ q }) => q <= findAt);

/** A unit's rate less its frame's in all of its runs, as the generator made it, mm per 10,000 h. */
function trueDeparture(unit: string, frame: string, series: string): number {
  const code = series.replace(/_(largest|smallest|mean)$/, '') as CharacteristicCode;
  const truth = wearTruths[frame as Frame][code];
  if (truth === undefined) throw new Error(`the generator makes no ${code} of ${frame}`);
  const planted =
    unit === fastThrustBearing.unit && code === 'thrust_play'
      ? truth.rate * (fastThrustBearing.rateFactor - 1)
      : unit === openingTurbineTip.unit && code === 'tip_turbine'
        ? openingTurbineTip.rate_mm_per_10kh
        : 0;
  return drawUnit(code, unit, truth).rate_mm_per_10kh + planted;
}

describe('who wears unlike the others in the demo fleet', () => {
  it('the two units made fast are named first in their series', () => {
    const words = (series: string) =>
      sistersSentence(sisters, series, 'rate', analysis.fleet.characteristics).replaceAll('\u00a0', ' ');
    expect(words('thrust_play')).toMatch(
      /^In thrust play, O-3005 wears 1\.\d\d times as fast as its sisters/,
    );
    for (const series of ['mean', 'largest', 'smallest'])
      expect(words(`tip_turbine_${series}`)).toMatch(/, O-3012 wears 2\.\d\d times as fast as its sisters/);
  });

  it('no unit is named that does not truly wear on that side: at least half a spread between units away', () => {
    expect(found().length).toBeGreaterThan(10);
    for (const { unit, group, series, rate } of found()) {
      const code = series.replace(/_(largest|smallest|mean)$/, '') as CharacteristicCode;
      const spread = wearTruths[group as Frame][code]?.sdRateUnit ?? 0;
      const departure = trueDeparture(unit, group, series) * Math.sign(rate.difference_mm_per_10kh.median);
      expect(`${unit} ${series} ${departure > 0.5 * spread}`).toBe(`${unit} ${series} true`);
    }
  });

  it('no unit is named in series in which sisters hardly differ', () => {
    expect(new Set(found().map(({ series }) => series.replace(/_(largest|smallest|mean)$/, '')))).toEqual(
      new Set(['thrust_play', 'tip_turbine']),
    );
  });

  it('the file holds the numbers of the page', () => {
    const units = sisters.groups.flatMap((one) => one.rows);
    const { header, rows } = sistersTable(units, (row) => units[row]?.q);
    const ofFile = new Map(rows.map((row) => [row.slice(0, 3).join(), row]));
    const ofPage = sisters.groups.flatMap((group) => group.rows);
    expect(ofFile.size).toBe(ofPage.length);
    for (const { unit, group, series, rate, q } of ofPage) {
      const row = ofFile.get([unit, group, series].join()) ?? [];
      const value = (name: string) => row[header.indexOf(name)] as number | null;
      expect(value('q_value')).toBeCloseTo(q, 5);
      expect(value('tail_probability')).toBeCloseTo(rate.tailProbability, 5);
      if (rate.ratio === null) expect(value('rate_ratio')).toBeNull();
      else {
        expect(value('rate_ratio')).toBeCloseTo(rate.ratio.median, 6);
        expect(value('rate_ratio_lower')).toBeCloseTo(rate.ratio.lower80, 6);
        expect(value('rate_ratio_upper')).toBeCloseTo(rate.ratio.upper80, 6);
      }
    }
  });
});

describe('gauge and circle of the demo fleet', () => {
  it('pairs of thrust play give back the noise that was put in, with what rounding adds', async () => {
    const gauges = await gaugeRepeatability(analysis.connector, analysis.fleet.asOf);
    const play = gauges.find(({ series }) => series === 'thrust_play');
    // Noise of the frames and rounding to 0.01 mm, whose variance is step squared / 12.
    const noises = (['Lark', 'Heron', 'Osprey'] as const).map((frame) => {
      const truth = wearTruths[frame].thrust_play;
      return Math.hypot(truth?.sdNoise ?? 0, (truth?.step ?? 0) / Math.sqrt(12));
    });
    expect(play?.pairs).toBeGreaterThan(150);
    expect(play?.pooled?.sd_mm).toBeGreaterThan(Math.min(...noises));
    expect(play?.pooled?.sd_mm).toBeLessThan(Math.max(...noises));
    expect(play?.workshops.map(({ workshop }) => workshop).sort()).toEqual([
      'Dunlin Service',
      'Fulmar Rotor Shop',
      'Kittiwake Yard',
      'Merrow Works',
    ]);
    expect(gaugeSentence('thrust play', play, null)).toContain('nothing reset between');
    expect(gaugeSentence('runout', undefined, '0.002 mm')).toContain('no pairs');
  });

  it('a set of three positions says so; its missing position is empty', async () => {
    const [unit, , characteristic, clock] = missingClock[0] as (typeof missingClock)[number];
    const circles = await clearanceCircles(analysis, unit, characteristic, []);
    const three = circles.sets.filter(({ positions }) => positions?.ovalityAssumedZero);
    expect(three.length).toBeGreaterThan(0);
    for (const set of three) {
      expect(set.readings[`c${clock}` as keyof typeof set.readings]).toBeNull();
      expect(set.uncertainty?.ovality_mm).toBeNull();
      expect(circleSentence(circles, null, set)).toContain('Three positions were read');
    }
  });

  it('the noise of one clock reading is near that put in', async () => {
    const circles = await clearanceCircles(analysis, 'O-3012', 'tip_turbine', []);
    const truth = wearTruths.Osprey.tip_turbine;
    const expected = Math.hypot(truth?.sdNoise ?? 0, (truth?.step ?? 0) / Math.sqrt(12));
    expect(circles.noiseFrom).toBe('fit');
    expect(Math.abs((circles.noise_mm ?? 0) / expected - 1)).toBeLessThan(0.35);
    expect(circles.smallest_mm).toBe(0.8);
    expect(circles.largest_mm).toBe(1.6);
  });
});
