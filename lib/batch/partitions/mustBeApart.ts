import type { Analysis } from '../../analysis/openAnalysis';
import type { Bundle } from './bundles';

/**
 * Whether folders that were analysed together must be analysed one by one after all: one of them holds nothing that can be used, or
 * a sister group has units of several. Both are for the fleet to be told, and only a folder by itself shows it.
 */
export async function mustBeApart(
  { connector, fleet, units }: Analysis,
  { folders }: Bundle,
): Promise<boolean> {
  if (folders.length < 2) return false;
  const folderOf = (file: string) => file.slice(0, file.lastIndexOf('/'));
  const used = new Set(
    fleet.files.filter(({ readingsUsed }) => readingsUsed > 0).map(({ file }) => folderOf(file)),
  );
  if (!folders.every((folder) => used.has(folder))) return true;
  const rows = await connector.query('SELECT DISTINCT unit, file::VARCHAR AS file FROM overhauls');
  const ofGroup = new Map<string, string>();
  for (const { unit, file } of rows) {
    const group = units.get(String(unit))?.row.group ?? '';
    const folder = folderOf(String(file));
    if ((ofGroup.get(group) ?? folder) !== folder) return true;
    ofGroup.set(group, folder);
  }
  return false;
}
