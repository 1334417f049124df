import { lengthUnitFactorsSql } from './lengthUnitFactors';

/** Text of a reading as it stands in its file, by the reading's id. */
export const readingTextsSql = 'CREATE VIEW reading_texts AS SELECT id, raw_text AS raw FROM readings';

const valueColumn = `coalesce(r.value_column, 'value')`;

/** Readings that cannot be placed or cannot be true, with the reason. */
export const doubtfulReadingsSql = `
  SELECT r.id,
    CASE WHEN o.id IS NULL AND h.overhaul IS NULL THEN 'overhaul' WHEN o.id IS NOT NULL AND c.characteristic IS NULL THEN 'characteristic' ELSE ${valueColumn} END AS column_name,
    CASE WHEN o.id IS NULL AND h.overhaul IS NULL THEN r.overhaul WHEN o.id IS NOT NULL AND c.characteristic IS NULL THEN r.characteristic ELSE t.raw END AS raw,
    CASE
      WHEN o.id IS NULL AND h.overhaul IS NOT NULL THEN 'its overhaul is held: see line ' || h.line || ' of ' || h.file
      WHEN o.id IS NULL THEN 'no overhaul of that name in the files'
      WHEN c.characteristic IS NULL THEN 'unknown characteristic: add it to characteristics.csv'
      WHEN c.shape = 'four_clock' AND r.clock IS NULL THEN 'the clock position is missing'
      WHEN c.shape = 'single' AND r.clock IS NOT NULL THEN 'a clock position is given for a characteristic with one reading'
      WHEN r.lower IS NULL AND r.upper IS NULL AND r.value IS NULL THEN 'no value'
      WHEN r.value IS NULL AND (r.lower IS NULL OR r.upper IS NULL) THEN 'an interval reading needs both lower and upper'
      WHEN r.lower > r.upper THEN 'lower is above upper'
      WHEN r.value NOT BETWEEN r.lower AND r.upper THEN 'the value lies outside lower and upper'
      WHEN c.never_negative AND least(r.value, r.lower) < 0 THEN 'negative, which this characteristic can never be'
    END AS reason
  FROM readings r JOIN reading_texts t USING (id)
  LEFT JOIN overhauls o ON o.overhaul = r.overhaul
  LEFT JOIN (SELECT DISTINCT ON (overhaul) overhaul, file, line FROM raw_overhauls ORDER BY overhaul, line) h ON h.overhaul = r.overhaul
  LEFT JOIN all_characteristics c ON c.characteristic = r.characteristic
  WHERE reason IS NOT NULL`;

/** Readings in millimetres with the variance that an interval adds: (upper - lower)^2 / 12. */
export const readingsInMillimetresSql = `
  CREATE TABLE readings_mm AS
    SELECT r.id, r.file, r.line, r.overhaul, r.characteristic, r.stage, r.clock,
      CASE WHEN r.lower IS NOT NULL AND r.upper IS NOT NULL THEN (r.lower + r.upper) / 2 ELSE r.value END * f.factor AS value_mm,
      r.lower * f.factor AS lower_mm, r.upper * f.factor AS upper_mm,
      coalesce(pow((r.upper - r.lower) * f.factor, 2) / 12, 0) AS interval_variance
    FROM readings r JOIN ${lengthUnitFactorsSql} ON f.uom = r.uom`;

/** Clock readings of sets with fewer than three positions, which give no series. */
export const incompleteClockSetsSql = `
  SELECT r.id, coalesce(r.value_column, 'value') AS column_name, t.raw,
    'only ' || count(*) OVER same || ' of 4 clock positions: three are needed for the mean and the offset' AS reason
  FROM readings r JOIN reading_texts t USING (id) JOIN all_characteristics c ON c.characteristic = r.characteristic AND c.shape = 'four_clock'
  WINDOW same AS (PARTITION BY r.overhaul, r.characteristic, r.stage)
  QUALIFY count(*) OVER same < 3`;
