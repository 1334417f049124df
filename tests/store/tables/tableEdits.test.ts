import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Decision } from '../../../lib/records/decisions/Decision';
import type { EditedTable } from '../../../lib/records/decisions/editedTables';
import { withDecisions } from '../../../lib/records/decisions/journal';
import {
  decisionsForReading,
  type RowTexts,
  rowKey,
  tableEdit,
} from '../../../lib/records/decisions/tableEdits';
import type { Database } from '../../../lib/store/Connector';
import { importFiles } from '../../../lib/store/importFiles';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { tableRows } from '../../../lib/store/tables/tableRows';
import { textFile } from '../../support/textFile';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const limits = textFile(
  'limits.csv',
  `frame,series,limit_kind,limit,reset_by,source
Wren,thrust_play,Upper,0.30,TB,table 1
Wren,runout,upper,0.05,assembly,table 1
Owl,runout,upper,0.06,assembly,table 2`,
);
const sheet = textFile(
  'sheet.csv',
  `unit,frame,date,unit_hours,thrust_play_found_mm,runout_found_mm
W-1,Wren,2016-02-03,8120,0.24,0.031
W-1,Wren,2018-02-03,16000,0.25,0.034`,
);
const signature = { at: '2026-03-01T08:00:00.000Z', by: 'AB' };

/** An edit of the row that the cells name. */
function edit(table: EditedTable, cells: RowTexts, isRemoved = false): Decision {
  return tableEdit(table, rowKey(table, cells), isRemoved ? null : cells, null);
}

const thrustPlay = { frame: 'Wren', series: 'thrust_play', limit_kind: 'upper' };

/** What a table holds and what is listed when the files are read with edits, decided one step each. */
async function read(edits: readonly Decision[], table: EditedTable = 'limits', files = [limits, sheet]) {
  const connector = await database.connect();
  const journal = edits.reduce(
    (before, one) => withDecisions(before, [one], signature),
    [] as ReturnType<typeof withDecisions>,
  );
  const imported = await importFiles(connector, files, async () => {}, {
    decisions: decisionsForReading(journal),
  });
  const rows = await tableRows(connector, table);
  const used = await connector.query(`SELECT count(*)::INTEGER AS n FROM ${table}`);
  await connector.close();
  return {
    rows: rows.map(
      ({ file, line, texts, isUsed, reasons }) =>
        `${file}:${line} ${Object.values(texts)
          .filter((text) => text !== '')
          .join(' ')}${isUsed ? '' : ' (held)'}${reasons.length === 0 ? '' : ` | ${reasons.join('; ')}`}`,
    ),
    used: Number(used[0]?.n),
    problems: imported.problems
      .filter(({ reason }) => !reason.startsWith('no units.csv'))
      .map(({ file, row, column, raw, action, reason }) =>
        [file, row, column, raw, action, reason].join(' | '),
      ),
    counts: imported.files.map(({ rowsIn, rowsUsed, rowsHeld }) => [rowsIn, rowsUsed, rowsHeld]),
  };
}

const fromFile = [
  'limits.csv:2 Wren thrust_play Upper 0.30 TB table 1',
  'limits.csv:3 Wren runout upper 0.05 assembly table 1',
  'limits.csv:4 Owl runout upper 0.06 assembly table 2',
];

test('without edits the table is that of its file', async () => {
  const { rows, used, problems } = await read([]);
  expect([rows, used, problems]).toEqual([fromFile, 3, []]);
});

test('an edit takes the place of the row of its key, whatever the letters of its words, and the file’s counts add up', async () => {
  const { rows, used, problems, counts } = await read([edit('limits', { ...thrustPlay, limit: '0.32' })]);
  expect(rows).toEqual([fromFile[1], fromFile[2], 'Tables page:1 Wren thrust_play upper 0.32']);
  expect(used).toBe(3);
  expect(problems).toEqual([
    'limits.csv | 2 |  | Wren / thrust_play / upper | held | replaced on the Tables page (number 1 of the journal)',
  ]);
  expect(counts[0]).toEqual([3, 2, 1]);
});

test('a row is removed, and one that no file has is added', async () => {
  const { rows, problems } = await read([
    edit('limits', { ...thrustPlay }, true),
    edit('limits', { frame: 'Owl', series: 'thrust_play', limit_kind: 'upper', limit: '0.4' }),
  ]);
  expect(rows).toEqual([fromFile[1], fromFile[2], 'Tables page:2 Owl thrust_play upper 0.4']);
  expect(problems).toEqual([
    'limits.csv | 2 |  | Wren / thrust_play / upper | held | removed on the Tables page (number 1 of the journal)',
  ]);
});

test('removing a row that no file has changes nothing', async () => {
  const { rows, problems } = await read([edit('limits', { ...thrustPlay, frame: 'Kite' }, true)]);
  expect([rows, problems]).toEqual([fromFile, []]);
});

test('of two edits about one key the later holds', async () => {
  const { rows } = await read([
    edit('limits', { ...thrustPlay, limit: '0.32' }),
    edit('limits', { ...thrustPlay, limit: '0.33' }),
  ]);
  expect(rows).toEqual([fromFile[1], fromFile[2], 'Tables page:2 Wren thrust_play upper 0.33']);
});

test('a cell that cannot be read holds the edited row with its reason, and the file’s row stays aside', async () => {
  const { rows, used, problems } = await read([edit('limits', { ...thrustPlay, limit: '0,32' })]);
  expect(rows.at(-1)).toBe(
    'Tables page:1 Wren thrust_play upper 0,32 (held) | not a number (digits with a decimal point are expected)',
  );
  expect(used).toBe(2);
  expect(problems).toContain(
    'Tables page | 1 | limit | 0,32 | held | not a number (digits with a decimal point are expected)',
  );
});

test('a row repeated in its file is settled by an edit of it', async () => {
  const twice = textFile(
    'limits.csv',
    `frame,series,limit_kind,limit
Wren,runout,upper,0.05
Wren,runout,upper,0.06`,
  );
  expect((await read([], 'limits', [twice, sheet])).used).toBe(1);
  const { rows, used, counts } = await read(
    [edit('limits', { frame: 'Wren', series: 'runout', limit_kind: 'upper', limit: '0.06' })],
    'limits',
    [twice, sheet],
  );
  expect([rows, used, counts[0]]).toEqual([['Tables page:1 Wren runout upper 0.06'], 1, [2, 0, 2]]);
});

test('an edit made before there is a file waits for it', async () => {
  const decision = edit('limits', { ...thrustPlay, limit: '0.32' });
  expect((await read([decision], 'limits', [sheet])).rows).toEqual([
    'Tables page:1 Wren thrust_play upper 0.32',
  ]);
  expect((await read([decision])).rows).toHaveLength(3);
});

test('a characteristic that was added here is read from sheets', async () => {
  const own = textFile(
    'nozzle.csv',
    'unit,frame,date,unit_hours,nozzle_gap_found_mm\nW-1,Wren,2016-02-03,8120,1.2\nW-1,Wren,2018-02-03,16000,1.3',
  );
  const added = edit('characteristics', {
    characteristic: 'nozzle_gap',
    name: 'Nozzle gap',
    shape: 'single',
    never_negative: 'yes',
  });
  const reading = async (edits: readonly Decision[]) => {
    const connector = await database.connect();
    const imported = await importFiles(connector, [own], async () => {}, { decisions: edits });
    await connector.close();
    return imported.readingsUsed;
  };
  expect([await reading([]), await reading([added])]).toEqual([0, 2]);
});

test.each([
  ['parts', { part: 'TB', frame: 'Wren', resets: 'thrust_play', lead_time_weeks: '12' }],
  ['installations', { unit: 'W-1', engine: 'E-1', from_date: '2014-01-01' }],
  ['events', { date: '2017-01-01', engine: 'E-1', kind: 'Other' }],
  ['plan', { engine: 'E-1', hours_per_year: '6000' }],
] as const)('a row of %s that was added here is used', async (table, cells) => {
  const { rows, used } = await read([edit(table, cells)], table);
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatch(/^Tables page:1 /);
  expect(used).toBe(1);
});

test('the order in which edits are given makes no difference', async () => {
  const edits = decisionsForReading(
    withDecisions(
      [],
      [
        edit('limits', { ...thrustPlay, limit: '0.32' }),
        edit('limits', { frame: 'Owl', series: 'runout', limit_kind: 'upper' }, true),
        edit('limits', { frame: 'Owl', series: 'runout', limit_kind: 'lower', limit: '0' }),
      ],
      signature,
    ),
  );
  const tableOf = async (decisions: readonly Decision[]) => {
    const connector = await database.connect();
    const imported = await importFiles(connector, [limits, sheet], async () => {}, { decisions });
    const rows = await connector.query('SELECT id, file, line, frame, "limit" FROM limits ORDER BY id');
    await connector.close();
    return [rows, imported.problems];
  };
  expect(await tableOf(edits.toReversed())).toEqual(await tableOf(edits));
});
