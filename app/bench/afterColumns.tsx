import type { SeriesAfter } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { forecastReach, formatChance, formatHours, formatLength, rateUnit } from '../../lib/charts/format';
import type { LengthUnit } from '../../lib/records/lengthUnits';
import type { DataColumn } from '../table/DataColumn';
import { NoValue } from '../table/NoValue';
import { lengthIn, unitNames } from '../words/benchWords';
import { seriesName } from '../words/seriesName';

/** Columns of what an overhaul did, a row a series and limit. */
export function afterColumns(
  characteristics: FleetResult['characteristics'],
  uom: LengthUnit,
  ratedLife_h: number | null,
): readonly DataColumn<SeriesAfter>[] {
  const unit = unitNames[uom];
  const length = (
    id: string,
    header: string,
    value: (row: SeriesAfter) => number | null,
    reason: string,
  ): DataColumn<SeriesAfter> => ({
    id,
    header: `${header}, ${unit}`,
    value,
    numeric: true,
    // Shown in the unit typed, saved in the one that it is held in.
    saved: [{ header: `${header}, mm`, value }],
    cell: (row) => {
      const known = value(row);
      return known === null ? <NoValue reason={reason} /> : lengthIn(known, uom);
    },
  });
  const chance = (
    id: string,
    header: string,
    value: (row: SeriesAfter) => number | null,
  ): DataColumn<SeriesAfter> => ({
    id,
    header,
    value,
    numeric: true,
    unit: '0 to 1',
    cell: (row) => {
      const known = value(row);
      return known === null ? (
        <NoValue reason={row.reason ?? 'no interval in the plan, or no reading'} />
      ) : (
        formatChance(known)
      );
    },
  });
  const rate = (
    id: string,
    header: string,
    value: (row: SeriesAfter) => number | null,
  ): DataColumn<SeriesAfter> => ({
    id,
    header: `${header}, ${rateUnit()}`,
    value,
    numeric: true,
    cell: (row) => {
      const known = value(row);
      return known === null ? <NoValue reason="the run has no earlier reading" /> : formatLength(known);
    },
  });
  const median = (
    id: string,
    header: string,
    value: (row: SeriesAfter) => number | null,
    isKnown: (row: SeriesAfter) => boolean,
  ): DataColumn<SeriesAfter> => ({
    id,
    header,
    value,
    numeric: true,
    unit: 'h',
    cell: (row) => {
      if (!isKnown(row)) return <NoValue reason={row.reason ?? 'no reading of it as typed'} />;
      const known = value(row);
      if (known === null) return `beyond ${forecastReach()}`;
      return known === ratedLife_h ? `end of rated life, ${formatHours(known)}` : formatHours(known);
    },
  });
  return [
    {
      id: 'series',
      header: 'Series',
      rowHeader: true,
      value: ({ series, limitKind }) =>
        `${seriesName(series, characteristics)}${limitKind === null ? '' : `, ${limitKind} limit`}`,
    },
    length(
      'wear',
      'Wear in the run',
      ({ wear_mm }) => wear_mm,
      'the run has no earlier reading, or none as found',
    ),
    rate('wearRate', 'Its rate', ({ wear_mm_per_10kh }) => wear_mm_per_10kh),
    rate('expectedRate', 'Rate foretold', ({ expectedWear_mm_per_10kh }) => expectedWear_mm_per_10kh),
    length(
      'reassembly',
      'As left less as found',
      ({ reassembly_mm }) => reassembly_mm,
      'both stages are needed',
    ),
    chance(
      'chanceBefore',
      'Chance past its limit at the overhaul after this one, before',
      ({ chanceBefore }) => chanceBefore,
    ),
    chance('chanceAfter', 'Chance past its limit then, after', ({ chanceAfter }) => chanceAfter),
    median(
      'medianBefore',
      'Meets its limit (median), before',
      ({ medianBefore_h }) => medianBefore_h,
      ({ chanceBefore, medianBefore_h }) => chanceBefore !== null || medianBefore_h !== null,
    ),
    median(
      'medianAfter',
      'Meets its limit (median), after',
      ({ medianAfter_h }) => medianAfter_h,
      ({ chanceAfter, medianAfter_h }) => chanceAfter !== null || medianAfter_h !== null,
    ),
  ];
}
