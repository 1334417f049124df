/** Stays of unit $1 that began by $2, in order, with its hours when fitted as given or derived. */
export const unitStaysSql = `
  SELECT i.engine, i.site, i.bank, CAST(i.from_date AS VARCHAR) AS from_date, CAST(i.to_date AS VARCHAR) AS to_date,
    CAST(h.hours AS DOUBLE) AS unit_hours_at_fit, CAST(i.engine_hours_at_fit AS DOUBLE) AS engine_hours_at_fit
  FROM installations i LEFT JOIN installation_hours h USING (id)
  WHERE i.unit = $1 AND i.from_date <= $2::DATE ORDER BY i.from_date, i.id`;

/** Events of the hour meters of the engines that unit $1 sat on, while it sat there, up to $2. */
export const unitMeterEventsSql = `
  SELECT DISTINCT CAST(e.date AS VARCHAR) AS date, e.engine, e.kind, CAST(e.value AS DOUBLE) AS hours
  FROM events e JOIN installations i ON i.engine = e.engine AND (e.site IS NULL OR i.site IS NULL OR e.site = i.site)
  WHERE i.unit = $1 AND e.kind IN ('meter_replaced', 'meter_corrected') AND e.date BETWEEN i.from_date AND coalesce(i.to_date, $2::DATE)
  ORDER BY 1, 2, 3`;

/** Derived hours of unit $1 up to $2: the readings they rest on, and a row for each event that counts since it was fitted. */
export const unitDerivedHoursSql = `
  SELECT o.overhaul, CAST(o.date AS VARCHAR) AS date, d.engine, CAST(o.unit_hours AS DOUBLE) AS unit_hours, CAST(d.hours_at_fit AS DOUBLE) AS unit_hours_at_fit,
    CAST(fit.read_hours AS DOUBLE) AS engine_hours_at_fit, CAST(r.read_hours AS DOUBLE) AS engine_hours, CAST(c.value AS DOUBLE) AS event_hours
  FROM overhauls o JOIN derived_hours d USING (id)
  JOIN continuous_hours r ON r.of_what = 'overhaul' AND r.id = o.id
  JOIN continuous_hours fit ON fit.of_what = 'installation' AND fit.id = d.installation
  LEFT JOIN (
    SELECT c.id, c.event, c.value FROM counted_events c JOIN derived_hours own ON own.id = c.id
      LEFT JOIN counted_events f ON f.of_what = 'installation' AND f.id = own.installation AND f.event = c.event
    WHERE c.of_what = 'overhaul' AND f.event IS NULL) c ON c.id = o.id
  LEFT JOIN events e ON e.id = c.event
  WHERE o.unit = $1 AND o.date <= $2::DATE AND o.hours_derived ORDER BY o.date, o.id, e.date, e.id`;
