import { type Conformity, conformity, type Range, type ReadEnds } from '../../stats/benchCheck/conformity';
import { type SetSeries, setSeries, setSpread } from '../../stats/benchCheck/setSeries';
import { boxName, type Stage } from './benchEntry';
import { clocks, clocksOf, stages } from './boxes';
import type { TypedReadings } from './checkReadings';
import type { CheckBasis, SeriesCheck, SeriesLimit } from './types';

/** What a series must keep to. */
export interface SeriesBounds {
  readonly series: string;
  readonly limits: readonly SeriesLimit[];
  readonly assembly: Range | null;
}

/**
 * Typed readings against limits (both stages) and assembly ranges (as left), with the gauge's uncertainty as guard band; where it is
 * not known there is none. As long as clock positions are missing only what they cannot change is said: 'not within'.
 */
export function seriesChecks(
  basis: CheckBasis,
  bounds: readonly SeriesBounds[],
  typed: TypedReadings,
): readonly SeriesCheck[] {
  return stages.flatMap((stage) =>
    bounds.flatMap((one) => {
      const read = seriesOf(basis, stage, one.series, typed);
      return read === null ? [] : [checkOf(basis, stage, one, read)];
    }),
  );
}

interface SeriesRead {
  readonly ends: ReadEnds;
  readonly isWaiting: boolean;
  readonly spread: number;
}

function seriesOf(basis: CheckBasis, stage: Stage, series: string, typed: TypedReadings): SeriesRead | null {
  const readings = clocksOf(basis).map((clock) => {
    const entry = typed.get(boxName(basis.characteristic, stage, clock));
    return entry?.kind === 'read' ? entry.reading : null;
  });
  if (basis.shape === 'single') {
    const [ends = null] = readings;
    return ends === null ? null : { ends, isWaiting: false, spread: 1 };
  }
  const kind = series.slice(basis.characteristic.length + 1) as SetSeries;
  const ends = kind in setSpread ? setSeries(readings, kind) : null;
  if (ends === null) return null;
  const isWaiting = readings.filter((one) => one !== null).length < clocks.length;
  return { ends, isWaiting, spread: setSpread[kind] };
}

function checkOf(
  { gaugeSd_mm, neverNegative }: CheckBasis,
  stage: Stage,
  { series, limits, assembly }: SeriesBounds,
  { ends, isWaiting, spread }: SeriesRead,
): SeriesCheck {
  const uncertainty = (gaugeSd_mm ?? 0) * spread;
  // What can never be below zero keeps to a lower end of zero by itself.
  const bounded = ({ lower_mm, upper_mm }: Range): Range => ({
    lower_mm: neverNegative && lower_mm !== null && lower_mm <= 0 ? null : lower_mm,
    upper_mm,
  });
  const told = (range: Range): Conformity => conformity(ends, bounded(range), uncertainty);
  return {
    series,
    stage,
    value_mm: ends.upper_mm === null ? ends.lower_mm : (ends.lower_mm + ends.upper_mm) / 2,
    isWaiting,
    gaugeSd_mm: gaugeSd_mm === null ? null : uncertainty,
    limits: limits.map((limit) => ({
      ...limit,
      conformity: told(
        limit.kind === 'upper'
          ? { lower_mm: null, upper_mm: limit.limit_mm }
          : { lower_mm: limit.limit_mm, upper_mm: null },
      ),
    })),
    assembly: stage === 'left' && assembly !== null ? { ...assembly, conformity: told(assembly) } : null,
  };
}
