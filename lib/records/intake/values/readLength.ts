import type { CellReading } from '../types';
import { lengthUnitOfCell } from './lengthUnitOfCell';
import type { SettledSign } from './numeral';
import { readQuantity } from './readQuantity';

/**
 * Reads a length from a cell's text, in the column's own unit, under the column's decimal sign. A unit of measure must
 * have been taken out before (lengthUnitOfCell); one that still stands in the text is held. Negative lengths are
 * numbers: whether a characteristic may be negative is not this parser's to know.
 */
export function readLength(text: string, sign: SettledSign): CellReading {
  const unit = lengthUnitOfCell(text);
  if (unit?.kind === 'unit') return { kind: 'held', reason: `a unit of measure in the cell: ${unit.uom}` };
  return unit ?? readQuantity(text, sign);
}
