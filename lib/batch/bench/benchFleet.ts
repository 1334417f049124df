import { type Draws, drawsFor } from '../demo/draws';

/** One reading of the bench fleet, as both forms of its files write it. */
export interface BenchReading {
  readonly overhaul: string;
  readonly unit: string;
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly unitHours: number;
  readonly characteristic: 'thrust_play' | 'runout' | 'tip_compressor' | 'tip_turbine';
  readonly stage: 'found' | 'left';
  readonly clock: '' | '12' | '3' | '6' | '9';
  readonly value_mm: number;
}

/** Readings of one overhaul: two characteristics with one reading, two with four, each as found and as left. */
export const readingsPerOverhaul = 20;
const overhaulsPerUnit = 10;
const day_ms = 86_400_000;

const measured = [
  { characteristic: 'thrust_play', clocks: [''], new_mm: 0.25, perTenThousandHours_mm: 0.06 },
  { characteristic: 'runout', clocks: [''], new_mm: 0.02, perTenThousandHours_mm: 0.01 },
  {
    characteristic: 'tip_compressor',
    clocks: ['12', '3', '6', '9'],
    new_mm: 0.6,
    perTenThousandHours_mm: 0.08,
  },
  {
    characteristic: 'tip_turbine',
    clocks: ['12', '3', '6', '9'],
    new_mm: 0.75,
    perTenThousandHours_mm: 0.12,
  },
] as const;

/**
 * Readings of a fleet as large as wanted, one after another, the same every time: units of ten overhauls, wear in
 * proportion to the hours since the last one, a scatter of 4 % of the size when new.
 */
export function* benchFleet(readings: number): Generator<BenchReading> {
  let given = 0;
  for (let unit = 0; given < readings; unit++) {
    for (const reading of unitReadings(unit, drawsFor(`bench unit ${unit}`))) {
      if (given++ >= readings) return;
      yield reading;
    }
  }
}

function* unitReadings(number: number, draws: Draws): Generator<BenchReading> {
  const unit = `T-${10_000 + number}`;
  let day_ms_since1970 = Date.UTC(1995, 0, 1) + Math.floor(draws.uniform() * 2500) * day_ms;
  let unitHours = 0;
  for (let place = 0; place < overhaulsPerUnit; place++) {
    const runHours = place === 0 ? 0 : 4000 + Math.floor(draws.uniform() * 9000);
    unitHours += runHours;
    day_ms_since1970 += Math.ceil(runHours / 18) * day_ms;
    const opening = {
      overhaul: `B${number * overhaulsPerUnit + place + 1}`,
      unit,
      date: new Date(day_ms_since1970).toISOString().slice(0, 10),
      unitHours,
    };
    for (const { characteristic, clocks, new_mm, perTenThousandHours_mm } of measured) {
      for (const stage of ['found', 'left'] as const) {
        const wear_mm = stage === 'left' ? 0 : (perTenThousandHours_mm * runHours) / 10_000;
        for (const clock of clocks) {
          const value_mm = Math.max(new_mm / 2, new_mm + wear_mm + draws.normal(0, new_mm / 25));
          yield { ...opening, characteristic, stage, clock, value_mm };
        }
      }
    }
  }
}
