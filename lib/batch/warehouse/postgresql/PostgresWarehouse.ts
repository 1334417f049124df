import { Client } from 'pg';
import { z } from 'zod';
import {
  type StatisticsCells,
  type UnitHistory,
  unitHistory,
  type Warehouse,
  WarehouseError,
  type WarehouseQuestion,
} from '../Warehouse';
import type { PostgresSettings } from '../warehouseSettings';
import { historiesSql } from './cutSql';
import { partitionsSql } from './partitionsSql';
import { statisticsSql } from './statisticsSql';

const rowsAtOnce = 20_000;

/**
 * Opens a PostgreSQL warehouse. Everything is read in one transaction that sees the tables as they were when it began and
 * may not write.
 *
 * @throws WarehouseError if the server cannot be reached or stops answering
 */
export async function openPostgres(
  settings: PostgresSettings,
  password: string | undefined,
): Promise<Warehouse> {
  const { host, port, database, user } = settings;
  const name = `the PostgreSQL warehouse ${database} at ${host}:${port}`;
  const client = new Client({ host, port, database, user, password, application_name: 'endfloat' });
  // A connection that breaks between two questions is told of by the next one.
  client.on('error', () => {});
  const saying = async <T>(answer: Promise<T>): Promise<T> => {
    try {
      return await answer;
    } catch (error) {
      const reason = error instanceof Error ? error.message || String(error) : String(error);
      throw new WarehouseError(`${name} gave no full answer (${reason}): see that it runs, then start again`);
    }
  };
  await saying(client.connect());
  await saying(client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY'));

  async function* partition(
    readings: string,
    overhauls: string,
    { asOf, rules, measured }: WarehouseQuestion,
  ): AsyncGenerator<readonly StatisticsCells[]> {
    const words = [JSON.stringify(rules), JSON.stringify(measured), asOf];
    await saying(
      client.query(
        `DECLARE run_statistics NO SCROLL CURSOR FOR ${statisticsSql(readings, overhauls)}`,
        words,
      ),
    );
    for (;;) {
      const { rows } = await saying(
        client.query<string[]>({
          text: `FETCH ${rowsAtOnce} FROM run_statistics`,
          rowMode: 'array',
          types: { getTypeParser: () => String },
        }),
      );
      if (rows.length === 0) break;
      yield rows;
    }
    await saying(client.query('CLOSE run_statistics'));
  }

  return {
    name,
    async countReadings() {
      const { rows } = await saying(client.query('SELECT count(*)::double precision AS n FROM readings'));
      return z.object({ n: z.number() }).parse(rows[0]).n;
    },
    async histories({ rules }): Promise<readonly UnitHistory[]> {
      const { rows } = await saying(client.query(historiesSql, [JSON.stringify(rules)]));
      return z.array(unitHistory).parse(rows);
    },
    async *runStatistics(question) {
      const { rows } = await saying(client.query<{ readings: string; overhauls: string }>(partitionsSql));
      const parts = rows.length === 0 ? [{ readings: 'readings', overhauls: 'overhauls' }] : rows;
      for (const { readings, overhauls } of parts) yield* partition(readings, overhauls, question);
    },
    async close() {
      await client.end().catch(() => {});
    },
  };
}
