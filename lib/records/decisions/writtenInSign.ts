import { lengthUnitOfCell } from '../intake/values/lengthUnitOfCell';
import type { SettledSign } from '../intake/values/numeral';
import { readQuantity } from '../intake/values/readQuantity';

const swapped: Readonly<Record<string, string>> = { '.': ',', ',': '.' };

/**
 * A number or interval as a column with that decimal sign writes it: signs are exchanged where the text can be read with the
 * other one only, so that one cell typed otherwise does not leave the sign of its whole column open.
 */
export function writtenInSign(text: string, sign: SettledSign): string {
  const unit = lengthUnitOfCell(text);
  const bare = unit?.kind === 'unit' ? unit.text : text;
  const canRead = (with_: SettledSign) => ['number', 'interval'].includes(readQuantity(bare, with_).kind);
  if (canRead(sign) || !canRead(sign === 'point' ? 'comma' : 'point')) return text;
  return text.replaceAll(/[.,]/g, (mark) => swapped[mark] ?? mark);
}
