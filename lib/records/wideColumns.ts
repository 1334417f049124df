import { type Characteristic, clockPositions } from './characteristics';
import { type LengthUnit, lengthUnits } from './lengthUnits';

/** A reading column of a wide sheet: which reading stands under it, in which unit of measure. */
export interface WideColumn {
  readonly column: string;
  readonly characteristic: string;
  readonly stage: 'found' | 'left';
  readonly clock: string | null;
  readonly uom: LengthUnit;
}

/**
 * Reads a column name of the form `<characteristic>_<found|left>[_<12|3|6|9>][_<uom>]`, mm if no uom stands there;
 * null if the name has another form or its characteristic is not known.
 */
export function wideColumn(column: string, characteristics: readonly Characteristic[]): WideColumn | null {
  const name = column.trim().toLowerCase();
  for (const characteristic of characteristics) {
    const prefix = `${characteristic.code.toLowerCase()}_`;
    if (!name.startsWith(prefix)) continue;
    const [stage, ...rest] = name.slice(prefix.length).split('_');
    if (stage !== 'found' && stage !== 'left') continue;
    const clock = clockPositions.find((position) => position === rest[0]) ?? null;
    const afterClock = clock === null ? rest : rest.slice(1);
    const uom = afterClock.length === 0 ? 'mm' : lengthUnits.find((unit) => unit === afterClock.join('_'));
    if (uom === undefined || (characteristic.shape === 'four_clock') !== (clock !== null)) continue;
    return { column, characteristic: characteristic.code, stage, clock, uom };
  }
  return null;
}
