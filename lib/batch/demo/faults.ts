import type { TextRow } from './csvText';
import { move } from './oddities';
import type { ReadingEntry } from './records';
import type { Stage } from './simulate';
import type { CharacteristicCode } from './wearTruth';

/** A row that nobody can use until a person decides, and why. */
export interface Fault {
  readonly file: 'overhauls.csv' | 'readings.csv';
  readonly column: string;
  readonly why: string;
}

export interface FaultyRow {
  readonly row: TextRow;
  readonly fault: Fault | null;
}

interface ReadingFault {
  readonly at: readonly [unit: string, visit: number, code: CharacteristicCode, stage: Stage, clock: string];
  readonly column: string;
  readonly why: string;
  readonly typed: (row: TextRow) => TextRow;
}

const readingFaults: readonly ReadingFault[] = [
  {
    at: ['O-3002', 1, 'thrust_play', 'found', ''],
    column: 'value',
    why: 'letter O typed for the digit 0',
    typed: (row) => ({ ...row, value: (row.value ?? '').replace(/^0/, 'O') }),
  },
  {
    at: ['O-3006', 2, 'tip_turbine', 'found', '9'],
    column: 'value',
    why: 'decimal comma with three digits after it: could be thousands',
    typed: (row) => ({ ...row, value: `${(row.value ?? '').replace('.', ',')}0` }),
  },
  {
    at: ['L-1107', 4, 'runout', 'left', ''],
    column: 'overhaul',
    why: 'no overhaul of this name',
    typed: (row) => ({ ...row, overhaul: 'OH-0999' }),
  },
  {
    at: ['H-2010', 3, 'thrust_play', 'left', ''],
    column: 'uom',
    why: 'unit of measure not known',
    typed: (row) => ({ ...row, uom: 'cm' }),
  },
  {
    at: ['L-1113', 2, 'runout', 'found', ''],
    column: 'value',
    why: 'runout is never negative',
    typed: (row) => ({ ...row, value: `-${row.value ?? ''}` }),
  },
  {
    at: ['L-1101', 5, 'runout', 'found', ''],
    column: 'value',
    why: 'a word, not a reading',
    typed: (row) => ({ ...row, value: 'OK' }),
  },
  {
    at: ['O-3008', 3, 'tip_compressor', 'found', '3'],
    column: 'stage',
    why: 'stage misspelt',
    typed: (row) => ({ ...row, stage: 'fonud' }),
  },
  {
    at: ['H-2006', 5, 'tip_compressor', 'left', '3'],
    column: 'clock',
    why: 'no such clock position',
    typed: (row) => ({ ...row, clock: '4' }),
  },
  {
    at: ['H-2014', 1, 'tip_turbine', 'left', '9'],
    column: 'lower',
    why: 'lower end of the interval above its upper end',
    typed: (row) => ({ ...row, lower: row.upper ?? '', upper: row.lower ?? '' }),
  },
];

/** Typed twice, every column alike: the second one is held. */
const typedTwice: ReadingFault['at'] = ['H-2003', 4, 'thrust_play', 'found', ''];

/** Rows of readings.csv as they were typed. */
export function typedReadings(entries: readonly ReadingEntry[]): readonly FaultyRow[] {
  const rows = entries.flatMap((entry): readonly FaultyRow[] => {
    const found = readingFaults.find(({ at }) => isAt(entry, at));
    if (found !== undefined) {
      return [
        {
          row: found.typed(entry.row),
          fault: { file: 'readings.csv', column: found.column, why: found.why },
        },
      ];
    }
    const once = { row: entry.row, fault: null };
    if (!isAt(entry, typedTwice)) return [once];
    return [
      once,
      {
        row: entry.row,
        fault: { file: 'readings.csv', column: '', why: 'exact duplicate of the row before' },
      },
    ];
  });
  return [...rows, ...lateReadings];
}

/** Rows of overhauls.csv as they were typed, with two more that cannot be used. */
export function typedOverhauls(rows: readonly TextRow[]): readonly FaultyRow[] {
  return [...rows.map((row) => ({ row, fault: null })), ...lateOverhauls];
}

function isAt(
  { unit, reading }: ReadingEntry,
  [atUnit, visit, code, stage, clock]: ReadingFault['at'],
): boolean {
  return (
    unit === atUnit &&
    reading.visit === visit &&
    reading.code === code &&
    reading.stage === stage &&
    reading.clock === clock
  );
}

const badDate = 'OH-0901';

const lateOverhauls: readonly FaultyRow[] = [
  {
    row: {
      overhaul: badDate,
      unit: move.leftInStore,
      date: '2021-02-30',
      // What the unit had when it went to store.
      unit_hours: '35528',
      workshop: 'Kittiwake Yard',
      kind: 'unplanned',
      remarks: 'play checked in store',
    },
    fault: { file: 'overhauls.csv', column: 'date', why: 'no such day' },
  },
  {
    row: {
      overhaul: 'OH-0902',
      unit: 'H-20O4',
      date: '2024-03-12',
      unit_hours: '74650',
      site: 'Skua Head',
      engine: 'SKU-2',
      bank: 'B',
      workshop: 'Merrow Works',
      kind: 'unplanned',
      fitted: 'GS-H',
      remarks: 'gaskets only',
    },
    fault: {
      file: 'overhauls.csv',
      column: 'unit',
      why: 'no unit of this serial: letter O typed for the digit 0',
    },
  },
];

const lateReadings: readonly FaultyRow[] = [
  {
    row: {
      overhaul: badDate,
      characteristic: 'thrust_play',
      stage: 'found',
      value: '0.31',
      uom: 'mm',
      source_file: 'store-2021.csv',
      source_row: '2',
    },
    fault: { file: 'readings.csv', column: 'overhaul', why: 'its overhaul is held' },
  },
];
