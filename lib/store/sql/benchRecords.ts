/** Readings of unit $1 up to $2 (YYYY-MM-DD) in mm as they were taken, in order of date, as found before as left. */
export const unitReadingsTakenSql = `
  SELECT CAST(r.characteristic AS VARCHAR) AS characteristic, CAST(r.stage AS VARCHAR) AS stage, CAST(r.clock AS VARCHAR) AS clock,
    o.overhaul, CAST(o.date AS VARCHAR) AS date, CAST(r.value_mm AS DOUBLE) AS value_mm
  FROM readings_mm r JOIN overhauls o USING (overhaul)
  WHERE o.unit = $1 AND o.date <= $2::DATE ORDER BY o.date, o.id, r.stage, r.id`;

/**
 * Complete sets of clock readings of sister group $2 up to $1 (YYYY-MM-DD) with their run, in order of unit, date and stage.
 *
 * @param groupTable table of the sister group of each unit: unit, group
 */
export function groupClockSetsSql(groupTable: string): string {
  return `
  SELECT CAST(s.characteristic AS VARCHAR) AS characteristic, o.unit, r.run::INTEGER AS run, CAST(s.stage AS VARCHAR) AS stage,
    CAST(s.c12 AS DOUBLE) AS c12, CAST(s.c3 AS DOUBLE) AS c3, CAST(s.c6 AS DOUBLE) AS c6, CAST(s.c9 AS DOUBLE) AS c9
  FROM clock_sets s JOIN overhauls o USING (overhaul) JOIN ${groupTable} g USING (unit)
  JOIN run_readings r ON r.overhaul = s.overhaul AND r.stage = s.stage AND CAST(r.series AS VARCHAR) = CAST(s.characteristic AS VARCHAR) || '_mean'
  WHERE g."group" = $2 AND o.date <= $1::DATE AND s.positions = 4
  ORDER BY o.unit, o.date, o.id, s.stage`;
}

/** Workshops on record, in order of name. */
export const workshopsSql = `SELECT DISTINCT workshop FROM overhauls WHERE workshop IS NOT NULL ORDER BY workshop`;

/** Middle size of the readings of each characteristic of frame $1, mm. */
export const usualSizesSql = `
  SELECT CAST(r.characteristic AS VARCHAR) AS characteristic, CAST(median(abs(r.value_mm)) AS DOUBLE) AS usual_mm
  FROM readings_mm r JOIN overhauls o USING (overhaul) JOIN units u USING (unit) WHERE u.frame = $1 GROUP BY r.characteristic`;

/** Characteristics with their shape. */
export const characteristicsSql = `
  SELECT CAST(characteristic AS VARCHAR) AS code, CAST(shape AS VARCHAR) AS shape, never_negative::INTEGER AS never_negative
  FROM all_characteristics ORDER BY code`;
