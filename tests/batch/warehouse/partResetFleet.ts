import { madeUnit, unitName } from '../../../lib/batch/bench/madeUnit';
import { writeCsv } from '../../../lib/records/csv/writeCsv';
import type { InputFile } from '../../../lib/records/importReport';

const frames = ['Wren', 'Rook'] as const;

const file = (
  name: string,
  header: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): InputFile => ({
  name,
  bytes: new TextEncoder().encode(writeCsv(header, rows)),
});

/**
 * A made-up fleet with everything that may make a path differ: two frames cut by different rules, runs over several
 * overhauls, intervals of different width, sets of three and of two clock positions, an overhaul that is held, first runs
 * without a known start, an added characteristic, and names with quotes, backslashes and other scripts.
 */
export function partResetFleet(units: number): readonly InputFile[] {
  const overhaulRows: (string | number)[][] = [];
  const readingRows: (string | number)[][] = [];
  const overhauls = Array.from({ length: units }, (_, unitNumber) =>
    madeUnit(unitNumber, unitNumber % 2).map((overhaul, place) => ({ ...overhaul, place, unitNumber })),
  ).flat();
  for (const { place, unitNumber, readings, ...own } of overhauls) {
    const unit = nameOf(unitNumber);
    const fitted = own.hasNewBearing ? (unitNumber % 2 === 0 ? ' TB-1 ; GS' : 'TB-2') : 'GS';
    // Every 25th unit's hours of one overhaul cannot be read, every 40th has been running long before its first record.
    const hours =
      unitNumber % 25 === 3 && place === 5
        ? 'illegible'
        : own.unitHours + (unitNumber % 40 === 7 ? 30_000 : 0);
    overhaulRows.push([own.overhaul, unit, own.date, hours, 'North yard', fitted]);
    for (const [index, reading] of readings.entries()) {
      const { characteristic, stage, clock, value_mm } = reading;
      if (unitNumber % 7 === 2 && characteristic === 'tip_turbine' && clock === '9') continue;
      if (unitNumber % 50 === 11 && characteristic === 'tip_compressor' && (clock === '9' || clock === '3'))
        continue;
      const isInterval = (unitNumber * 31 + place * 7 + index) % 17 === 0;
      const width_mm = 0.01 * (1 + ((place + index) % 3));
      const ends = isInterval
        ? [(value_mm - width_mm / 2).toFixed(4), (value_mm + width_mm / 2).toFixed(4)]
        : ['', ''];
      readingRows.push([
        own.overhaul,
        characteristic,
        stage,
        clock,
        isInterval ? '' : value_mm.toFixed(4),
        'mm',
        ...ends,
      ] as string[]);
    }
    readingRows.push([
      own.overhaul,
      'seal_gap',
      'found',
      '',
      (0.3 + 0.00001 * own.unitHours).toFixed(4),
      'mm',
      '',
      '',
    ]);
  }
  const unitRows = Array.from({ length: units }, (_, number) => [
    nameOf(number),
    frames[number % 2] ?? frames[0],
    90_000,
  ]);
  return [
    file('units.csv', ['unit', 'frame', 'rated_life_h'], unitRows),
    file('overhauls.csv', ['overhaul', 'unit', 'date', 'unit_hours', 'workshop', 'fitted'], overhaulRows),
    file(
      'readings.csv',
      ['overhaul', 'characteristic', 'stage', 'clock', 'value', 'uom', 'lower', 'upper'],
      readingRows,
    ),
    file(
      'limits.csv',
      ['frame', 'series', 'limit_kind', 'limit', 'reset_by'],
      [
        ['Wren', 'thrust_play', 'upper', 0.6, 'TB-1'],
        ['Rook', 'thrust_play', 'upper', 0.6, 'TB-2'],
        ['Wren', 'tip_turbine_smallest', 'lower', 0.4, 'assembly'],
        ['Rook', 'tip_turbine_largest', 'upper', 1.2, 'assembly'],
        ['Wren', 'runout', 'upper', 0.06, 'assembly'],
        ['Rook', 'runout', 'upper', 0.06, ''],
      ],
    ),
    file(
      'characteristics.csv',
      ['characteristic', 'name', 'shape', 'never_negative'],
      [['seal_gap', 'Seal gap', 'single', 'yes']],
    ),
  ];
}

function nameOf(number: number): string {
  const plain = unitName(number);
  if (number === 4) return `O'Hara \\ ${plain}`;
  return number === 5 ? `Øst-Ж ${plain}` : plain;
}
