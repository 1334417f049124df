/** Clearances that only open with wear: as found is not below as left, whatever was done at the overhaul. */
const opening = `('thrust_play', 'tip_compressor', 'tip_turbine')`;
/** Floor of the spread, mm: about what a feeler or a dial gauge resolves. */
const floor_mm = 0.005;

/**
 * Table stage_pairs: every overhaul's as-found and as-left reading of a characteristic (the mean over the clock positions
 * that both stages have), and whether they fit far better exchanged; stage_columns: how many do in a file's pair of columns.
 *
 * Against its sisters (frame and characteristic, 4 units and 8 pairs at least): with e = found - left, signed so that wear is
 * positive, m the median of |e| and s = 1.4826 times the median distance from the median of the pair's own file (0.005 mm at
 * least), both of which a file exchanged as a whole leaves as they are, a pair is tellable if m + |e| >= 4.5 s and |e| lies
 * between half and 1.5 times the 90 % point of |e|. A tellable pair with e < 0 is turned if half of the tellable ones and 4
 * at least have e > 0, or three in four where nothing says that the characteristic only opens. It is doubtful on its own if besides both
 * levels together lie nearer to the sisters' medians exchanged, in units of their MAD, and nearer to the medians of the
 * unit's own overhauls, if there are three and most of them have e > 0.
 *
 * A pair of columns of a characteristic that only opens is reversed as a whole if 4 units and 5 pairs or more show it, 80 %
 * of them as found below as left and 10 % at the most above, and the median drop is three times its standard error.
 */
export const stagePairsSql = `
  CREATE OR REPLACE TABLE stage_pairs AS
  WITH pairs AS (
    SELECT file, overhaul_id, any_value(unit_id) AS unit_id, any_value(frame) AS frame, characteristic, avg(found) AS found, avg(left_) AS left_,
      min(first_line) AS first_line, max(last_line) AS last_line
    FROM (
      SELECT file, overhaul_id, any_value(unit_id) AS unit_id, any_value(frame) AS frame, characteristic,
        avg(value_mm) FILTER (stage = 'found') AS found, avg(value_mm) FILTER (stage = 'left') AS left_, min(line) AS first_line, max(line) AS last_line
      FROM sized_readings GROUP BY file, overhaul_id, characteristic, clock HAVING found IS NOT NULL AND left_ IS NOT NULL)
    GROUP BY file, overhaul_id, characteristic),
  levels AS (
    SELECT frame, characteristic, count(*) AS pairs, count(DISTINCT unit_id) AS units, median(found) AS found_m, median(left_) AS left_m,
      greatest(1.4826 * mad(found), ${floor_mm}) AS found_s, greatest(1.4826 * mad(left_), ${floor_mm}) AS left_s,
      CASE WHEN characteristic IN ${opening} OR quantile_cont(found - left_, 0.1) + quantile_cont(found - left_, 0.9) >= 0 THEN 1 ELSE -1 END AS sign
    FROM pairs GROUP BY frame, characteristic),
  turned_to AS (
    SELECT p.*, l.* EXCLUDE (frame, characteristic), sign * (found - left_) AS e FROM pairs p JOIN levels l USING (frame, characteristic)),
  signed AS (
    SELECT t.*, abs(e - file_m) AS off_file
    FROM turned_to t JOIN (SELECT file, frame, characteristic, median(e) AS file_m FROM turned_to GROUP BY ALL) USING (file, frame, characteristic)),
  drops AS (
    SELECT frame, characteristic, median(abs(e)) AS e_m, greatest(1.4826 * median(off_file), ${floor_mm}) AS e_s, quantile_cont(abs(e), 0.9) AS e_90
    FROM signed GROUP BY ALL),
  own AS (
    SELECT unit_id, characteristic, count(*) AS own_pairs, median(found) AS own_found, median(left_) AS own_left,
      count(*) FILTER (e > 0) AS own_straight FROM signed GROUP BY ALL),
  costs AS (
    SELECT s.*, e_m, e_s, e_90,
      least(abs(found - found_m) / found_s, 6) + least(abs(left_ - left_m) / left_s, 6) AS cost_written,
      least(abs(left_ - found_m) / found_s, 6) + least(abs(found - left_m) / left_s, 6) AS cost_exchanged,
      own_pairs < 3 OR 2 * own_straight < own_pairs OR abs(found - own_found) + abs(left_ - own_left) > abs(left_ - own_found) + abs(found - own_left) AS own_agrees
    FROM signed s JOIN drops USING (frame, characteristic) JOIN own USING (unit_id, characteristic)),
  told AS (
    SELECT *, units >= 4 AND pairs >= 8 AND e_m + abs(e) >= 4.5 * e_s AND abs(e) BETWEEN e_90 / 2 AND e_90 * 1.5 AS is_tellable FROM costs),
  directions AS (
    SELECT frame, characteristic, count(*) FILTER (is_tellable AND e > 0) >= 4
      AND count(*) FILTER (is_tellable AND e > 0) >= CASE WHEN characteristic IN ${opening} THEN 1 ELSE 3 END * count(*) FILTER (is_tellable AND e < 0) AS is_clear
    FROM told GROUP BY frame, characteristic)
  SELECT file, overhaul_id, unit_id, characteristic, first_line, last_line, e, is_tellable,
    is_tellable AND e > 0 AS is_straight,
    is_tellable AND e < 0 AND is_clear AS is_turned, is_turned AND cost_exchanged < cost_written AND own_agrees AS is_doubtful
  FROM told JOIN directions USING (frame, characteristic);
  CREATE OR REPLACE TABLE stage_columns AS
  SELECT file, characteristic, count(*) FILTER (is_tellable)::INTEGER AS tellable, count(*) FILTER (is_turned)::INTEGER AS turned,
    (characteristic IN ${opening} AND count(DISTINCT unit_id) >= 4 AND count(*) >= 5 AND count(*) FILTER (e < 0) >= 0.8 * count(*)
      AND count(*) FILTER (e > 0) <= 0.1 * count(*) AND -median(e) >= 3 * greatest(1.4826 * mad(e), ${floor_mm}) / sqrt(count(*)))::INTEGER AS reversed
  FROM stage_pairs GROUP BY file, characteristic;`;
