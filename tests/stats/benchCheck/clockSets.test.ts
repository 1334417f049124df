import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import {
  clockForecast,
  clockNoise,
  type FourClock,
  type KnownSet,
} from '../../../lib/stats/benchCheck/clockForecast';
import { clockSetDoubt } from '../../../lib/stats/benchCheck/clockSetDoubt';
import { setSeries } from '../../../lib/stats/benchCheck/setSeries';

const noise = 0.012;
const departures = [0.06, 0.02, -0.06, -0.02] as const;

/** Units of four runs of two sets each, about the same departures but for what belongs to unit and run. */
function madeSets(seed: number, units: number, sdUnit: number, sdRun: number): readonly KnownSet[] {
  const { normal } = seededDraws(seed);
  return Array.from({ length: units }, (_, unit) => {
    const ofUnit = departures.map((one) => one + sdUnit * normal());
    return Array.from({ length: 4 }, (__, run) => {
      const ofRun = ofUnit.map((one) => one + sdRun * normal());
      return [0, 1].map((set): KnownSet => {
        const level = 0.8 + 0.05 * set;
        return {
          unit: `U${unit}`,
          run: `U${unit} run ${run}`,
          readings_mm: ofRun.map((one) => level + one + noise * normal()) as unknown as FourClock,
        };
      });
    }).flat();
  }).flat();
}

describe('what is expected of clock positions', () => {
  it('the noise of one reading follows from sets of one run, whatever units and runs do', () => {
    const found = clockNoise(madeSets(1, 200, 0.03, 0.02)) ?? 0;
    // 1.4826 MAD of 3,200 differences: standard error about 2 %.
    expect(found / noise).toBeGreaterThan(0.93);
    expect(found / noise).toBeLessThan(1.07);
    expect(clockNoise(madeSets(1, 1, 0, 0).slice(0, 3))).toBeNull();
  });

  it('a run’s own sets count first, then the unit’s runs, then the group; each as uncertain as it is', () => {
    const sets = madeSets(2, 100, 0.03, 0.01);
    const ofRun = clockForecast(sets, 'U0', 'U0 run 3');
    const ofUnit = clockForecast(sets, 'U0', null);
    const ofGroup = clockForecast(sets, 'nobody', null);
    expect([ofRun?.from, ofUnit?.from, ofGroup?.from]).toEqual(['run', 'unit', 'group']);
    const [run = 0, unit = 0, group = 0] = [ofRun?.sd_mm, ofUnit?.sd_mm, ofGroup?.sd_mm];
    // Two sets of the run: noise x sqrt(1 + 1/2).
    expect(run / (noise * Math.sqrt(1.5))).toBeCloseTo(1, 0);
    expect(unit).toBeGreaterThan(noise);
    expect(group / Math.hypot(0.03, 0.01, noise)).toBeGreaterThan(0.85);
    expect(group / Math.hypot(0.03, 0.01, noise)).toBeLessThan(1.15);
    ofGroup?.departures_mm.forEach((one, p) => {
      expect(Math.abs(one - (departures[p] ?? 0))).toBeLessThan(0.015);
    });
    // Departures are about the mean of the four.
    expect(Math.abs((ofRun?.departures_mm ?? []).reduce((sum, one) => sum + one, 0))).toBeLessThan(0.02);
  });
});

describe('a set that does not fit', () => {
  const forecast = { departures_mm: departures, sd_mm: noise, from: 'run' } as const;
  const right = departures.map((one) => 0.85 + one);

  it('names two exchanged positions, a single wrong one with what the others say, and nothing of a right one', () => {
    expect(clockSetDoubt(right, forecast)).toBeNull();
    expect(clockSetDoubt([0.79, 0.87, 0.91, 0.83], forecast)).toEqual({
      kind: 'exchanged',
      positions: [0, 2],
    });
    const wrong = clockSetDoubt([0.91, 0.87, 0.79, 0.93], forecast);
    expect(wrong).toMatchObject({ kind: 'position', position: 3 });
    expect(wrong?.kind === 'position' ? wrong.expected_mm : 0).toBeCloseTo(0.83, 9);
    expect(clockSetDoubt([0.91, null, 0.79, 0.93], forecast)).toMatchObject({ kind: 'position' });
    expect(clockSetDoubt([0.91, null, 0.59, null], forecast)).toBeNull();
  });

  it('right sets are doubted three times in a thousand, as a score beyond 3 is', () => {
    const { normal } = seededDraws(7);
    let doubted = 0;
    const sets = 20_000;
    for (let set = 0; set < sets; set++)
      if (
        clockSetDoubt(
          right.map((one) => one + noise * normal()),
          forecast,
        ) !== null
      )
        doubted += 1;
    // Expected 54, standard deviation 7.3.
    expect(doubted).toBeGreaterThan(30);
    expect(doubted).toBeLessThan(78);
  });
});

describe('the series of a set', () => {
  const plain = (value: number) => ({ lower_mm: value, upper_mm: value });
  const set = [0.91, 0.87, 0.79, 0.83].map(plain);

  it('largest, smallest, mean and offset are those of the records; a missing position follows without ovality', () => {
    expect(setSeries(set, 'largest')).toEqual(plain(0.91));
    expect(setSeries(set, 'smallest')).toEqual(plain(0.79));
    expect(setSeries(set, 'mean')?.lower_mm).toBeCloseTo(0.85, 12);
    expect(setSeries(set, 'offset')?.lower_mm).toBeCloseTo(Math.hypot(0.02, 0.06), 12);
    // 0.87 + 0.83 - 0.79 = 0.91 at 12 o'clock.
    const three = [null, ...set.slice(1)];
    expect(setSeries(three, 'largest')?.lower_mm).toBeCloseTo(0.91, 12);
    expect(setSeries([null, null, ...set.slice(2)], 'mean')).toBeNull();
    expect(setSeries([null, null, null, null], 'largest')).toBeNull();
  });

  it('ends of intervals go along: the largest has none above where the largest feeler still goes', () => {
    const open = [{ lower_mm: 0.9, upper_mm: null }, ...set.slice(1)];
    expect(setSeries(open, 'largest')).toEqual({ lower_mm: 0.9, upper_mm: null });
    expect(setSeries(open, 'smallest')).toEqual(plain(0.79));
    const feeler = [{ lower_mm: 0.85, upper_mm: 0.9 }, ...set.slice(1)];
    expect(setSeries(feeler, 'largest')).toEqual({ lower_mm: 0.87, upper_mm: 0.9 });
  });
});
