import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { textFile } from '../../support/textFile';
import { importRuled, ruling } from './ruled';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const overhauls = 12;
const jobs = Array.from({ length: overhauls }, (_, index) => ({
  overhaul: `J${index}`,
  unit: `W-${index % 3}`,
  date: `20${10 + index}-0${1 + (index % 9)}-1${index % 10}`,
  hours: 1000 + 8125 * index,
  found: (0.31 + index / 100).toFixed(3),
  left: (0.2 + index / 200).toFixed(3),
}));

/** A fleet as a canonical pair of tables and as a workshop's sheet, each cell through `text(line, column, right text)`. */
const forms = {
  canonical: {
    columns: ['value'],
    file: 'readings.csv',
    lines: 2 * overhauls,
    right: (line: number) => jobs[(line - 2) >> 1]?.[line % 2 === 0 ? 'found' : 'left'] ?? '',
    write: (text: (line: number, column: string, right: string) => string) => [
      textFile(
        'overhauls.csv',
        [
          'overhaul,unit,date,unit_hours',
          ...jobs.map((one) => `${one.overhaul},${one.unit},${one.date},${one.hours}`),
        ].join('\n'),
      ),
      textFile(
        'readings.csv',
        [
          'overhaul,characteristic,stage,value,uom',
          ...jobs.flatMap((one, index) =>
            (['found', 'left'] as const).map(
              (stage, at) =>
                `${one.overhaul},thrust_play,${stage},${text(2 + 2 * index + at, 'value', one[stage])},mm`,
            ),
          ),
        ].join('\n'),
      ),
    ],
  },
  sheet: {
    columns: ['Axialspiel vorgefunden (mm)', 'Axialspiel Einbau (mm)'],
    file: 'karte.csv',
    lines: overhauls,
    right: (line: number, column: string) =>
      (jobs[line - 2]?.[column.includes('Einbau') ? 'left' : 'found'] ?? '').replace('.', ','),
    write: (text: (line: number, column: string, right: string) => string) => [
      textFile(
        'karte.csv',
        [
          'Seriennummer;Datum;Betriebsstunden;Axialspiel vorgefunden (mm);Axialspiel Einbau (mm)',
          ...jobs.map((one, index) =>
            [
              one.unit,
              one.date,
              one.hours,
              text(index + 2, 'Axialspiel vorgefunden (mm)', one.found.replace('.', ',')),
              text(index + 2, 'Axialspiel Einbau (mm)', one.left.replace('.', ',')),
            ].join(';'),
          ),
        ].join('\n'),
      ),
    ],
  },
};

const damages = [
  (right: string) => right.replace('0', 'O'),
  (right: string) => `${right}l`,
  () => 'x.x.x',
  () => '=A1+B2',
];

it.each(['canonical', 'sheet'] as const)(
  'held cells edited to the right text are used with it, and nothing else changes: %s',
  async (form) => {
    const { columns, file, lines, right, write } = forms[form];
    const undamaged = await importRuled(
      database,
      write((_, __, text) => text),
    );
    expect(undamaged.used).toHaveLength(2 * overhauls);
    const place = fc.record({
      line: fc.integer({ min: 2, max: lines + 1 }),
      column: fc.constantFrom(...columns),
      damage: fc.nat(damages.length - 1),
      isEdited: fc.boolean(),
    });
    const places = fc.uniqueArray(place, {
      minLength: 1,
      maxLength: 8,
      selector: (one) => `${one.line} ${one.column}`,
    });
    await fc.assert(
      fc.asyncProperty(places, async (damaged) => {
        const faultAt = new Map(damaged.map((one) => [`${one.line} ${one.column}`, one]));
        const files = write((line, column, text) => {
          const fault = faultAt.get(`${line} ${column}`);
          return fault === undefined ? text : (damages[fault.damage]?.(text) ?? text);
        });
        const edited = damaged.filter((one) => one.isEdited);
        const result = await importRuled(
          database,
          files,
          edited.map(({ line, column, damage }) =>
            ruling(`${file}:${line}:${column}`, damages[damage]?.(right(line, column)) ?? '', {
              edit: right(line, column),
            }),
          ),
        );
        const goOnHeld = damaged.filter((one) => !one.isEdited);
        const isHeld = (reading: string) =>
          goOnHeld.some(
            ({ line, column }) =>
              reading.startsWith(`${file}:${line} `) &&
              (form === 'canonical' || reading.includes(column.includes('Einbau') ? ' left ' : ' found ')),
          );
        expect(result.used).toEqual(undamaged.used.filter((reading) => !isHeld(reading)));
        expect(result.held).toHaveLength(goOnHeld.length);
        expect(result.notApplied).toEqual(edited.map(() => null));
        expect(result.interpreted.filter((line) => line.includes('in place of'))).toHaveLength(edited.length);
      }),
      { numRuns: 8 },
    );
  },
  240_000,
);
