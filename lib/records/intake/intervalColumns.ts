import type { ColumnMeaning } from './types';

/** A reading of a wide sheet that stands in two columns, the feeler that goes and the one that does not. */
export interface IntervalColumns {
  /** The reading, under a column of its own behind the sheet's. */
  readonly meaning: ColumnMeaning;
  /** Positions of the columns; null where the sheet lacks one of them. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * Puts the columns of both ends of a reading together: the meanings without these columns, and a reading for each pair.
 *
 * @param columns number of columns in the sheet
 */
export function intervalColumns(
  meanings: readonly ColumnMeaning[],
  columns: number,
): { readonly others: readonly ColumnMeaning[]; readonly intervals: readonly IntervalColumns[] } {
  const isEnd = ({ role, characteristic }: ColumnMeaning) =>
    (role === 'lower' || role === 'upper') && characteristic !== null;
  const open: { lower: ColumnMeaning | null; upper: ColumnMeaning | null }[] = [];
  for (const end of meanings.filter(isEnd)) {
    const role = end.role as 'lower' | 'upper';
    const pair = open.find((one) => {
      const other = role === 'lower' ? one.upper : one.lower;
      return one[role] === null && other !== null && keyOf(other) === keyOf(end);
    });
    if (pair === undefined) open.push({ lower: null, upper: null, [role]: end });
    else pair[role] = end;
  }
  return {
    others: meanings.filter((meaning) => !isEnd(meaning)),
    intervals: open.map(({ lower, upper }, at) => ({
      meaning: together(lower, upper, columns + at),
      lower: lower?.index ?? null,
      upper: upper?.index ?? null,
    })),
  };
}

function keyOf({ characteristic, stage, clock }: ColumnMeaning): string {
  return [characteristic, stage, clock].join(' ');
}

function together(lower: ColumnMeaning | null, upper: ColumnMeaning | null, index: number): ColumnMeaning {
  const ends = [lower, upper].filter((end) => end !== null);
  const uoms = new Set(ends.map(({ uom }) => uom).filter((uom) => uom !== null));
  const [uom] = uoms;
  return {
    ...(ends[0] as ColumnMeaning),
    index,
    name: ends.map(({ name }) => name).join(' & '),
    role: 'reading',
    uom: uoms.size === 1 ? (uom ?? null) : null,
    uomUnknown: uoms.size > 1 || ends.some(({ uomUnknown }) => uomUnknown),
    sureness: Math.min(...ends.map(({ sureness }) => sureness)),
  };
}
