import type { FitRow } from '../../lib/analysis/types';
import { formatHours, formatMm, formatRate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { counted } from './counted';

/** Words for the spreads that a fit may find at zero. */
const spreads: Readonly<Record<string, string>> = {
  sdNoise: 'the noise of a reading',
  sdStartRun: 'the spread of start values between runs',
  sdSlopeRun: 'the spread of wear rates between runs',
  sdStartUnit: 'the spread of start values between units',
  sdSlopeUnit: 'the spread of wear rates between units',
};

/** What a reader should know of a group's fit: its data and its spread; or why there is none. */
export function fitSentences(fit: FitRow): readonly string[] {
  const data = `Sister group ${fit.group}: ${counted(fit.readings, 'reading')} in ${counted(fit.runs, 'run')} of ${counted(fit.units, 'unit')}.`;
  if (fit.reason !== null) return [data, `No forecast: ${rewritten(fit.reason)}.`.replace('..', '.')];
  return [
    data,
    fit.slope_mm_per_10kh !== null && `The group's wear rate is ${formatRate(fit.slope_mm_per_10kh, null)}.`,
    fit.sdNoise_mm !== null &&
      `A single reading carries a noise of ${formatMm(fit.sdNoise_mm)} (standard deviation).`,
    fit.observedRunHours !== null &&
      `The longest run observed in the group is ${formatHours(fit.observedRunHours)}: forecasts beyond it are extrapolations.`,
    !fit.converged && 'The fit did not converge: treat its numbers with doubt.',
    fit.boundary.length > 0 &&
      `Too small to be told from zero: ${fit.boundary.map((name) => spreads[name] ?? name).join('; ')}. That is an estimate, not a proof that there is none.`,
  ].filter((sentence) => sentence !== false);
}
