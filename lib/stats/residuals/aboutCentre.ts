import type { WearStatistics } from '../wear/types';

/** The same statistics with y counted from another centre, mm, so that sums of several can be added. */
export function aboutCentre(statistics: WearStatistics, yCentre: number): WearStatistics {
  const { n, sx, sy, sxy, syy } = statistics;
  if (statistics.yCentre === yCentre) return statistics;
  const shift = statistics.yCentre - yCentre;
  return {
    ...statistics,
    sy: sy.map((sum, run) => sum + shift * (n[run] as number)),
    sxy: sxy.map((sum, run) => sum + shift * (sx[run] as number)),
    syy: syy.map((sum, run) => sum + shift * (2 * (sy[run] as number) + shift * (n[run] as number))),
    yCentre,
  };
}
