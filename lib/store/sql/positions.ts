/**
 * Where every unit sits now, its plan there, and its last overhaul; $1 is the as-of date (YYYY-MM-DD).
 *
 * A unit with installation rows of which none covers the date is not installed; one without any is where its last
 * overhaul says.
 */
export const unitPositionsSql = `
  WITH place AS (
    SELECT unit, site, engine, bank FROM installations WHERE from_date <= $1::DATE AND coalesce(to_date, $1::DATE) >= $1::DATE
    QUALIFY row_number() OVER (PARTITION BY unit ORDER BY from_date DESC, id DESC) = 1),
  in_order AS (SELECT *, row_number() OVER (ORDER BY date, id) AS number FROM overhauls WHERE date <= $1::DATE),
  last AS (
    SELECT unit, count(*) AS overhauls, arg_max(site, number) AS site, arg_max(engine, number) AS engine, arg_max(bank, number) AS bank,
      arg_max(workshop, number) AS workshop, max(date) AS date, arg_max(unit_hours, number) AS hours,
      (arg_max(unit_hours, number) - arg_min(unit_hours, number)) AS hours_spanned, (max(date) - min(date)) AS days_spanned
    FROM in_order GROUP BY unit),
  ever AS (SELECT DISTINCT unit FROM installations),
  here AS (
    SELECT u.unit, p.unit IS NOT NULL OR e.unit IS NULL AS installed, coalesce(p.site, l.site) AS site,
      coalesce(p.engine, l.engine) AS engine, coalesce(p.bank, l.bank) AS bank
    FROM units u LEFT JOIN place p USING (unit) LEFT JOIN last l USING (unit) LEFT JOIN ever e ON e.unit = u.unit)
  SELECT u.unit, u.frame, CAST(u.rated_life_h AS DOUBLE) AS rated_life_h, h.installed::INTEGER AS installed,
    CASE WHEN h.installed THEN h.site END AS site, CASE WHEN h.installed THEN h.engine END AS engine, CASE WHEN h.installed THEN h.bank END AS bank,
    CAST(coalesce(l.overhauls, 0) AS INTEGER) AS overhauls, CAST(l.date AS VARCHAR) AS last_date, l.workshop AS last_workshop, CAST(l.hours AS DOUBLE) AS last_hours,
    CAST(CASE WHEN l.days_spanned > 0 THEN l.hours_spanned * 365.25 / l.days_spanned END AS DOUBLE) AS observed_hours_per_year,
    CAST(plan.hours_per_year AS DOUBLE) AS hours_per_year, CAST(plan.hours_now AS DOUBLE) AS plan_hours, CAST(plan.hours_now_date AS VARCHAR) AS plan_date,
    CAST(plan.next_overhaul_date AS VARCHAR) AS next_overhaul_date, CAST(plan.interval_h AS DOUBLE) AS interval_h
  FROM units u JOIN here h USING (unit) LEFT JOIN last l USING (unit)
  -- With a condition on one side beside the key every unit would be held against every plan.
  LEFT JOIN plan ON plan.engine = CASE WHEN h.installed THEN h.engine END AND plan.bank IS NOT DISTINCT FROM h.bank
  ORDER BY u.unit`;

/** Units that were opened after $1 (YYYY-MM-DD). */
export const unitsOpenedAfterSql = `SELECT DISTINCT unit FROM overhauls WHERE date > $1::DATE ORDER BY unit`;

/** Latest date in the data: the default as-of date. */
export const latestDateSql = `
  SELECT CAST(max(day) AS VARCHAR) AS day FROM (
    SELECT max(date) AS day FROM overhauls UNION ALL SELECT max(hours_now_date) FROM plan
    UNION ALL SELECT max(date) FROM events UNION ALL SELECT max(from_date) FROM installations)`;

/** Limits in force on $1 (YYYY-MM-DD), one row a frame, series and side. */
export const limitsInForceSql = `
  SELECT frame, series, limit_kind, CAST("limit" AS DOUBLE) AS limit_mm, source FROM limits
  WHERE valid_from IS NULL OR valid_from <= $1::DATE
  QUALIFY row_number() OVER (PARTITION BY frame, series, limit_kind ORDER BY valid_from DESC NULLS LAST, id DESC) = 1
  ORDER BY frame, series, limit_kind`;

/** Assembly ranges in force on $1 (YYYY-MM-DD), one row a frame and series that has one. */
export const assemblyRangesSql = `
  SELECT frame, series, CAST(assembly_lower AS DOUBLE) AS assembly_lower, CAST(assembly_upper AS DOUBLE) AS assembly_upper FROM limits
  WHERE (valid_from IS NULL OR valid_from <= $1::DATE) AND (assembly_lower IS NOT NULL OR assembly_upper IS NOT NULL)
  QUALIFY row_number() OVER (PARTITION BY frame, series ORDER BY valid_from DESC NULLS LAST, id DESC) = 1
  ORDER BY frame, series`;

/**
 * The run that every unit is in on $1 (YYYY-MM-DD), by reset rule: its number and the unit hours at its start. By rule and not by
 * series, since all series of a rule are in the same run.
 */
export const runsNowSql = `
  SELECT unit, rule::DOUBLE AS rule, arg_max(run_left, place)::DOUBLE AS run, CAST(arg_max(start_left, place) AS DOUBLE) AS start_hours
  FROM opening_resets WHERE date <= $1::DATE GROUP BY unit, rule ORDER BY unit, rule`;

/** Reset rule of every series of a frame. */
export const resetRuleOfSeriesSql = `
  SELECT DISTINCT r.frame, s.series, r.rule::INTEGER AS rule FROM reset_rules r JOIN series_of s USING (characteristic)
  ORDER BY r.frame, s.series`;
