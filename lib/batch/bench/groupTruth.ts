import { drawsFor } from '../demo/draws';

/** What a made series is drawn from, in the words of the wear model; slopes in mm per 10,000 run hours. */
export interface SeriesTruth {
  readonly intercept_mm: number;
  readonly slope_mm_per_10kh: number;
  readonly sdStartUnit_mm: number;
  readonly sdStartRun_mm: number;
  readonly sdSlopeUnit_mm_per_10kh: number;
  readonly sdSlopeRun_mm_per_10kh: number;
  /** Of one reading; the mean of four clock positions has half of it. */
  readonly sdReading_mm: number;
}

/** What is measured at every overhaul, as found and as left. */
export const measured = [
  { characteristic: 'thrust_play', clocks: [''] },
  { characteristic: 'runout', clocks: [''] },
  { characteristic: 'tip_compressor', clocks: ['12', '3', '6', '9'] },
  { characteristic: 'tip_turbine', clocks: ['12', '3', '6', '9'] },
] as const;
export type Measured = (typeof measured)[number]['characteristic'];

/** Readings of one overhaul: two characteristics with one reading, two with four, each as found and as left. */
export const readingsPerOverhaul = 20;

/** Start, slope, then the six spreads of a group of middling wear; invented. */
const middling: Readonly<
  Record<Measured, readonly [number, number, number, number, number, number, number]>
> = {
  thrust_play: [0.25, 0.045, 0.012, 0.009, 0.009, 0.006, 0.008],
  runout: [0.03, 0.008, 0.002, 0.0015, 0.002, 0.001, 0.002],
  tip_compressor: [0.6, 0.07, 0.025, 0.015, 0.014, 0.01, 0.02],
  tip_turbine: [0.75, 0.11, 0.03, 0.02, 0.02, 0.014, 0.024],
};

/** The truth of every characteristic of a group: groups differ in their rates and starts, not in their spreads. */
export function groupTruth(group: number): Readonly<Record<Measured, SeriesTruth>> {
  const draws = drawsFor(`bench group ${group}`);
  const entries = measured.map(({ characteristic }) => {
    const [start, slope, startUnit, startRun, slopeUnit, slopeRun, reading] = middling[characteristic];
    const truth: SeriesTruth = {
      intercept_mm: start * (0.9 + 0.2 * draws.uniform()),
      slope_mm_per_10kh: slope * (0.7 + 0.6 * draws.uniform()),
      sdStartUnit_mm: startUnit,
      sdStartRun_mm: startRun,
      sdSlopeUnit_mm_per_10kh: slopeUnit,
      sdSlopeRun_mm_per_10kh: slopeRun,
      sdReading_mm: reading,
    };
    return [characteristic, truth] as const;
  });
  return Object.fromEntries(entries) as Record<Measured, SeriesTruth>;
}
