import { lengthUnitFactorsSql } from '../sql/lengthUnitFactors';

/**
 * Table of the readings that can be placed, in mm (an interval by its middle), with the unit, frame and day of their overhaul:
 * all by number, so that they are compared fast; frames are numbered in frame_numbers.
 */
export const sizedReadingsSql = `
  CREATE OR REPLACE TABLE frame_numbers AS SELECT frame, (row_number() OVER ())::INTEGER AS number FROM (SELECT DISTINCT frame FROM units);
  CREATE OR REPLACE TABLE sized_readings AS
    WITH placed AS (
      SELECT o.id AS overhaul_id, o.overhaul, u.id AS unit_id, n.number AS frame, o.date, o.unit_hours
      FROM overhauls o JOIN units u ON u.unit = o.unit JOIN frame_numbers n ON n.frame = u.frame)
    SELECT r.file, r.line, p.overhaul_id, p.unit_id, p.frame, p.date, p.unit_hours, r.characteristic, r.stage,
      coalesce(CAST(r.clock AS VARCHAR), '') AS clock, coalesce(r.value, (r.lower + r.upper) / 2) * f.factor AS value_mm
    FROM readings r JOIN (SELECT CAST(uom AS readings_uom) AS uom, factor FROM ${lengthUnitFactorsSql}) f ON f.uom = r.uom JOIN placed p ON p.overhaul = r.overhaul`;

/** SQL for FROM: rows about an overhaul o and its unit, by their numbers, with the names of both. */
export function withNamesSql(rows: string): string {
  return `(SELECT d.*, o.overhaul, o.unit FROM ${rows} d JOIN overhauls o ON o.id = d.overhaul_id)`;
}
