import Link from 'next/link';
import type { Decision } from '../../lib/analysis/decisions/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatChance, formatDate, formatHours } from '../../lib/charts/format';
import { unitAddress } from '../address/unitAddress';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { actionWords, partsWords, whyWords } from '../words/decisionWords';

const unitColumn: DataColumn<Decision> = {
  id: 'unit',
  header: 'Unit',
  rowHeader: true,
  value: ({ unit }) => unit,
  cell: ({ unit, drivenBy }) => (
    <Link href={unitAddress(unit, drivenBy === 'rated life' ? null : drivenBy)} prefetch={false}>
      {unit}
    </Link>
  ),
};

function chance(
  id: string,
  header: string,
  value: (decision: Decision) => number | null,
): DataColumn<Decision> {
  return {
    id,
    header,
    numeric: true,
    value,
    cell: (decision) => (
      <Written
        text={value(decision) === null ? null : formatChance(value(decision))}
        reason={decision.reason ?? 'no limit with a forecast, or no following overhaul planned'}
      />
    ),
  };
}

/** Columns of what to do at planned overhauls; with the unit where several are listed. */
export function decisionColumns(
  characteristics: FleetResult['characteristics'],
  withUnit: boolean,
): readonly DataColumn<Decision>[] {
  return [
    ...(withUnit ? [unitColumn] : []),
    {
      id: 'date',
      header: 'Overhaul',
      numeric: true,
      rowHeader: !withUnit,
      value: ({ date }) => date,
      cell: ({ date, reason }) => (
        <Written text={date === null ? null : formatDate(date)} reason={reason ?? 'no overhaul is planned'} />
      ),
    },
    {
      id: 'hours',
      header: 'Unit hours then',
      numeric: true,
      value: ({ unitHours }) => unitHours,
      cell: ({ unitHours }) => (
        <Written
          text={unitHours === null ? null : formatHours(unitHours)}
          reason="hours a year are not known"
        />
      ),
    },
    { id: 'action', header: 'Advice', value: actionWords },
    chance('before', 'Chance before it', ({ chanceBefore }) => chanceBefore),
    chance('running', 'Chance if run on', ({ chanceRunningOn }) => chanceRunningOn),
    {
      id: 'why',
      header: 'Why',
      text: true,
      value: (decision) => whyWords(decision, characteristics),
      cell: (decision) => <Written text={whyWords(decision, characteristics)} reason="no limit comes near" />,
    },
    {
      id: 'parts',
      header: 'Parts',
      text: true,
      value: partsWords,
      cell: (decision) => <Written text={partsWords(decision)} reason="none" />,
    },
  ];
}
