/** Sets of clock readings of unit $1 up to $2 (YYYY-MM-DD) of characteristic $3, in order of date, as found before as left. */
export const unitClockSetsSql = `
  SELECT s.overhaul, CAST(o.date AS VARCHAR) AS date, s.stage, CAST(s.c12 AS DOUBLE) AS c12, CAST(s.c3 AS DOUBLE) AS c3,
    CAST(s.c6 AS DOUBLE) AS c6, CAST(s.c9 AS DOUBLE) AS c9
  FROM clock_sets s JOIN overhauls o USING (overhaul)
  WHERE o.unit = $1 AND o.date <= $2::DATE AND s.characteristic = $3
  ORDER BY o.date, o.id, s.stage`;

/**
 * Pairs of readings of one state up to $1 (YYYY-MM-DD): as found and as left at one overhaul, within one run, which nothing has
 * reset between them. Interval readings are left out.
 */
export const sameStatePairsSql = `
  SELECT f.series, o.workshop, CAST(l.value_mm - f.value_mm AS DOUBLE) AS difference_mm
  FROM run_readings f JOIN run_readings l ON l.overhaul = f.overhaul AND l.series = f.series AND l.run = f.run AND l.unit = f.unit
  JOIN overhauls o ON o.overhaul = f.overhaul
  WHERE f.stage = 'found' AND l.stage = 'left' AND f.interval_variance = 0 AND l.interval_variance = 0 AND f.date <= $1::DATE
  ORDER BY f.series, o.workshop, f.unit, f.date, f.line, l.line`;
