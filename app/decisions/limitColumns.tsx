import type { SeriesDecision } from '../../lib/analysis/decisions/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatMm } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { actionWords, limitWhyWords } from '../words/decisionWords';
import { seriesName } from '../words/seriesName';
import { chanceColumn } from './chanceColumn';

const notKnown = 'not known';

/** Columns of what each limit asks for at one overhaul. */
export function limitColumns(
  characteristics: FleetResult['characteristics'],
): readonly DataColumn<SeriesDecision>[] {
  return [
    {
      id: 'series',
      header: 'Series',
      rowHeader: true,
      value: ({ series }) => seriesName(series, characteristics),
    },
    {
      id: 'limit',
      header: 'Limit',
      numeric: true,
      saved: [
        { header: 'Limit, kind', value: ({ limitKind }) => limitKind },
        { header: 'Limit, mm', value: ({ limit_mm }) => limit_mm },
      ],
      value: ({ limit_mm }) => limit_mm,
      cell: ({ limitKind, limit_mm }) => `${limitKind} ${formatMm(limit_mm)}`,
    },
    { id: 'action', header: 'Advice', value: actionWords },
    chanceColumn('before', 'Chance before it', ({ chanceBefore }) => chanceBefore, notKnown),
    chanceColumn('running', 'Chance if run on', ({ chanceRunningOn }) => chanceRunningOn, notKnown),
    chanceColumn('renewed', 'Chance if renewed', ({ chanceRenewed }) => chanceRenewed, notKnown),
    {
      id: 'why',
      header: 'Why',
      text: true,
      value: limitWhyWords,
      cell: (one) => <Written text={limitWhyWords(one)} reason="the chances say it" />,
    },
  ];
}
