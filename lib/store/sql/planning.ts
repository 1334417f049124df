/** Parts with their stock, one row a part and frame, in order of part. */
export const partsInStockSql = `
  SELECT part, frame, name, resets, CAST(per_unit AS DOUBLE) AS per_unit, CAST(lead_time_weeks AS DOUBLE) AS lead_time_weeks,
    CAST(unit_cost AS DOUBLE) AS unit_cost, currency, CAST(on_hand AS DOUBLE) AS on_hand, CAST(on_order AS DOUBLE) AS on_order, CAST(due AS VARCHAR) AS due
  FROM parts ORDER BY part, frame`;

/** What starts a new run of each series of a frame: part codes and 'assembly', parted by semicolons; null: every assembly. */
export const seriesResetsSql = `
  SELECT r.frame, s.series, s.characteristic, array_to_string(r.codes, ';') AS codes
  FROM reset_rules r JOIN series_of s USING (characteristic) ORDER BY r.frame, s.series`;
