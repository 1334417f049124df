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

/**
 * Writes a table of every unit's sister group and returns its name: unit, its number unit_id, group, and the unit's place among all
 * in order of group and unit, counted from 0. Runs are sorted by it, since names would take several times as long.
 */
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
      SELECT u.id AS unit_id, u.unit, g."group", (row_number() OVER (ORDER BY g."group", u.unit) - 1)::INTEGER AS place
      FROM (SELECT ${withLinesSql('unit')} AS unit, ${withLinesSql('"group"')} AS "group" FROM ${rows}) g JOIN units u USING (unit)`,
  );
  return table;
}
