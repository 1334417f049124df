import { csvText, type TextRow } from './csvText';
import { buildExample } from './installations';
import { limitColumns, limitRows } from './limitTables';
import { type ReadingEntry, recordsOf, type Uom, written } from './records';
import { frameTruth } from './trueRuns';
import { unitHistory } from './unitHistory';

/** A reading column of the wide sheet: its name says the characteristic, stage, clock position and, if not mm, the unit of measure. */
interface ReadingColumn {
  readonly name: string;
  readonly key: string;
  readonly uom: Uom;
}

const readingColumns: readonly ReadingColumn[] = [
  column('thrust_play', 'found', '', 'mm'),
  column('thrust_play', 'left', '', '0.01mm'),
  column('runout', 'found', '', 'um'),
  column('runout', 'left', '', 'um'),
  ...['tip_compressor', 'tip_turbine'].flatMap((code) =>
    ['found', 'left'].flatMap((stage) =>
      ['12', '3', '6', '9'].map((clock) => column(code, stage, clock, 'mm')),
    ),
  ),
];

const overhaulColumns = [
  'unit',
  'frame',
  'date',
  'unit_hours',
  'site',
  'engine',
  'bank',
  'workshop',
  'kind',
  'fitted',
  'remarks',
];

/** The example of a wide sheet, one row an overhaul, and the limits of its frame: file name to text. */
export function exampleFiles(): Readonly<Record<string, string>> {
  const { overhauls, readings } = recordsOf([...buildExample().visits.values()].map(unitHistory));
  const rows = overhauls.map(({ row, visit }): TextRow => {
    const own = readings.filter((entry) => entry.row.overhaul === row.overhaul);
    const cells = readingColumns.map(({ name, key, uom }) => [name, cellOf(own, key, uom, visit)] as const);
    return { ...row, frame: visit.frame, ...Object.fromEntries(cells) };
  });
  return {
    'kestrel-wide.csv': csvText([...overhaulColumns, ...readingColumns.map(({ name }) => name)], rows),
    'limits.csv': csvText(limitColumns, limitRows('Kestrel')),
  };
}

function column(code: string, stage: string, clock: string, uom: Uom): ReadingColumn {
  const parts = [code, stage, clock, uom === 'mm' ? '' : uom].filter((part) => part !== '');
  return { name: parts.join('_'), key: `${code}/${stage}/${clock}`, uom };
}

function cellOf(
  own: readonly ReadingEntry[],
  key: string,
  uom: Uom,
  visit: Parameters<typeof frameTruth>[1],
): string {
  const found = own.find(({ reading }) => `${reading.code}/${reading.stage}/${reading.clock}` === key);
  return found === undefined
    ? ''
    : written(found.reading.value_mm, uom, frameTruth(found.reading.code, visit).step);
}
