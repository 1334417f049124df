import { describe, expect, test } from 'vitest';
import { type Row, truth, usableRows } from './demoTables';

/** One reading of thrust play or runout with what is needed to put it into its run. */
interface Reading {
  readonly unit: string;
  readonly frame: string;
  readonly workshop: string;
  readonly hours: number;
  readonly stage: string;
  readonly bearingFitted: boolean;
  readonly value_mm: number;
}

const toMillimetres: Readonly<Record<string, number>> = { mm: 1, um: 0.001, mil: 0.0254, '0.01mm': 0.01 };

async function readingsOf(characteristic: string): Promise<readonly Reading[]> {
  const { units, derived_unit_hours } = truth();
  const derived = new Map(derived_unit_hours.map((row) => [row.overhaul, row.unit_hours]));
  const frames = new Map(units.map(({ unit, frame }) => [unit, frame]));
  const overhauls = new Map((await usableRows('overhauls.csv')).map((row) => [row.overhaul ?? '', row]));
  const rows = (await usableRows('readings.csv')).filter((row) => row.characteristic === characteristic);
  const readings = rows.map((row: Row) => {
    const overhaul = overhauls.get(row.overhaul ?? '') ?? {};
    const value = row.value === '' ? (Number(row.lower) + Number(row.upper)) / 2 : Number(row.value);
    return {
      unit: overhaul.unit ?? '',
      frame: frames.get(overhaul.unit ?? '') ?? '',
      workshop: overhaul.workshop ?? '',
      hours:
        overhaul.unit_hours === ''
          ? (derived.get(row.overhaul ?? '') ?? Number.NaN)
          : Number(overhaul.unit_hours),
      stage: row.stage ?? '',
      bearingFitted: (overhaul.fitted ?? '').includes('TB-'),
      value_mm: value * (toMillimetres[row.uom ?? ''] ?? Number.NaN),
    };
  });
  return readings.sort(
    (a, b) => a.unit.localeCompare(b.unit) || a.hours - b.hours || a.stage.localeCompare(b.stage),
  );
}

/** Runs of thrust play: a new one for every unit and after every bearing fitted. */
function runsOf(readings: readonly Reading[]): readonly (readonly Reading[])[] {
  const runs: Reading[][] = [];
  let previous: Reading | undefined;
  for (const reading of readings) {
    const resets = reading.bearingFitted && reading.stage === 'left';
    const lost =
      previous?.bearingFitted === true && previous.stage === 'found' && reading.hours !== previous.hours;
    if (previous?.unit !== reading.unit || resets || lost) runs.push([]);
    runs.at(-1)?.push(reading);
    previous = reading;
  }
  return runs;
}

/** Pooled within-run slope, mm per 10,000 h: sum of Sxy over sum of Sxx, both centred within the run. */
function pooledSlope(runs: readonly (readonly Reading[])[]): number {
  let sxx = 0;
  let sxy = 0;
  for (const run of runs) {
    const x = run.map((reading) => reading.hours / 10_000);
    const meanX = mean(x);
    const meanY = mean(run.map((reading) => reading.value_mm));
    run.forEach((reading, index) => {
      const dx = (x[index] ?? 0) - meanX;
      sxx += dx * dx;
      sxy += dx * (reading.value_mm - meanY);
    });
  }
  return sxy / sxx;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

const oddUnit = (code: string) => String(truth().odd.find((odd) => odd.code === code)?.unit);

describe('the truth can be found in the files', () => {
  test.each(['Lark', 'Heron', 'Osprey'])('pooled slope of thrust play of %s', async (frame) => {
    const usual = (await readingsOf('thrust_play')).filter(
      (r) => r.frame === frame && r.unit !== oddUnit('fast_thrust_bearing'),
    );
    const expected = truth().frames[frame]?.thrust_play?.rate ?? Number.NaN;
    // Units differ by an SD of 0.007 to 0.010 about the rate and 14 to 22 of them are pooled: 0.008 is three standard errors.
    expect(Math.abs(pooledSlope(runsOf(usual)) - expected)).toBeLessThan(0.008);
  });

  test.each(['Lark', 'Heron', 'Osprey'])(
    'gauge repeatability of thrust play of %s, from as found and as left of the same state',
    async (frame) => {
      const readings = (await readingsOf('thrust_play')).filter((r) => r.frame === frame && !r.bearingFitted);
      const squares = readings.flatMap((left, index) => {
        const found = readings[index - 1];
        const pair =
          found?.unit === left.unit &&
          found.hours === left.hours &&
          found.stage === 'found' &&
          left.stage === 'left';
        return pair ? [(left.value_mm - found.value_mm) ** 2] : [];
      });
      const own = truth().frames[frame]?.thrust_play;
      // Rounding to 0.01 mm adds step squared / 12 to the variance of the noise.
      const expected = Math.sqrt((own?.sdNoise ?? 0) ** 2 + (own?.step ?? 0) ** 2 / 12);
      const found = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / (2 * squares.length));
      expect(squares.length).toBeGreaterThan(20);
      // The estimate from n pairs has a relative SD of 1 / sqrt(2 n): three of them.
      expect(Math.abs(found / expected - 1)).toBeLessThan(3 / Math.sqrt(2 * squares.length));
    },
  );

  test('the fast thrust bearing opens at least 1.5 times as fast as its sisters', async () => {
    const fast = oddUnit('fast_thrust_bearing');
    const readings = await readingsOf('thrust_play');
    const frame = readings.find((reading) => reading.unit === fast)?.frame;
    const own = pooledSlope(runsOf(readings.filter((reading) => reading.unit === fast)));
    const sisters = pooledSlope(
      runsOf(readings.filter((reading) => reading.frame === frame && reading.unit !== fast)),
    );
    expect(own / sisters).toBeGreaterThan(1.5);
  });

  test('the workshop that closes high does so by the stated shift (Osprey hardly goes there)', async () => {
    const odd = truth().odd.find(({ code }) => code === 'high_workshop');
    const shifts = odd?.shift_mm as Readonly<Record<string, number>>;
    const fitted = (await readingsOf('thrust_play')).filter(
      (reading) => reading.bearingFitted && reading.stage === 'left',
    );
    for (const frame of ['Lark', 'Heron']) {
      const own = fitted
        .filter((r) => r.frame === frame && r.workshop === odd?.workshop)
        .map((r) => r.value_mm);
      const others = fitted
        .filter((r) => r.frame === frame && r.workshop !== odd?.workshop)
        .map((r) => r.value_mm);
      // As-left readings of one frame scatter by about 0.02 mm; the smallest group sets the tolerance.
      const tolerance = 3 * 0.02 * Math.sqrt(1 / own.length + 1 / others.length);
      expect(own.length, frame).toBeGreaterThanOrEqual(4);
      expect(Math.abs(mean(own) - mean(others) - (shifts[frame] ?? 0)), frame).toBeLessThan(tolerance);
    }
  });

  test('the drifting runout rises from its date on, as left too; no other unit rises like it', async () => {
    const left = (await readingsOf('runout')).filter((reading) => reading.stage === 'left');
    const rise = (unit: string) => {
      const values = left.filter((reading) => reading.unit === unit).map((reading) => reading.value_mm);
      return mean(values.slice(-2)) - mean(values.slice(0, 3));
    };
    const drifting = oddUnit('drifting_runout');
    expect(rise(drifting)).toBeGreaterThan(0.012);
    for (const unit of new Set(left.map((reading) => reading.unit))) {
      if (unit !== drifting) expect(rise(unit), unit).toBeLessThan(0.01);
    }
  });

  test('the vanishing runout is high as found once and back as left', async () => {
    const own = (await readingsOf('runout')).filter(
      (reading) => reading.unit === oddUnit('vanishing_runout'),
    );
    const highest = own.reduce((a, b) => (b.value_mm > a.value_mm ? b : a));
    expect(highest.stage).toBe('found');
    const left = own.find((reading) => reading.stage === 'left' && reading.hours === highest.hours);
    expect(highest.value_mm - (left?.value_mm ?? Number.NaN)).toBeGreaterThan(0.02);
  });
});
