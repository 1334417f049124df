import { type Connector, normalisedText } from '../store/Connector';
import { onOneLine, withLinesSql } from '../store/oneLine';
import { type UnitPosition, unitPositions, unitsOpenedAfter } from '../store/questions';
import type { UnitNow } from './unitNow';

/**
 * Where every unit sits on the day, with its plan. The plan names the overhaul after all that are on record: a unit that was
 * opened after the day is taken as planned at its interval instead.
 */
export async function positionsOn(connector: Connector, asOf: string): Promise<readonly UnitPosition[]> {
  const [positions, openedLater] = [
    await unitPositions(connector, asOf),
    await unitsOpenedAfter(connector, asOf),
  ];
  return positions.map((position) =>
    openedLater.has(position.unit) ? { ...position, next_overhaul_date: null } : position,
  );
}

/** Writes a table of every unit's sister group and returns its name. */
export async function writeGroups(
  connector: Connector,
  table: string,
  units: ReadonlyMap<string, UnitNow>,
): Promise<string> {
  const body = [...units.values()].map(({ row }) => `${onOneLine(row.unit)}\u001f${onOneLine(row.group)}\n`);
  await connector.runOnText(
    normalisedText(new TextEncoder().encode(body.join(''))),
    ['unit', 'group'],
    (rows) => `CREATE OR REPLACE TABLE ${table} AS
      SELECT ${withLinesSql('unit')} AS unit, ${withLinesSql('"group"')} AS "group" FROM ${rows}`,
  );
  return table;
}
