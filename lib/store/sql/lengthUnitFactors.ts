import { type LengthUnit, millimetresPer } from '../../records/lengthUnits';
import { quoted } from './quoted';

const factors = (Object.keys(millimetresPer) as LengthUnit[])
  .map((unit) => `(${quoted(unit)}, ${millimetresPer[unit]})`)
  .join(', ');

/** Rows f(uom, factor): millimetres in each unit of measure, to be joined with readings. */
export const lengthUnitFactorsSql = `(VALUES ${factors}) AS f(uom, factor)`;
