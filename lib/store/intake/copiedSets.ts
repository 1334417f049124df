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
 * Three cells or more, not all of one size. Equal sets are doubted only if they can hardly be chance: comparisons made times
 * the chance of agreement must be 0.05 at the most. The chance is the product over the characteristics of how often they
 * agree in overhauls that do not agree throughout; between units (of one file and frame, within a year) the product over the
 * cells of the share of sisters' cells with that size. So coarse or rarely changing readings count for little. Files with 4 and
 * half of their overhauls or more left as found throughout are doubted if that is four times as many as to be expected.
 */
export const copiedSetsSql = `
  CREATE OR REPLACE TABLE left_cells AS
    SELECT *, round(value_mm, 5) AS size FROM sized_readings WHERE stage = 'left';
  CREATE OR REPLACE TABLE left_sets AS
    SELECT *, lag(overhaul) OVER history AS before, lag(date) OVER history AS date_before, lag(unit_hours) OVER history AS hours_before,
      lag(cell_sizes) OVER history IS NOT DISTINCT FROM cell_sizes AS is_same
    FROM (
      SELECT file, overhaul, overhaul_id, unit, frame, date, unit_hours, min(line)::INTEGER AS first_line, max(line)::INTEGER AS last_line,
        count(*)::INTEGER AS cells, count(DISTINCT size) AS sizes,
        string_agg(characteristic || ' ' || clock || ' ' || size, ';' ORDER BY characteristic, clock, size) AS cell_sizes
      FROM left_cells GROUP BY ALL)
    WINDOW history AS (PARTITION BY unit ORDER BY date, unit_hours, overhaul_id);
  CREATE OR REPLACE TABLE left_overhauls AS SELECT file, count(*)::INTEGER AS overhauls FROM left_sets GROUP BY file;
  CREATE OR REPLACE TABLE copied_sets AS
  WITH compared AS (SELECT * FROM left_sets WHERE before IS NOT NULL),
  kept AS (
    SELECT s.overhaul, c.characteristic, count(*) AS cells, count(*) FILTER (c.size = b.size) AS same
    FROM compared s JOIN left_cells c ON c.overhaul = s.overhaul JOIN left_cells b ON b.overhaul = s.before AND b.characteristic = c.characteristic AND b.clock = c.clock
    WHERE NOT s.is_same GROUP BY ALL),
  steady AS (${agreementSql('kept')}),
  previous AS (
    SELECT s.overhaul, 'previous' AS source, 'of ' || any_value(s.date_before) AS "of"
    FROM compared s JOIN (SELECT overhaul, characteristic, count(*) AS readings FROM left_cells GROUP BY ALL) c USING (overhaul) LEFT JOIN steady USING (characteristic),
      (SELECT count(*) AS n FROM compared) comparisons
    WHERE s.is_same AND s.cells >= ${fewestCells} AND s.sizes > 1 AND NOT (s.unit_hours = s.hours_before AND s.date - s.date_before <= 60)
    GROUP BY s.overhaul HAVING ${setChance('c.readings')} + ln(any_value(comparisons.n)) <= ln(${mostExpected})),
  alike AS (
    SELECT *, count(*) OVER (PARTITION BY file, frame, cell_sizes) AS copies, lag(unit) OVER same AS other, lag(date) OVER same AS other_date
    FROM left_sets WHERE cells >= ${fewestCells} AND sizes > 1
    WINDOW same AS (PARTITION BY file, frame, cell_sizes ORDER BY date, overhaul_id)),
  neighbours AS (
    SELECT sum(before) AS n FROM (
      SELECT count(*) OVER (PARTITION BY file, frame ORDER BY date RANGE BETWEEN INTERVAL ${longestBetween_days} DAYS PRECEDING AND CURRENT ROW) - 1 AS before FROM left_sets)),
  frequencies AS (
    SELECT frame, characteristic, clock, size, count(*) AS same, sum(count(*)) OVER (PARTITION BY frame, characteristic, clock) AS n
    FROM left_cells GROUP BY frame, characteristic, clock, size),
  other_unit AS (
    SELECT a.overhaul, 'other unit' AS source, any_value(a.other) || ' of ' || any_value(a.other_date) AS "of"
    FROM alike a JOIN left_cells c ON c.overhaul = a.overhaul JOIN frequencies f ON f.frame = a.frame AND f.characteristic = c.characteristic AND f.clock = c.clock AND f.size = c.size, neighbours comparisons
    WHERE a.unit <> a.other AND a.date - a.other_date <= ${longestBetween_days}
    GROUP BY a.overhaul HAVING ${cellChance('least((f.same - a.copies + 1) / (f.n - a.copies + 1), 1)', 'c.clock')} + ln(any_value(comparisons.n)) <= ln(${mostExpected})),
  stages AS (
    SELECT c.overhaul, c.characteristic, c.clock, c.size, c.size = f.size AS is_same
    FROM left_cells c JOIN reset_rules r ON r.frame = c.frame AND r.characteristic = c.characteristic AND (r.codes IS NULL OR list_contains(r.codes, 'assembly'))
    JOIN (SELECT overhaul, characteristic, clock, round(value_mm, 5) AS size FROM sized_readings WHERE stage = 'found') f
      ON f.overhaul = c.overhaul AND f.characteristic = c.characteristic AND f.clock = c.clock),
  unchanged AS (
    SELECT overhaul FROM stages GROUP BY overhaul HAVING bool_and(is_same) AND count(*) >= ${fewestCells} AND count(DISTINCT size) > 1),
  changed AS (
    SELECT overhaul, characteristic, count(*) AS cells, count(*) FILTER (is_same) AS same FROM stages
    WHERE overhaul NOT IN (SELECT overhaul FROM unchanged) GROUP BY ALL),
  worn AS (${agreementSql('changed')}),
  chances AS (
    SELECT overhaul, ${setChance('readings')} AS log_chance
    FROM (SELECT overhaul, characteristic, count(*) AS readings FROM stages JOIN unchanged USING (overhaul) GROUP BY ALL) LEFT JOIN worn USING (characteristic)
    GROUP BY overhaul),
  of_files AS (
    SELECT file, count(*) AS overhauls, count(log_chance) AS copies, avg(exp(log_chance)) AS chance
    FROM (SELECT DISTINCT overhaul FROM stages) JOIN left_sets USING (overhaul) LEFT JOIN chances USING (overhaul) GROUP BY file),
  as_found AS (
    SELECT overhaul, 'as found' AS source, '' AS "of"
    FROM chances JOIN left_sets USING (overhaul) JOIN of_files USING (file), (SELECT count(DISTINCT overhaul) AS n FROM stages) comparisons
    WHERE log_chance + ln(comparisons.n) <= ln(${mostExpected})
      OR (copies >= ${fewestOfFile} AND copies >= overhauls / 2 AND copies >= 4 * overhauls * chance))
  SELECT s.file, s.overhaul, s.unit, s.date, s.first_line, s.last_line, s.cells, d.source, d."of"
  FROM (SELECT *, row_number() OVER (PARTITION BY overhaul ORDER BY source DESC) AS place FROM (FROM previous UNION ALL FROM other_unit UNION ALL FROM as_found)) d
  JOIN left_sets s USING (overhaul) WHERE d.place = 1;
  DROP TABLE left_cells; DROP TABLE left_sets`;
