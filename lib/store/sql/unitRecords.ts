/** Every placed reading of unit $1, by series, in order of hours. */
export const unitReadingsSql = `
  SELECT r.series, r.characteristic, r.overhaul, CAST(r.date AS VARCHAR) AS date, r.stage, CAST(r.unit_hours AS DOUBLE) AS unit_hours,
    CAST(r.run_hours AS DOUBLE) AS run_hours, r.run::INTEGER AS run, CAST(r.value_mm AS DOUBLE) AS value_mm,
    CAST(r.lower_mm AS DOUBLE) AS lower_mm, CAST(r.upper_mm AS DOUBLE) AS upper_mm, o.workshop,
    r.file, r.line::INTEGER AS line
  FROM run_readings r JOIN overhauls o USING (overhaul)
  WHERE r.unit = $1 AND r.date <= $2::DATE
  ORDER BY r.series, r.unit_hours, r.date, r.stage, r.line`;

/** Where the runs of unit $1 end, by characteristic, and which of the parts fitted ended them. */
export const unitResetsSql = `
  SELECT r.characteristic, CAST(r.unit_hours AS DOUBLE) AS unit_hours, CAST(r.date AS VARCHAR) AS date,
    CASE WHEN r.by_part THEN array_to_string(list_filter(
        list_transform(string_split(coalesce(r.fitted, ''), ';'), lambda code: trim(code)), lambda code: list_contains(rule.codes, code)), ', ')
      ELSE 'assembly' END AS by
  FROM overhaul_resets r JOIN reset_rules rule ON rule.frame = r.frame AND rule.characteristic = r.characteristic
  WHERE r.unit = $1 AND r.resets AND NOT r.lost AND r.date <= $2::DATE ORDER BY r.characteristic, r.place`;

/** Every overhaul of unit $1, newest first. */
export const unitHistorySql = `
  SELECT overhaul, CAST(date AS VARCHAR) AS date, CAST(unit_hours AS DOUBLE) AS unit_hours, hours_derived::INTEGER AS hours_derived,
    engine, bank, site, workshop, kind, fitted, remarks
  FROM overhauls WHERE unit = $1 ORDER BY date DESC, unit_hours DESC, id DESC`;
