const valueColumn = `coalesce(r.value_column, 'value')`;

/** Condition that a reading r of a characteristic c cannot be true as it stands. */
const impossibleSql = `(c.shape = 'four_clock') <> (r.clock IS NOT NULL)
      OR (r.value IS NULL AND (r.lower IS NULL OR r.upper IS NULL))
      OR r.lower > r.upper OR r.value NOT BETWEEN r.lower AND r.upper
      OR (c.never_negative AND least(r.value, r.lower) < 0)`;

/**
 * Readings that cannot be placed or cannot be true, with the reason. Only the few in doubt are joined with what the reason
 * tells.
 */
export const doubtfulReadingsSql = `
  SELECT r.id,
    CASE WHEN o.id IS NULL AND h.overhaul IS NULL THEN 'overhaul' WHEN o.id IS NOT NULL AND r.shape IS NULL THEN 'characteristic' ELSE ${valueColumn} END AS column_name,
    CASE WHEN o.id IS NULL AND h.overhaul IS NULL THEN r.overhaul WHEN o.id IS NOT NULL AND r.shape IS NULL THEN coalesce(CAST(r.characteristic AS VARCHAR), r.unknown_characteristic) ELSE r.raw_text END AS raw,
    CASE
      WHEN o.id IS NULL AND h.overhaul IS NOT NULL THEN 'its overhaul is held: see line ' || h.line || ' of ' || h.file
      WHEN o.id IS NULL THEN 'no overhaul of that name in the files'
      WHEN r.shape IS NULL THEN 'unknown characteristic: add it to characteristics.csv'
      WHEN r.shape = 'four_clock' AND r.clock IS NULL THEN 'the clock position is missing'
      WHEN r.shape = 'single' AND r.clock IS NOT NULL THEN 'a clock position is given for a characteristic with one reading'
      WHEN r.lower IS NULL AND r.upper IS NULL AND r.value IS NULL THEN 'no value'
      WHEN r.value IS NULL AND (r.lower IS NULL OR r.upper IS NULL) THEN 'an interval reading needs both lower and upper'
      WHEN r.lower > r.upper THEN 'lower is above upper'
      WHEN r.value NOT BETWEEN r.lower AND r.upper THEN 'the value lies outside lower and upper'
      WHEN r.never_negative AND least(r.value, r.lower) < 0 THEN 'negative, which this characteristic can never be'
    END AS reason
  FROM (
    SELECT r.*, c.shape, c.never_negative FROM readings r LEFT JOIN all_characteristics c USING (characteristic)
    WHERE c.shape IS NULL OR ${impossibleSql}
      OR r.overhaul NOT IN (SELECT overhaul FROM overhauls)) r
  LEFT JOIN overhauls o ON o.overhaul = r.overhaul
  LEFT JOIN (SELECT DISTINCT ON (overhaul) overhaul, file, line FROM raw_overhauls ORDER BY overhaul, line) h ON h.overhaul = r.overhaul
  WHERE reason IS NOT NULL`;
