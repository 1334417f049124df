import type { CanonicalTable } from '../../records/canonicalTables';
import { quoted } from './quoted';

/** Rows whose key stands already in an earlier row, of those in `repeated_keys`: exact repetitions, and contradictions. */
export function repeatedRowsSql(table: CanonicalTable): string {
  const key = keyOf(table);
  const others = table.columns
    .map((column) => column.name)
    .filter((name) => !table.key.includes(name) && !name.startsWith('source_'));
  const same = others.map((name) => `"${name}" IS NOT DISTINCT FROM first."${name}"`).join(' AND ') || 'true';
  const fields = others.map((name) => `"${name}" := "${name}"`).join(', ');
  return `WITH ranked AS (
      SELECT *, row_number() OVER same_key AS place, first_value(struct_pack(file := file, line := line, ${fields})) OVER same_key AS first
      FROM ${table.name} WHERE hash(${hashed(table)}) IN (SELECT key FROM repeated_keys)
      WINDOW same_key AS (PARTITION BY ${key.join(', ')} ORDER BY id))
    SELECT id, ${quoted(table.key[0] ?? '')} AS column_name, concat_ws(' / ', ${key.map((name) => `CAST(${name} AS VARCHAR)`).join(', ')}) AS raw,
      CASE WHEN ${same} THEN 'exact repetition of line ' ELSE 'given already with other values in line ' END
        || first.line || ' of ' || first.file AS reason
    FROM ranked WHERE place > 1`;
}

function keyOf(table: CanonicalTable): readonly string[] {
  return table.key.map((name) =>
    table.name === 'readings' && name === 'characteristic'
      ? 'coalesce(CAST(characteristic AS VARCHAR), unknown_characteristic)'
      : `"${name}"`,
  );
}

/**
 * Table of the hashes among which are those of all repeated keys: to rank every row of a long table by its whole key would take
 * longer than all other checks. Of readings, the sets of clock positions with more rows than positions.
 */
export function repeatedKeysSql(table: CanonicalTable): string {
  const columns = hashed(table);
  const most = table.name === 'readings' ? 'bit_count(bit_or(1 << coalesce(enum_code(clock), 7)))' : '1';
  return `CREATE OR REPLACE TABLE repeated_keys AS SELECT hash(${columns}) AS key FROM ${table.name} GROUP BY ${columns} HAVING count(*) > ${most}`;
}

function hashed({ name, key }: CanonicalTable): string {
  return name === 'readings' ? 'overhaul, characteristic, stage' : key.map((one) => `"${one}"`).join(', ');
}

/**
 * SQL condition on a repeated row under which it may be used beside the first: a single reading, which may have been taken
 * twice. Any other row with a key that stands already would double what belongs to the key.
 */
export function repeatedRowIsDoubt(table: CanonicalTable): string {
  return table.name === 'readings' ? 't.clock IS NULL' : 'false';
}
