import { z } from 'zod';
import { clockPositions } from '../../stats/clock/clockPositions';
import { clockUncertainty } from '../../stats/clock/clockUncertainty';
import { queryRows } from '../../store/queryRows';
import { unitClockSetsSql } from '../../store/sql/clockSets';
import { groupKey } from '../groupFits';
import type { Analysis } from '../openAnalysis';
import type { GaugeRepeatability } from '../repeatability/gaugeRepeatability';
import { largestGap } from './largestGap';
import type { ClearanceCircles } from './types';

const amount = z.number().nullable();
const setRow = z.object({
  overhaul: z.string(),
  date: z.string(),
  stage: z.enum(['found', 'left']),
  c12: amount,
  c3: amount,
  c6: amount,
  c9: amount,
});

/**
 * What each set of clock readings of a unit says of the whole circle, with uncertainty.
 *
 * The noise of one reading is twice that of the mean of four, from the fit of the mean; where there is no fit, that of pairs of
 * readings of one state, if there are any.
 */
export async function clearanceCircles(
  { connector, fleet, units, fits, index }: Analysis,
  unit: string,
  characteristic: string,
  repeatabilities: readonly GaugeRepeatability[],
): Promise<ClearanceCircles> {
  const rows = await queryRows(connector, unitClockSetsSql, setRow, [unit, fleet.asOf, characteristic]);
  const now = units.get(unit);
  const mean = `${characteristic}_mean`;
  const fitted = fits.get(groupKey(now?.row.group ?? '', mean))?.fit?.sdNoise_mm ?? 0;
  const paired = repeatabilities.find(({ series }) => series === mean)?.pooled?.sd_mm ?? 0;
  const meanNoise_mm = fitted > 0 ? fitted : paired;
  const noise_mm = meanNoise_mm > 0 ? 2 * meanNoise_mm : null;
  const limitOf = (series: string, kind: 'upper' | 'lower') =>
    (now === undefined ? [] : index.questionsOf(now)).find(
      (question) => question.series === `${characteristic}_${series}` && question.limit?.limit_kind === kind,
    )?.limit?.limit_mm ?? null;
  return {
    characteristic,
    sets: rows.map(({ overhaul, date, stage, ...readings }) => ({
      overhaul,
      date,
      stage,
      readings,
      largestGap_mm: largestGap(readings),
      positions: clockPositions(readings),
      uncertainty: noise_mm === null ? null : clockUncertainty(readings, noise_mm),
    })),
    noise_mm,
    noiseFrom: noise_mm === null ? null : fitted > 0 ? 'fit' : 'pairs',
    largest_mm: limitOf('largest', 'upper'),
    smallest_mm: limitOf('smallest', 'lower'),
  };
}
