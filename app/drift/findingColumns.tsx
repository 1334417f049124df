import type { DriftFinding } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatCount, formatFixed } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { unitLinkColumn } from '../table/unitLinkColumn';
import { patternWords, rateWords, sideWords, strongestWords } from '../words/driftSentence';
import { seriesName } from '../words/seriesName';

/** Columns of the findings of drift. */
export function findingColumns(
  characteristics: FleetResult['characteristics'],
): readonly DataColumn<DriftFinding>[] {
  return [
    unitLinkColumn(({ series }) => series),
    {
      id: 'series',
      header: 'Series',
      term: 'series',
      value: ({ series }) => seriesName(series, characteristics),
    },
    { id: 'side', header: 'Reads', value: sideWords },
    { id: 'since', header: 'Since', numeric: true, date: true, value: ({ sinceDate }) => sinceDate },
    { id: 'last', header: 'Last signal', numeric: true, date: true, value: ({ lastDate }) => lastDate },
    {
      id: 'chance',
      header: 'As strong, by chance',
      unit: 'a year',
      value: ({ byChance_per_year }) => byChance_per_year,
      cell: ({ byChance_per_year }) => rateWords(byChance_per_year),
    },
    { id: 'pattern', header: 'After reassembly', text: true, value: patternWords },
    { id: 'strongest', header: 'Strongest signal', value: strongestWords },
    {
      id: 'signals',
      header: 'Signals (by chance)',
      term: 'signal',
      numeric: true,
      saved: [
        { header: 'Signals', value: ({ signals }) => signals.length },
        { header: 'Signals by chance', value: ({ expectedFalse }) => expectedFalse },
      ],
      value: ({ signals }) => signals.length,
      cell: ({ signals, expectedFalse }) =>
        `${formatCount(signals.length)} (${formatFixed(expectedFalse, 2)})`,
    },
  ];
}
