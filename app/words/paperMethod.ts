import type { FitRow } from '../../lib/analysis/types';
import { formatCount } from '../../lib/charts/format';
import { counted } from './counted';

/** How a paper's numbers are made, in the fewest sentences, with what its fits rest on. */
export function paperMethod(fits: readonly FitRow[]): readonly string[] {
  const fitted = fits.filter(({ reason }) => reason === null);
  const readings = fitted.reduce((sum, fit) => sum + fit.readings, 0);
  const groups = counted(fits.length, 'sister group and series', 'sister groups and series');
  return [
    `Wear is fitted as a straight line over run hours for each sister group and series: start and rate vary by unit and by run, readings carry noise. ${formatCount(fitted.length)} of ${groups} have a forecast, from ${counted(readings, 'value')} of series.`,
    'Uncertainty is integrated and not plugged in: early, median and late are the dates by which the level has met its limit with a chance of 10, 50 and 90 %, if nothing is renewed.',
    'The chance of a unit joins its series: of each characteristic the largest chance, then 1 − the product of (1 − chance) over the characteristics.',
  ];
}
