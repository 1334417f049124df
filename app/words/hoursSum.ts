import type { DerivedHours } from '../../lib/analysis/types';
import { formatCount, formatHours } from '../../lib/charts/format';

/**
 * The sum that gives the unit hours of an overhaul, written out: '75 900 + 4 180 = 80 080 h'. Hours when fitted on unit
 * and meter that are the same cancel and are left out.
 */
export function hoursSum(derived: DerivedHours): string {
  const { unitHours, unitHoursAtFit, engineHoursAtFit, engineHours, eventHours } = derived;
  const isOwnMeter = unitHoursAtFit === engineHoursAtFit;
  const terms = isOwnMeter
    ? [...eventHours, engineHours]
    : [unitHoursAtFit, ...eventHours, engineHours, -engineHoursAtFit];
  if (terms.length === 1) return `${formatHours(unitHours)}, as the meter reads`;
  const written = terms.map((term, index) => {
    const sign = term < 0 ? '\u2212 ' : index === 0 ? '' : '+ ';
    return sign + formatCount(Math.abs(term));
  });
  return `${written.join(' ')} = ${formatHours(unitHours)}`;
}
