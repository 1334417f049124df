import type { TableName } from '../records/canonicalTables';
import { builtInCharacteristics } from '../records/characteristics';
import type { InputFile } from '../records/importReport';
import { decodeText } from '../records/intake/decodeText';
import { recogniseFile } from '../records/recogniseFile';

/** A canonical table is told by its first line. */
const headBytes = 65_536;

/** The canonical table that a file's first line shows, or null if it is none. */
export function tableOfHead({ bytes }: InputFile): TableName | null {
  const decoded = decodeText(bytes.subarray(0, headBytes));
  if ('reason' in decoded) return null;
  const recognised = recogniseFile(decoded.bytes, builtInCharacteristics);
  return recognised.kind === 'table' ? recognised.table.name : null;
}
