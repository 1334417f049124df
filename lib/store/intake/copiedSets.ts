/** Expected number of coincidences, over all overhauls compared, from which equal readings are no doubt any more. */
const mostExpected = 0.05;
/** Overhauls left as found from which a file as a whole is doubted. */
const fewestOfFile = 4;
/** Jobs on two units that lie further apart are not compared. */
const longestBetween_days = 365;
/** Fewest readings that can show a copy. */
const fewestCells = 3;

/** Of a characteristic's cells: the share that agree, and the share of overhauls in which all do; one agreement in two is added to each. */
const agreementSql = (table: string) => `
    SELECT characteristic, (sum(same) + 1) / (sum(cells) + 2) AS cell_share, (count(*) FILTER (same = cells) + 1) / (count(*) + 2) AS set_share
    FROM ${table} GROUP BY ALL`;

/** Log of the chance that all cells agree: of the cells, a further clock position telling half as much as the first, or of whole sets. */
const setChance = (cells: string) =>
  `sum(least(ln(coalesce(cell_share, 0.5)) * (1 + ${cells}) / 2, ln(coalesce(set_share, 0.5))))`;
const cellChance = (share: string, clock: string) =>
  `sum(ln(${share}) * CASE WHEN ${clock} IN ('', '12') THEN 1 ELSE 0.5 END)`;

/**
 * Table copied_sets: overhauls whose as-left readings are, cell for cell, those of the unit's overhaul before ('previous'),
 * of another unit ('other unit', the later of the two) or, where assembly resets the series, their own as-found ones ('as
 * found'); left_overhauls: how many overhauls with as-left readings a file has.
 *
 * Three cells or more, not all of one size; sets are equal if the sums of their cells' hashes are. Equal sets are doubted only if they can hardly be chance: comparisons made times
 * the chance of agreement must be 0.05 at the most. The chance is the product over the characteristics of how often they
 * agree in overhauls that do not agree throughout; between units (of one file and frame, within a year) the product over the
 * cells of the share of sisters' cells with that size. So coarse or rarely changing readings count for little. Files with 4 and
 * half of their overhauls or more left as found throughout are doubted if that is four times as many as to be expected.
 */
export const copiedSetsSql = `
  CREATE OR REPLACE VIEW left_cells AS
    SELECT *, round(value_mm, 5) AS size FROM sized_readings WHERE stage = 'left';
  CREATE OR REPLACE TABLE left_sets AS
    SELECT *, lag(overhaul_id) OVER history AS before, lag(date) OVER history AS date_before, lag(unit_hours) OVER history AS hours_before,
      lag(cell_sizes) OVER history IS NOT DISTINCT FROM cell_sizes AS is_same
    FROM (
      SELECT file, overhaul_id, any_value(unit_id) AS unit_id, any_value(frame) AS frame, any_value(date) AS date, any_value(unit_hours) AS unit_hours,
        min(line)::INTEGER AS first_line, max(line)::INTEGER AS last_line, count(*)::INTEGER AS cells, min(size) < max(size) AS has_sizes,
        sum(hash(characteristic, clock, size)) AS cell_sizes
      FROM left_cells GROUP BY file, overhaul_id)
    WINDOW history AS (PARTITION BY unit_id ORDER BY date, unit_hours, overhaul_id);
  CREATE OR REPLACE TABLE left_overhauls AS SELECT file, count(*)::INTEGER AS overhauls FROM left_sets GROUP BY file;
  CREATE OR REPLACE TABLE copied_sets AS
  WITH compared AS (SELECT * FROM left_sets WHERE before IS NOT NULL),
  kept AS (
    SELECT s.overhaul_id, c.characteristic, count(*) AS cells, count(*) FILTER (c.size = b.size) AS same
    FROM compared s JOIN left_cells c ON c.overhaul_id = s.overhaul_id JOIN left_cells b ON b.overhaul_id = s.before AND b.characteristic = c.characteristic AND b.clock = c.clock
    WHERE NOT s.is_same GROUP BY ALL),
  steady AS (${agreementSql('kept')}),
  previous AS (
    SELECT s.overhaul_id, 'previous' AS source, 'of ' || any_value(s.date_before) AS "of"
    FROM compared s JOIN (SELECT overhaul_id, characteristic, count(*) AS readings FROM left_cells GROUP BY ALL) c USING (overhaul_id) LEFT JOIN steady USING (characteristic),
      (SELECT count(*) AS n FROM compared) comparisons
    WHERE s.is_same AND s.cells >= ${fewestCells} AND s.has_sizes AND NOT (s.unit_hours = s.hours_before AND s.date - s.date_before <= 60)
    GROUP BY s.overhaul_id HAVING ${setChance('c.readings')} + ln(any_value(comparisons.n)) <= ln(${mostExpected})),
  alike AS (
    SELECT *, count(*) OVER (PARTITION BY file, frame, cell_sizes) AS copies, lag(unit_id) OVER same AS other, lag(date) OVER same AS other_date
    FROM left_sets WHERE cells >= ${fewestCells} AND has_sizes
    WINDOW same AS (PARTITION BY file, frame, cell_sizes ORDER BY date, overhaul_id)),
  neighbours AS (
    SELECT sum(before) AS n FROM (
      SELECT count(*) OVER (PARTITION BY file, frame ORDER BY date RANGE BETWEEN INTERVAL ${longestBetween_days} DAYS PRECEDING AND CURRENT ROW) - 1 AS before FROM left_sets)),
  frequencies AS (
    SELECT frame, characteristic, clock, size, count(*) AS same, sum(count(*)) OVER (PARTITION BY frame, characteristic, clock) AS n
    FROM left_cells GROUP BY frame, characteristic, clock, size),
  other_unit AS (
    SELECT a.overhaul_id, 'other unit' AS source, any_value(n.unit) || ' of ' || any_value(a.other_date) AS "of"
    FROM alike a JOIN left_cells c ON c.overhaul_id = a.overhaul_id JOIN frequencies f ON f.frame = a.frame AND f.characteristic = c.characteristic AND f.clock = c.clock AND f.size = c.size JOIN units n ON n.id = a.other, neighbours comparisons
    WHERE a.unit_id <> a.other AND a.date - a.other_date <= ${longestBetween_days}
    GROUP BY a.overhaul_id HAVING ${cellChance('least((f.same - a.copies + 1) / (f.n - a.copies + 1), 1)', 'c.clock')} + ln(any_value(comparisons.n)) <= ln(${mostExpected})),
  stages AS (
    SELECT c.overhaul_id, c.characteristic, c.clock, c.size, c.size = f.size AS is_same
    FROM left_cells c JOIN frame_numbers n ON n.number = c.frame JOIN reset_rules r ON r.frame = n.frame AND r.characteristic = c.characteristic AND (r.codes IS NULL OR list_contains(r.codes, 'assembly'))
    JOIN (SELECT overhaul_id, characteristic, clock, round(value_mm, 5) AS size FROM sized_readings WHERE stage = 'found') f
      ON f.overhaul_id = c.overhaul_id AND f.characteristic = c.characteristic AND f.clock = c.clock),
  unchanged AS (
    SELECT overhaul_id FROM stages GROUP BY overhaul_id HAVING bool_and(is_same) AND count(*) >= ${fewestCells} AND min(size) < max(size)),
  changed AS (
    SELECT overhaul_id, characteristic, count(*) AS cells, count(*) FILTER (is_same) AS same FROM stages
    WHERE overhaul_id NOT IN (SELECT overhaul_id FROM unchanged) GROUP BY ALL),
  worn AS (${agreementSql('changed')}),
  chances AS (
    SELECT overhaul_id, ${setChance('readings')} AS log_chance
    FROM (SELECT overhaul_id, characteristic, count(*) AS readings FROM stages JOIN unchanged USING (overhaul_id) GROUP BY ALL) LEFT JOIN worn USING (characteristic)
    GROUP BY overhaul_id),
  of_files AS (
    SELECT file, count(*) AS overhauls, count(log_chance) AS copies, avg(exp(log_chance)) AS chance
    FROM (SELECT DISTINCT overhaul_id FROM stages) JOIN left_sets USING (overhaul_id) LEFT JOIN chances USING (overhaul_id) GROUP BY file),
  as_found AS (
    SELECT overhaul_id, 'as found' AS source, '' AS "of"
    FROM chances JOIN left_sets USING (overhaul_id) JOIN of_files USING (file), (SELECT count(DISTINCT overhaul_id) AS n FROM stages) comparisons
    WHERE log_chance + ln(comparisons.n) <= ln(${mostExpected})
      OR (copies >= ${fewestOfFile} AND copies >= overhauls / 2 AND copies >= 4 * overhauls * chance))
  SELECT s.file, s.overhaul_id, s.date, s.first_line, s.last_line, s.cells, d.source, d."of"
  FROM (SELECT *, row_number() OVER (PARTITION BY overhaul_id ORDER BY source DESC) AS place FROM (FROM previous UNION ALL FROM other_unit UNION ALL FROM as_found)) d
  JOIN left_sets s USING (overhaul_id) WHERE d.place = 1;
  DROP VIEW left_cells; DROP TABLE left_sets`;
