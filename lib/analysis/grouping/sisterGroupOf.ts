import { dutyOf } from './dutyOf';

/** How units are put together for comparison. */
export const groupings = ['frame', 'frame+site', 'frame+duty'] as const;
export type GroupBy = (typeof groupings)[number];

/** True of a text that names a grouping. */
export function isGroupBy(text: string): text is GroupBy {
  return (groupings as readonly string[]).includes(text);
}

/** Sister group of a unit, from its frame, the site where it is and the hours that its engine runs a year. */
export function sisterGroupOf(
  groupBy: GroupBy,
  unit: { readonly frame: string; readonly site: string | null; readonly hoursPerYear: number | null },
): string {
  if (groupBy === 'frame+site') return `${unit.frame} at ${unit.site ?? 'no site'}`;
  if (groupBy === 'frame+duty') return `${unit.frame}, ${dutyOf(unit.hoursPerYear) ?? 'duty not known'}`;
  return unit.frame;
}

/**
 * Name of the table that holds the sister group of every unit.
 *
 * @param ofDay the day (YYYY-MM-DD) where the groups of another day than the open one stand beside them
 */
export function groupTableOf(groupBy: GroupBy, ofDay?: string): string {
  const table = `sisters_by_${groupBy.replace('+', '_')}`;
  return ofDay === undefined ? table : `${table}_on_${ofDay.replaceAll('-', '_')}`;
}
