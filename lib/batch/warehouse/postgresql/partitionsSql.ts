/**
 * Partitions of readings with those of overhauls that hold the same units: both tables must be parted by the unit alone
 * and at the same bounds. No row where they are not: the tables are then asked as a whole.
 */
export const partitionsSql = `
  WITH part AS (
    SELECT i.inhparent AS parent, i.inhrelid::regclass::text AS name, pg_get_expr(c.relpartbound, c.oid) AS bound
    FROM pg_inherits i JOIN pg_class c ON c.oid = i.inhrelid
    WHERE i.inhparent IN (to_regclass('readings'), to_regclass('overhauls')) AND pg_get_partkeydef(i.inhparent) IN ('HASH (unit)', 'RANGE (unit)', 'LIST (unit)')),
  pair AS (
    SELECT r.name AS readings, o.name AS overhauls
    FROM part r JOIN part o ON r.parent = to_regclass('readings') AND o.parent = to_regclass('overhauls') AND r.bound = o.bound)
  SELECT * FROM pair
  WHERE pg_get_partkeydef(to_regclass('readings')) = pg_get_partkeydef(to_regclass('overhauls'))
    AND 2 * (SELECT count(*) FROM pair) = (SELECT count(*) FROM part)
  ORDER BY readings`;
