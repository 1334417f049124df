import type { TextRow } from './csvText';
import type { Frame } from './stations';

export const limitColumns = [
  'frame',
  'series',
  'limit_kind',
  'limit',
  'assembly_lower',
  'assembly_upper',
  'reset_by',
  'source',
  'valid_from',
];

/** Limit, lowest and highest value as left, all in mm. */
type Range = readonly [limit: number, lower: number, upper: number];

interface FrameLimits {
  readonly thrust_play: Range;
  readonly runout: Range;
  readonly tip_compressor_smallest: Range;
  readonly tip_compressor_largest: Range;
  readonly tip_turbine_smallest: Range;
  readonly tip_turbine_largest: Range;
}

/** Invented limits; no maker's table was used. */
export const limits: Readonly<Record<Frame, FrameLimits>> = {
  Lark: {
    thrust_play: [0.3, 0.12, 0.2],
    runout: [0.04, 0, 0.025],
    tip_compressor_smallest: [0.35, 0.42, 0.58],
    tip_compressor_largest: [0.75, 0.5, 0.68],
    tip_turbine_smallest: [0.45, 0.5, 0.7],
    tip_turbine_largest: [0.9, 0.6, 0.8],
  },
  Heron: {
    thrust_play: [0.45, 0.18, 0.3],
    runout: [0.06, 0, 0.035],
    tip_compressor_smallest: [0.45, 0.53, 0.72],
    tip_compressor_largest: [0.95, 0.65, 0.86],
    tip_turbine_smallest: [0.6, 0.68, 0.92],
    tip_turbine_largest: [1.2, 0.82, 1.06],
  },
  Osprey: {
    thrust_play: [0.65, 0.28, 0.42],
    runout: [0.08, 0, 0.045],
    tip_compressor_smallest: [0.6, 0.72, 0.97],
    tip_compressor_largest: [1.3, 0.88, 1.15],
    tip_turbine_smallest: [0.8, 0.92, 1.2],
    tip_turbine_largest: [1.6, 1.08, 1.4],
  },
  Kestrel: {
    thrust_play: [0.36, 0.14, 0.24],
    runout: [0.05, 0, 0.03],
    tip_compressor_smallest: [0.4, 0.47, 0.64],
    tip_compressor_largest: [0.82, 0.57, 0.76],
    tip_turbine_smallest: [0.5, 0.56, 0.8],
    tip_turbine_largest: [1.05, 0.7, 0.94],
  },
};

const source: Readonly<Record<Frame, string>> = {
  Lark: 'Demo table L-1 (invented)',
  Heron: 'Demo table H-1 (invented)',
  Osprey: 'Demo table O-1 (invented)',
  Kestrel: 'Demo table K-1 (invented)',
};

/** Code of the thrust bearing of a frame, the part that resets thrust play. */
export function thrustBearingOf(frame: Frame): string {
  return `TB-${frame.slice(0, 1)}`;
}

/** Rows of limits.csv of a frame. Thrust play runs on until the thrust bearing is fitted; every assembly sets the rest anew. */
export function limitRows(frame: Frame): readonly TextRow[] {
  return (Object.entries(limits[frame]) as [keyof FrameLimits, Range][]).map(
    ([series, [limit, lower, upper]]) => ({
      frame,
      series,
      limit_kind: series.endsWith('_smallest') ? 'lower' : 'upper',
      limit: limit.toFixed(2),
      assembly_lower: lower.toFixed(2),
      assembly_upper: upper.toFixed(series === 'runout' ? 3 : 2),
      reset_by: series === 'thrust_play' ? thrustBearingOf(frame) : 'assembly',
      source: source[frame],
      valid_from: '2014-01-01',
    }),
  );
}
