import type { ChartedSeries, Pattern } from './types';
export function patternOf(_s: ChartedSeries, _side: string, _since: string): Pattern {
  return 'cannot be told';
}
