/** Frame of units that no file states one for. */
export const unknownFrame = 'frame not given';

/** Overhauls of a unit that units.csv does not list, though it lists others, and no sheet states a frame for. */
export const overhaulsOfUnknownUnitSql = `
  SELECT id, 'unit' AS column_name, unit AS raw, 'no unit of that name in units.csv: correct the name or add the unit there' AS reason
  FROM overhauls WHERE unit NOT IN (SELECT unit FROM units UNION SELECT unit FROM sheet_frames) AND (SELECT count(*) FROM units) > 0`;

/** Adds the units that only sheets or overhauls name, so that nothing measured is lost; each is listed as interpreted. */
export const addUnitsFromOverhaulsSql = `
  CREATE TABLE added_units AS
    SELECT o.unit, coalesce(any_value(s.frame ORDER BY s.line), '${unknownFrame}') AS frame, count(s.frame) > 0 AS from_sheet,
      arg_min(o.file, o.id) AS file, arg_min(o.line, o.id) AS line
    FROM overhauls o LEFT JOIN sheet_frames s ON s.unit = o.unit
    WHERE o.unit NOT IN (SELECT unit FROM units) GROUP BY o.unit;
  INSERT INTO problems SELECT 'overhauls', file, line, 'unit', unit,
      'no units.csv and no frame in the sheet: the unit is taken in without a frame, so it has no limits', 'interpreted'
    FROM added_units WHERE NOT from_sheet;
  INSERT INTO units (id, file, line, unit, frame)
    SELECT (SELECT coalesce(max(id), 0) FROM units) + row_number() OVER (ORDER BY unit), file, line, unit, frame FROM added_units;`;
