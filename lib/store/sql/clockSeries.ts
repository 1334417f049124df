/** Readings at the clock positions of a characteristic at one stage of an overhaul, a row a set. */
export const makeClockSetsSql = `
  CREATE TABLE clock_sets AS
    SELECT overhaul, characteristic, stage, min(file) AS file, min(line) AS line, count(*)::INTEGER AS positions,
      max(value_mm) FILTER (clock = '12') AS c12, max(value_mm) FILTER (clock = '3') AS c3,
      max(value_mm) FILTER (clock = '6') AS c6, max(value_mm) FILTER (clock = '9') AS c9,
      sum(interval_variance) AS interval_variance, max(interval_variance) AS largest_variance
    FROM readings_mm WHERE clock IS NOT NULL GROUP BY overhaul, characteristic, stage;`;

/** Clock readings of sets with fewer than three positions, which give no series. */
export const incompleteClockSetsSql = `
  SELECT r.id, coalesce(r.value_column, 'value') AS column_name, r.raw_text AS raw,
    'only ' || s.positions || ' of 4 clock positions: three are needed for the mean and the offset' AS reason
  FROM readings r JOIN (SELECT overhaul, characteristic, stage, positions FROM clock_sets WHERE positions < 3) s USING (overhaul, characteristic, stage)`;

/** Drops those sets, and lists sets of three positions: the fourth follows from mean and offset. */
export const settleClockSetsSql = `
  DELETE FROM clock_sets WHERE positions < 3;
  INSERT INTO problems SELECT 'readings', file, line, 'clock', characteristic || ' ' || stage,
      'three clock positions only: the fourth is taken from mean and offset without ovality', 'interpreted'
    FROM clock_sets WHERE positions = 3;`;
