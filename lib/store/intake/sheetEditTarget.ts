import { agreedSign } from '../../records/intake/interpretColumn';
import type { ColumnMeaning } from '../../records/intake/types';
import type { Connector } from '../Connector';
import { type EditTarget, intervalCells } from '../rulings/editTarget';
import { distinctTexts } from './outcomeTable';
import { byRole } from './sheetSql';

const numberRoles: ReadonlySet<string> = new Set([
  'reading',
  'value',
  'lower',
  'upper',
  'unit_hours',
  'engine_hours',
]);

/** The cells of a foreign sheet as edits find them: by its own names, numbers in the decimal sign that each column shows. */
export async function sheetEditTarget(
  connector: Connector,
  file: string,
  meanings: readonly ColumnMeaning[],
): Promise<EditTarget> {
  const texts = new Map<number, readonly string[]>();
  const [given] = await connector.query(
    `SELECT count(*)::INTEGER AS n FROM rulings WHERE ruling = 'edit' AND file = $1`,
    [file],
  );
  for (const { index, role } of meanings)
    if (given?.n !== 0 && numberRoles.has(role))
      texts.set(
        index,
        (await distinctTexts(connector, index)).map(({ text }) => text),
      );
  const agreed = agreedSign([...texts.values()]);
  const signOf = (column: number) => {
    const shown = agreedSign([texts.get(column) ?? []]);
    return texts.has(column) ? (shown ?? agreed) : null;
  };
  const roles = byRole(meanings);
  const [value, lower, upper] = [roles.get('value'), roles.get('lower'), roles.get('upper')];
  const hasEnds = value !== undefined && lower !== undefined && upper !== undefined;
  return {
    file,
    table: 'sheet',
    lineColumn: 'line',
    names: meanings.map(({ name }) => name),
    joined: hasEnds ? [intervalCells(value.name, [value.index, lower.index, upper.index])] : [],
    signOf,
  };
}
