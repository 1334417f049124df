import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { canonicalTable } from '../../../lib/records/canonicalTables';
import { editedTables } from '../../../lib/records/decisions/editedTables';
import { withDecisions } from '../../../lib/records/decisions/journal';
import { decisionsForReading, tableEdit } from '../../../lib/records/decisions/tableEdits';
import { cellFault } from '../../../lib/records/tables/cellFault';
import type { Database } from '../../../lib/store/Connector';
import { importFiles } from '../../../lib/store/importFiles';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const texts = fc.oneof(
  fc.constantFrom(
    '',
    '0',
    '1e3',
    '.5',
    '5.',
    '-0.0',
    '1e400',
    '+7',
    '1e-999',
    '0,5',
    '1 000',
    '٣',
    '0x10',
    'upper',
  ),
  fc.constantFrom(
    '2024-02-30',
    '2024-02-29',
    '1949-12-31',
    '2100-12-31',
    '2101-01-01',
    '24-01-01',
    'YES',
    'Other',
  ),
  fc.double({ min: -2e6, max: 2e6, noNaN: true }).map(String),
  fc
    .date({ min: new Date('1940-01-01'), max: new Date('2110-01-01'), noInvalidDate: true })
    .map((day) => day.toISOString().slice(0, 10)),
  fc.string({ maxLength: 6 }),
);
const row = fc.constantFrom(...editedTables).chain((table) =>
  fc.record({
    table: fc.constant(table),
    texts: fc.record(Object.fromEntries(canonicalTable(table).columns.map(({ name }) => [name, texts]))),
  }),
);

test('a cell has a fault as it is typed exactly where it is held when it is read', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: 150, maxLength: 150 }), async (rows) => {
      // A key of its own for each, so that every row is read, whatever its cells that name it.
      const edits = rows.map(({ table, texts }, index) => tableEdit(table, [String(index)], texts, null));
      const journal = withDecisions([], edits, { at: '2026-03-01T08:00:00.000Z', by: '' });
      const connector = await database.connect();
      const { problems } = await importFiles(connector, [], async () => {}, {
        decisions: decisionsForReading(journal),
      });
      await connector.close();
      const held = problems
        .filter(({ reason }) => !/^(exact repetition|given already)/.test(reason))
        .map((one) => `${one.row} ${one.column}`);
      const faulty = rows.flatMap(({ table, texts }, index) =>
        canonicalTable(table)
          .columns.filter(({ name }) => cellFault(table, name, texts[name] ?? '') !== null)
          .map(({ name }) => `${index + 1} ${name}`),
      );
      expect(held.sort()).toEqual(faulty.sort());
    }),
    { numRuns: 8, endOnFailure: true },
  );
}, 60_000);
