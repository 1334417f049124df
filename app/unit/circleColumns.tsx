import type { CircleSet, ClockReadings } from '../../lib/analysis/circle/types';
import { formatLevel, formatMm } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { offsetWords } from '../words/circleWords';

const notRead = 'not read';
const tooFew = 'fewer than three positions were read';

function positionColumn(key: keyof ClockReadings, hour: string): DataColumn<CircleSet> {
  return {
    id: key,
    header: `${hour} o’clock`,
    numeric: true,
    value: ({ readings }) => readings[key],
    cell: ({ readings }) => (
      <Written text={readings[key] === null ? null : formatMm(readings[key])} reason={notRead} />
    ),
  };
}

/** Columns of clock readings and what they say of the circle. */
export const circleColumns: readonly DataColumn<CircleSet>[] = [
  { id: 'date', header: 'Date', rowHeader: true, value: ({ date }) => date },
  { id: 'stage', header: 'Stage', value: ({ stage }) => (stage === 'found' ? 'as found' : 'as left') },
  positionColumn('c12', '12'),
  positionColumn('c3', '3'),
  positionColumn('c6', '6'),
  positionColumn('c9', '9'),
  {
    id: 'mean',
    header: 'Mean ± SD',
    numeric: true,
    value: ({ positions }) => positions?.mean_mm ?? null,
    cell: ({ positions, uncertainty }) => (
      <Written
        text={positions === null ? null : formatLevel(positions.mean_mm, uncertainty?.mean_mm ?? null)}
        reason={tooFew}
      />
    ),
  },
  {
    id: 'offset',
    header: 'Offset ± SD',
    value: ({ positions }) => positions?.offset_mm ?? null,
    cell: (set) => <Written text={offsetWords(set)} reason={tooFew} />,
  },
  {
    id: 'ovality',
    header: 'Ovality ± SD',
    numeric: true,
    value: ({ positions }) => positions?.ovality_mm ?? null,
    cell: ({ positions, uncertainty }) => (
      <Written
        text={
          positions === null || positions.ovalityAssumedZero
            ? null
            : formatLevel(positions.ovality_mm, uncertainty?.ovality_mm ?? null)
        }
        reason={positions === null ? tooFew : 'three positions show none'}
      />
    ),
  },
  {
    id: 'smallest',
    header: 'Smallest gap ± SD',
    numeric: true,
    value: ({ positions }) => positions?.smallestGap_mm ?? null,
    cell: ({ positions, uncertainty }) => (
      <Written
        text={
          positions === null
            ? null
            : formatLevel(positions.smallestGap_mm, uncertainty?.smallestGap_mm ?? null)
        }
        reason={tooFew}
      />
    ),
  },
];
