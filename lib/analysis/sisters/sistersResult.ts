import type { Analysis } from '../openAnalysis';
import { sisterGroups } from './sisterGroups';
import type { SistersResult } from './types';

/** Every unit against its sisters, for the analysis' way of putting units together. */
export function sistersResult({ fleet, fits, groupBy }: Analysis): SistersResult {
  const { asOf, source } = fleet;
  return { asOf, source, groupBy, groups: sisterGroups(fits.values()) };
}
