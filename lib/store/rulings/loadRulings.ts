import type { RulingDecision } from '../../records/decisions/Decision';
import type { Connector } from '../Connector';
import { onOneLine, withLinesSql } from '../oneLine';

const encoder = new TextEncoder();
const columns = ['id', 'file', 'line', 'column_name', 'raw', 'ruling', 'text', 'reason', 'by_whom'] as const;

/**
 * What rulings need of the store: `doubts` lists held rows that a person may use as they stand, `own_texts` the texts of a
 * foreign sheet's hours as they stand in it, `same_text` compares texts by their words, or as numbers with either decimal sign,
 * and `record_rulings` gives each ruling the name that its column has in the records.
 */
const tablesSql = `
  CREATE TABLE doubts (file VARCHAR, line INTEGER, column_name VARCHAR);
  CREATE TABLE own_texts (file VARCHAR, line INTEGER, column_name VARCHAR, raw VARCHAR);
  CREATE MACRO tidy_text(a) AS trim(regexp_replace(coalesce(a, ''), '[\\s\\x1e]+', ' ', 'g'));
  CREATE MACRO number_of(a) AS try_cast(replace(tidy_text(a), ',', '.') AS DOUBLE);
  CREATE MACRO same_text(a, b) AS tidy_text(a) = tidy_text(b) OR coalesce(number_of(a) = number_of(b), false);
  CREATE MACRO signed_reason(reason, by_whom) AS reason || CASE WHEN by_whom = '' THEN '' ELSE ' (' || by_whom || ')' END;
  CREATE VIEW record_rulings AS SELECT r.*, coalesce(h.column_name, r.column_name) AS record_column
    FROM rulings r LEFT JOIN (SELECT DISTINCT file, header, column_name FROM cell_reasons WHERE line IS NULL) h
      ON h.file = r.file AND h.header = r.column_name;`;

/** Puts the rulings in force into table `rulings`, to be applied while the files are read. */
export async function loadRulings(connector: Connector, rulings: readonly RulingDecision[]): Promise<void> {
  // What the file has there now, and whether that is still what was ruled on: not known of whole lines.
  const kept = 'NULL::VARCHAR AS found, NULL::BOOLEAN AS is_same, false AS applied';
  if (rulings.length === 0) {
    const empty = columns.map((name) => `${name === 'line' ? 'NULL::INTEGER' : "''"} AS ${name}`).join(', ');
    await connector.run(`CREATE TABLE rulings AS SELECT ${empty}, ${kept} WHERE false; ${tablesSql}`);
    return;
  }
  const body = rulings
    .map((one) =>
      [
        one.id,
        one.file,
        String(one.line),
        one.column,
        one.raw,
        one.ruling,
        one.text ?? '',
        one.reason,
        one.by,
      ]
        .map(onOneLine)
        .join('\u001f'),
    )
    .join('\n');
  await connector.loadText('given_rulings', columns, encoder.encode(`${body}\n`));
  const cells = columns.map((name) =>
    name === 'line' ? 'line::INTEGER AS line' : `${withLinesSql(`coalesce(${name}, '')`)} AS ${name}`,
  );
  await connector.run(
    `CREATE TABLE rulings AS SELECT ${cells.join(', ')}, ${kept} FROM given_rulings; DROP TABLE given_rulings; ${tablesSql}`,
  );
}
