import type { Frame } from './stations';

export type CharacteristicCode =
  | 'thrust_play'
  | 'runout'
  | 'tip_compressor'
  | 'tip_turbine'
  | 'nut_stand_out';

/**
 * Truth of one characteristic of one frame: reading = (start + unit + run) + (rate + unit + run) x + noise, then rounded.
 * Lengths in mm, x in 10,000 h of run, rates in mm per 10,000 h; every departure is normal with the SD given.
 */
export interface WearTruth {
  readonly start: number;
  readonly rate: number;
  readonly sdStartUnit: number;
  readonly sdStartRun: number;
  readonly sdRateUnit: number;
  readonly sdRateRun: number;
  readonly sdNoise: number;
  /** Readings are written to this step. */
  readonly step: number;
  /** Four clock positions: half the difference 12 to 6 (the rotor lies low), and the spread of the other terms. */
  readonly vertical?: { readonly mean: number; readonly sdUnit: number; readonly sdRun: number };
}

function wear(
  start: number,
  rate: number,
  spread: readonly [number, number, number, number],
  sdNoise: number,
  step = 0.01,
  vertical?: number,
): WearTruth {
  const [sdStartUnit, sdStartRun, sdRateUnit, sdRateRun] = spread;
  return {
    start,
    rate,
    sdStartUnit,
    sdStartRun,
    sdRateUnit,
    sdRateRun,
    sdNoise,
    step,
    ...(vertical === undefined
      ? {}
      : { vertical: { mean: vertical, sdUnit: vertical / 10, sdRun: vertical / 20 } }),
  };
}

export const wearTruths: Readonly<
  Record<
    Frame,
    Readonly<Partial<Record<CharacteristicCode, WearTruth>>> & { readonly thrust_play: WearTruth }
  >
> = {
  Lark: {
    thrust_play: wear(0.155, 0.044, [0.008, 0.006, 0.007, 0.004], 0.009),
    runout: wear(0.013, 0.0012, [0.002, 0.0035, 0.0003, 0.0003], 0.0016, 0.005),
    tip_compressor: wear(0.54, 0.008, [0.018, 0.012, 0.003, 0.003], 0.011, 0.01, 0.05),
    tip_turbine: wear(0.65, 0.07, [0.036, 0.014, 0.014, 0.006], 0.012, 0.01, 0.05),
  },
  Heron: {
    thrust_play: wear(0.235, 0.056, [0.01, 0.008, 0.008, 0.005], 0.011),
    runout: wear(0.018, 0.0015, [0.003, 0.005, 0.0004, 0.0004], 0.002, 0.005),
    tip_compressor: wear(0.69, 0.01, [0.024, 0.015, 0.003, 0.003], 0.013, 0.01, 0.065),
    tip_turbine: wear(0.87, 0.085, [0.046, 0.018, 0.016, 0.007], 0.014, 0.01, 0.07),
  },
  Osprey: {
    thrust_play: wear(0.345, 0.074, [0.014, 0.01, 0.01, 0.006], 0.014),
    runout: wear(0.024, 0.002, [0.004, 0.006, 0.0005, 0.0005], 0.0024, 0.005),
    tip_compressor: wear(0.93, 0.012, [0.03, 0.018, 0.004, 0.004], 0.016, 0.01, 0.085),
    tip_turbine: wear(1.16, 0.1, [0.062, 0.022, 0.02, 0.009], 0.018, 0.01, 0.09),
    nut_stand_out: wear(4.2, 0.004, [0.06, 0.02, 0.002, 0.002], 0.02),
  },
  Kestrel: {
    thrust_play: wear(0.19, 0.05, [0.009, 0.007, 0.008, 0.004], 0.01),
    runout: wear(0.015, 0.0014, [0.0025, 0.004, 0.0004, 0.0004], 0.0018, 0.005),
    tip_compressor: wear(0.6, 0.009, [0.02, 0.013, 0.003, 0.003], 0.012, 0.01, 0.055),
    tip_turbine: wear(0.74, 0.075, [0.04, 0.016, 0.015, 0.007], 0.013, 0.01, 0.06),
  },
};
