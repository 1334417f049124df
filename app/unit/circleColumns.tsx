import type { CircleSet, ClockReadings } from '../../lib/analysis/circle/types';
import { formatLevel, formatMm } from '../../lib/charts/format';
import type { DataColumn, SavedColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { directionWords, offsetWords } from '../words/circleWords';

const notRead = 'not read';
const tooFew = 'fewer than three positions were read';

function positionColumn(key: keyof ClockReadings, hour: string): DataColumn<CircleSet> {
  return {
    id: key,
    header: `${hour} o’clock`,
    unit: 'mm',
    numeric: true,
    value: ({ readings }) => readings[key],
    cell: ({ readings }) => (
      <Written text={readings[key] === null ? null : formatMm(readings[key])} reason={notRead} />
    ),
  };
}

type Length = (set: CircleSet) => number | null | undefined;

/** A length and its standard deviation in a saved table; no deviation where there is no length. */
function saved(name: string, length: Length, sd: Length): readonly SavedColumn<CircleSet>[] {
  return [
    { header: `${name}, mm`, value: (set) => length(set) ?? null },
    {
      header: `SD of ${name.toLowerCase()}, mm`,
      value: (set) => (length(set) == null ? null : (sd(set) ?? null)),
    },
  ];
}

/** Columns of clock readings and what they say of the circle. */
export const circleColumns: readonly DataColumn<CircleSet>[] = [
  { id: 'date', header: 'Date', date: true, rowHeader: true, value: ({ date }) => date },
  { id: 'stage', header: 'Stage', value: ({ stage }) => (stage === 'found' ? 'as found' : 'as left') },
  positionColumn('c12', '12'),
  positionColumn('c3', '3'),
  positionColumn('c6', '6'),
  positionColumn('c9', '9'),
  {
    id: 'mean',
    header: 'Mean ± SD',
    numeric: true,
    saved: saved(
      'Mean',
      ({ positions }) => positions?.mean_mm,
      ({ uncertainty }) => uncertainty?.mean_mm,
    ),
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
    saved: [
      ...saved(
        'Offset',
        ({ positions }) => positions?.offset_mm,
        ({ uncertainty }) => uncertainty?.offset_mm,
      ),
      {
        header: 'Gap least towards',
        value: ({ positions }) => directionWords(positions?.offsetDirection_clock ?? null),
      },
    ],
    value: ({ positions }) => positions?.offset_mm ?? null,
    cell: (set) => <Written text={offsetWords(set)} reason={tooFew} />,
  },
  {
    id: 'ovality',
    header: 'Ovality ± SD',
    numeric: true,
    saved: saved(
      'Ovality',
      ({ positions }) => (positions?.ovalityAssumedZero === true ? null : positions?.ovality_mm),
      ({ uncertainty }) => uncertainty?.ovality_mm,
    ),
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
    saved: saved(
      'Smallest gap',
      ({ positions }) => positions?.smallestGap_mm,
      ({ uncertainty }) => uncertainty?.smallestGap_mm,
    ),
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
