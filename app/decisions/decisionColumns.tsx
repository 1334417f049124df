import type { Decision } from '../../lib/analysis/decisions/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatDate, formatHours } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { unitLinkColumn } from '../table/unitLinkColumn';
import { Written } from '../table/Written';
import { actionWords, partsWords, whyWords } from '../words/decisionWords';
import { chanceColumn } from './chanceColumn';

const unitColumn = unitLinkColumn<Decision>(({ drivenBy }) => (drivenBy === 'rated life' ? null : drivenBy));

const noChance = 'no limit with a forecast, or no following overhaul planned';

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
      term: 'overhaul',
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
      unit: 'h',
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
    chanceColumn('before', 'Chance before it', ({ chanceBefore }) => chanceBefore, noChance),
    chanceColumn('running', 'Chance if run on', ({ chanceRunningOn }) => chanceRunningOn, noChance),
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
