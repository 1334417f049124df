import { lengthUnitFactorsSql } from '../sql/lengthUnitFactors';

/** Readings that can be placed, in mm (an interval by its middle), with the unit, frame and day of their overhaul. */
export const sizedReadingsSql = `
  CREATE OR REPLACE VIEW sized_readings AS
    SELECT r.id, r.file, r.line, r.overhaul, o.unit, u.frame, o.date, o.unit_hours, o.id AS overhaul_id, r.characteristic, r.stage,
      coalesce(r.clock, '') AS clock, coalesce(r.value, (r.lower + r.upper) / 2) * f.factor AS value_mm
    FROM readings r JOIN ${lengthUnitFactorsSql} ON f.uom = r.uom JOIN overhauls o ON o.overhaul = r.overhaul JOIN units u ON u.unit = o.unit`;
