/**
 * Series from readings: a single characteristic gives a series of its own code; four clock positions give largest,
 * smallest, mean and offset. With three positions the fourth follows from mean and offset with no ovality
 * (c12 + c6 = c3 + c9), and the reading is listed as interpreted.
 */
export const seriesReadingsSql = `
  CREATE TABLE clock_sets AS
    SELECT overhaul, characteristic, stage, min(file) AS file, min(line) AS line, count(*)::INTEGER AS positions,
      max(value_mm) FILTER (clock = '12') AS c12, max(value_mm) FILTER (clock = '3') AS c3,
      max(value_mm) FILTER (clock = '6') AS c6, max(value_mm) FILTER (clock = '9') AS c9,
      sum(interval_variance) AS interval_variance, max(interval_variance) AS largest_variance
    FROM readings_mm WHERE clock IS NOT NULL GROUP BY overhaul, characteristic, stage;
  CREATE TABLE full_sets AS
    SELECT * REPLACE (
      coalesce(c12, c3 + c9 - c6) AS c12, coalesce(c6, c3 + c9 - c12) AS c6,
      coalesce(c3, c12 + c6 - c9) AS c3, coalesce(c9, c12 + c6 - c3) AS c9) FROM clock_sets;
  INSERT INTO problems SELECT 'readings', file, line, 'clock', characteristic || ' ' || stage,
      'three clock positions only: the fourth is taken from mean and offset without ovality', 'interpreted'
    FROM clock_sets WHERE positions = 3;
  CREATE TABLE series_readings AS
    SELECT overhaul, characteristic, characteristic AS series, stage, file, line, value_mm, lower_mm, upper_mm, interval_variance
      FROM readings_mm WHERE clock IS NULL
    UNION ALL SELECT overhaul, characteristic, characteristic || '_largest', stage, file, line, greatest(c12, c3, c6, c9), NULL, NULL, largest_variance FROM full_sets
    UNION ALL SELECT overhaul, characteristic, characteristic || '_smallest', stage, file, line, least(c12, c3, c6, c9), NULL, NULL, largest_variance FROM full_sets
    UNION ALL SELECT overhaul, characteristic, characteristic || '_mean', stage, file, line, (c12 + c3 + c6 + c9) / 4, NULL, NULL, interval_variance / 16 FROM full_sets
    UNION ALL SELECT overhaul, characteristic, characteristic || '_offset', stage, file, line, sqrt(pow((c3 - c9) / 2, 2) + pow((c12 - c6) / 2, 2)), NULL, NULL, interval_variance / 8 FROM full_sets;`;
