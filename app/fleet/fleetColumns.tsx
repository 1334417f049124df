import Link from 'next/link';
import type { MarginRow } from '../../lib/analysis/types';
import {
  forecastReach,
  formatCount,
  formatDate,
  formatHours,
  formatLevel,
  formatMm,
} from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { unitAddress } from '../address/unitAddress';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { hasForecast } from '../words/marginWords';
import { rowRemark } from '../words/rowRemark';
import { capitalised } from '../words/seriesName';
import { chanceWords, type FleetRow } from './fleetRows';

const noPlan = 'no overhaul planned';

function noForecast(row: FleetRow): string {
  const { deciding } = row.outlook;
  if (deciding === null) return 'no limit, no verdict';
  return hasForecast(deciding) ? `beyond ${forecastReach()}` : rewritten(deciding.reason ?? 'no forecast');
}

function place(row: FleetRow): string | null {
  const { engine, bank } = row.unit;
  if (engine === null) return null;
  return bank === null ? engine : `${engine} / ${bank}`;
}

type Point = (margin: MarginRow) => { readonly hours: number | null; readonly date: string | null };

/** A date by which the limit is met; where the hours per year are not known, the hours from now. */
function pointColumn(id: 'early' | 'median' | 'late', header: string, point: Point): DataColumn<FleetRow> {
  const pointOf = (row: FleetRow) => (row.outlook.deciding === null ? null : point(row.outlook.deciding));
  const text = (row: FleetRow) => {
    const found = pointOf(row);
    if (found === null || found.hours === null) return null;
    return found.date === null ? `in ${formatHours(found.hours)}` : formatDate(found.date);
  };
  return {
    id,
    header,
    term: id,
    numeric: true,
    value: (row) => pointOf(row)?.hours ?? null,
    cell: (row) => <Written text={text(row)} reason={noForecast(row)} />,
    saved: [
      { header: `${header}, hours from now`, value: (row) => pointOf(row)?.hours ?? null },
      { header: `${header}, date`, value: (row) => pointOf(row)?.date ?? null },
    ],
  };
}

/** Columns of the Fleet table; links lead to the deciding series, or to the one that is filtered for. */
export function fleetColumns(series: string): readonly DataColumn<FleetRow>[] {
  return [
    {
      id: 'unit',
      header: 'Unit',
      term: 'unit',
      rowHeader: true,
      value: (row) => row.unit.unit,
      cell: (row) => (
        <Link
          href={unitAddress(row.unit.unit, series || (row.outlook.deciding?.series ?? null))}
          prefetch={false}
        >
          {row.unit.unit}
        </Link>
      ),
    },
    { id: 'site', header: 'Site', value: (row) => row.unit.site },
    { id: 'place', header: 'Engine / bank', term: 'position', value: place },
    {
      id: 'hours',
      header: 'Hours now',
      unit: 'h',
      numeric: true,
      value: (row) => row.unit.hoursNow,
      cell: (row) => <Written text={formatHours(row.unit.hoursNow)} reason="hours cannot be derived" />,
    },
    {
      id: 'decides',
      header: 'Series that decides',
      term: 'series',
      value: (row) => row.decidingName,
      cell: (row) => (
        <Written text={row.decidingName === null ? null : capitalised(row.decidingName)} reason="no limit" />
      ),
    },
    {
      id: 'level',
      header: 'Level ± SD',
      term: 'level',
      numeric: true,
      saved: [
        { header: 'Level, mm', value: (row) => row.outlook.deciding?.level_mm ?? null },
        { header: 'SD of the level, mm', value: (row) => row.outlook.deciding?.levelSd_mm ?? null },
      ],
      value: (row) => row.outlook.deciding?.level_mm ?? null,
      cell: (row) => (
        <Written
          text={formatLevel(row.outlook.deciding?.level_mm ?? null, row.outlook.deciding?.levelSd_mm ?? null)}
          reason={noForecast(row)}
        />
      ),
    },
    {
      id: 'margin',
      header: 'Margin',
      term: 'margin',
      unit: 'mm',
      numeric: true,
      value: (row) => row.outlook.deciding?.margin_mm ?? null,
      cell: (row) => (
        <Written
          text={formatMm(row.outlook.deciding?.margin_mm ?? null, row.outlook.deciding?.levelSd_mm ?? null)}
          reason={noForecast(row)}
        />
      ),
    },
    pointColumn('early', 'Early', (margin) => ({ hours: margin.hoursEarly, date: margin.dateEarly })),
    pointColumn('median', 'Median', (margin) => ({ hours: margin.hoursMedian, date: margin.dateMedian })),
    pointColumn('late', 'Late', (margin) => ({ hours: margin.hoursLate, date: margin.dateLate })),
    {
      id: 'next',
      header: 'Next overhaul',
      term: 'overhaul',
      numeric: true,
      value: (row) => row.unit.nextOverhaulDate,
      cell: (row) => <Written text={formatDate(row.unit.nextOverhaulDate)} reason={noPlan} />,
    },
    {
      id: 'chance',
      header: 'Chance then',
      term: 'chance',
      unit: '0 to 1',
      numeric: true,
      value: (row) => row.outlook.chanceAtNextOverhaul,
      cell: (row) => (
        <Written
          text={chanceWords(row)}
          reason={row.unit.nextOverhaulDate === null ? noPlan : noForecast(row)}
        />
      ),
    },
    {
      id: 'overhauls',
      header: 'Overhauls',
      numeric: true,
      value: (row) => row.unit.overhauls,
      cell: (row) => formatCount(row.unit.overhauls),
    },
    {
      id: 'remark',
      header: 'Reason or caution',
      text: 'long',
      value: (row) => rowRemark(row),
      cell: (row) => <Written text={rowRemark(row)} reason="nothing to remark" />,
    },
  ];
}
