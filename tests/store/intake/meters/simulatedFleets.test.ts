import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { InputFile } from '../../../../lib/records/importReport';
import type { Answers } from '../../../../lib/records/intake/Answers';
import type { Database } from '../../../../lib/store/Connector';
import { importFiles } from '../../../../lib/store/importFiles';
import { openNodeDatabase } from '../../../../lib/store/nodeDatabase';
import { textFile } from '../../../support/textFile';
import { type Happening, type SimulatedFleet, simulateFleet } from './simulateFleet';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const happening: fc.Arbitrary<Happening> = fc.record({
  days: fc.integer({ min: 1, max: 200 }),
  engine: fc.nat({ max: 2 }),
  kind: fc.constantFrom('overhaul', 'overhaul', 'replace', 'correct', 'exchange', 'exchange'),
  size: fc.double({ min: 0, max: 1, noNaN: true }),
  fromShelf: fc.boolean(),
});
const fleet = fc
  .tuple(
    fc.array(
      fc.integer({ min: 1, max: 96 }).map((quarters) => quarters / 4),
      { minLength: 2, maxLength: 3 },
    ),
    fc.array(happening, { minLength: 10, maxLength: 60 }),
  )
  .map(([rates, happenings]) => simulateFleet(rates, happenings));

// Each import takes a while: a failure is shown as it was found.
const runs = { numRuns: 10, seed: 20260104, endOnFailure: true };

/** Derived unit hours of every overhaul, by unit and day. */
async function derivedHours(
  files: readonly InputFile[],
  answers?: Answers,
): Promise<ReadonlyMap<string, number>> {
  const connector = await database.connect();
  await importFiles(connector, files, async () => {}, answers === undefined ? {} : { answers });
  const rows = await connector.query(
    'SELECT unit, CAST(date AS VARCHAR) AS date, unit_hours::DOUBLE AS hours FROM overhauls WHERE hours_derived',
  );
  await connector.close();
  return new Map(rows.map((row) => [`${row.unit} ${row.date}`, Number(row.hours)]));
}

function expectTruth({ overhauls }: SimulatedFleet, derived: ReadonlyMap<string, number>): void {
  const missing = overhauls.filter(({ unit, date }) => !derived.has(`${unit} ${date}`));
  expect(missing).toEqual([]);
  for (const { unit, date, true_h } of overhauls)
    expect(Math.abs((derived.get(`${unit} ${date}`) as number) - true_h), `${unit} ${date}`).toBeLessThan(
      1e-9,
    );
}

describe('unit hours of simulated fleets', () => {
  it('follow from installations and events, the hours when fitted given for a unit’s first stay only', async () => {
    await fc.assert(
      fc.asyncProperty(fleet, async (simulated) => {
        const firstStay = new Set<string>();
        const stays = simulated.stays.map((stay) => {
          const isFirst = !firstStay.has(stay.unit);
          firstStay.add(stay.unit);
          return [
            stay.unit,
            stay.engine,
            stay.from,
            stay.to ?? '',
            stay.meter_h,
            isFirst ? stay.unit_h : '',
          ].join();
        });
        const files = [
          textFile(
            'installations.csv',
            `unit,engine,from_date,to_date,engine_hours_at_fit,unit_hours_at_fit\n${stays.join('\n')}`,
          ),
          textFile(
            'events.csv',
            `date,engine,kind,value\n${simulated.events.map((one) => [one.date, one.engine, one.kind, one.value].join()).join('\n')}`,
          ),
          textFile(
            'overhauls.csv',
            `overhaul,unit,date,engine_hours,engine\n${simulated.overhauls.map((one, index) => [index, one.unit, one.date, one.meter_h, one.engine].join()).join('\n')}`,
          ),
        ];
        expectTruth(simulated, await derivedHours(files));
      }),
      runs,
    );
  });

  it('follow from the remarks alone once everything asked is answered yes', async () => {
    await fc.assert(
      fc.asyncProperty(fleet, async (simulated) => {
        const rows = simulated.overhauls.map((one) =>
          [one.unit, one.engine, one.date, one.meter_h, '0.11', one.remarks].join(),
        );
        const sheet = textFile(
          'sheet.csv',
          `unit,engine,date,engine_hours,thrust_play_left,remarks\n${rows.join('\n')}`,
        );
        expectTruth(
          simulated,
          await derivedHours([sheet], ({ choices }) => choices.find((one) => one === 'yes')),
        );
      }),
      runs,
    );
  });
});
