import type { CellOutcome } from '../../records/intake/cellOutcome';
import type { DistinctText } from '../../records/intake/interpretColumn';
import type { Connector } from '../Connector';

const encoder = new TextEncoder();

/** Distinct texts of a column of the sheet with their number of cells; empty cells left out. */
export async function distinctTexts(connector: Connector, index: number): Promise<readonly DistinctText[]> {
  const rows = await connector.query(
    `SELECT c${index} AS text, count(*)::INTEGER AS cells FROM sheet WHERE nullif(trim(c${index}), '') IS NOT NULL GROUP BY 1 ORDER BY min(line::INTEGER)`,
  );
  return rows.map((row) => ({ text: String(row.text), cells: Number(row.cells) }));
}

/** Gives the distinct texts of a column of the sheet, counted once however often they are asked for. */
export type TextsOf = (index: number) => Promise<readonly DistinctText[]>;

/** The distinct texts of the columns of the sheet, whose lines no longer change. */
export function textsCountedOnce(connector: Connector): TextsOf {
  const counted = new Map<number, readonly DistinctText[]>();
  return async (index) => {
    const texts = counted.get(index) ?? (await distinctTexts(connector, index));
    counted.set(index, texts);
    return texts;
  };
}

/** Puts the outcomes of a column's distinct texts into table `outcome_<index>`, to be joined with the sheet. */
export async function loadOutcomes(
  connector: Connector,
  index: number,
  outcomes: readonly CellOutcome[],
): Promise<void> {
  const columns = ['text', 'outcome', 'value', 'lower', 'upper', 'uom', 'note'] as const;
  if (outcomes.length === 0) {
    await connector.run(
      `CREATE TABLE outcome_${index} (${columns.map((name) => `${name} VARCHAR`).join(', ')})`,
    );
    return;
  }
  const body = outcomes.map((one) => columns.map((name) => one[name] ?? '').join('\u001f')).join('\n');
  await connector.loadText(`outcome_${index}`, columns, encoder.encode(`${body}\n`));
}
