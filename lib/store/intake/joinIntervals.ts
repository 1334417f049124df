import type { IntervalColumns } from '../../records/intake/intervalColumns';
import type { Connector } from '../Connector';

/**
 * Adds a column to the sheet for every reading in two columns, with both ends as a fitter would write them in one cell:
 * 'goes 0.40, does not go 0.45'. Two cells with the same word in place of a number become that word.
 */
export async function joinIntervals(
  connector: Connector,
  intervals: readonly IntervalColumns[],
): Promise<void> {
  for (const { meaning, lower, upper } of intervals) {
    const cell = (index: number | null) => (index === null ? 'NULL' : `nullif(trim(c${index}), '')`);
    await connector.run(`ALTER TABLE sheet ADD COLUMN c${meaning.index} VARCHAR;
      UPDATE sheet SET c${meaning.index} = CASE
        WHEN lower(${cell(lower)}) = lower(${cell(upper)}) AND NOT regexp_matches(${cell(lower)}, '[0-9]') THEN ${cell(lower)}
        ELSE nullif(concat_ws(', ', 'goes ' || ${cell(lower)}, 'does not go ' || ${cell(upper)}), '') END`);
  }
}
