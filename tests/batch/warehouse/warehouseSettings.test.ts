import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { linesOf } from '../../../lib/batch/warehouse/clickhouse/linesOf';
import { quotedText, textArray, textOfTabCell } from '../../../lib/batch/warehouse/clickhouse/literals';
import { rowBinary } from '../../../lib/batch/warehouse/clickhouse/rowBinary';
import { readWarehouseSettings } from '../../../lib/batch/warehouse/warehouseSettings';
import { writeTogether } from '../../../lib/batch/writeTogether';

const folder = mkdtempSync(join(tmpdir(), 'warehouse-settings-'));
afterAll(() => rmSync(folder, { recursive: true }));

function settings(value: unknown) {
  const path = join(folder, 'warehouse.json');
  writeFileSync(path, typeof value === 'string' ? value : JSON.stringify(value));
  return readWarehouseSettings(path);
}

const place = { host: 'db', port: 5432, database: 'fleet', user: 'reader' };

describe('where a warehouse is', () => {
  it('is read from a file', async () => {
    expect(await settings({ kind: 'postgresql', ...place })).toEqual({ kind: 'postgresql', ...place });
    const shards = { kind: 'clickhouse', ...place, cluster: 'all_shards' };
    expect(await settings(shards)).toEqual(shards);
  });

  it.each([
    [
      'a password',
      { kind: 'postgresql', ...place, password: 'x' },
      /take it out .* ENDFLOAT_WAREHOUSE_PASSWORD/,
    ],
    ['another engine', { kind: 'other', ...place }, /kind/],
    ['no cluster', { kind: 'clickhouse', ...place }, /cluster/],
    ['a port that is none', { kind: 'postgresql', ...place, port: 0 }, /port/],
    [
      'a name that is more than a name',
      { kind: 'clickhouse', ...place, cluster: "a') --" },
      /letters, digits and _ only/,
    ],
    ['no JSON', '{', /cannot be read as JSON/],
  ])('is refused with %s', async (_, value, sentence) => {
    await expect(settings(value)).rejects.toThrow(sentence);
  });
});

describe('what goes to ClickHouse and comes from it', () => {
  it('keeps quotes and backslashes of literals', () => {
    expect(quotedText(`O'Hara \\`)).toBe(`'O\\'Hara \\\\'`);
    expect(textArray([])).toBe('emptyArrayString()');
    expect(textArray(['a', "b'"])).toBe(`['a', 'b\\'']`);
  });

  it('reads escaped cells and lines that come in pieces', async () => {
    expect(textOfTabCell('a\\tb\\\\n\\n')).toBe('a\tb\\n\n');
    const bytes = new TextEncoder().encode('Ж one\nt\u2028wo\nthree');
    const pieces = async function* () {
      for (const byte of bytes) yield Uint8Array.of(byte);
    };
    const lines: string[] = [];
    for await (const line of linesOf(pieces())) lines.push(line);
    expect(lines).toEqual(['Ж one', 't\u2028wo', 'three']);
  });

  it('writes rows as its manual lays them out: length and bytes, days since 1970, doubles, marks of none', () => {
    const row = rowBinary(
      [
        { name: 'unit', kind: 'text' },
        { name: 'date', kind: 'date' },
        { name: 'hours', kind: 'number', optional: true },
        { name: 'fitted', kind: 'text', optional: true },
      ],
      [['ab', '1970-02-01', 1.5, null]],
    );
    expect([...row]).toEqual([2, 97, 98, 31, 0, 0, 0, 0, 0, 0, 0, 0, 248, 63, 1]);
    const long = rowBinary([{ name: 'unit', kind: 'text' }], [['x'.repeat(300)]]);
    expect([...long.subarray(0, 3)]).toEqual([0xac, 0x02, 120]);
  });
});

describe('tables written together', () => {
  const table = (name: string, cell: string) => ({ name, header: ['a'], rows: [[cell]] });

  it('are all there, in place of older ones, and nothing beside them', async () => {
    const out = join(folder, 'new', 'out');
    await writeTogether(out, [table('one', 'old')]);
    await writeTogether(out, [table('one', 'new'), table('two', 'new')]);
    expect(readdirSync(join(folder, 'new'))).toEqual(['out']);
    expect(readdirSync(out).sort()).toEqual(['one.csv', 'two.csv']);
    expect(readFileSync(join(out, 'one.csv'), 'utf8')).toContain('new');
  });

  it('leave everything as it was when one cannot be written', async () => {
    const out = join(folder, 'kept', 'out');
    await writeTogether(out, [table('one', 'old')]);
    await expect(writeTogether(out, [table('one', 'new'), table('no/such', 'new')])).rejects.toThrow();
    expect(readFileSync(join(out, 'one.csv'), 'utf8')).toContain('old');
    expect(readdirSync(join(folder, 'kept'))).toEqual(['out']);
  });
});
