import { type StatisticsCells, statisticsColumns, type UnitHistory, type Warehouse } from '../Warehouse';
import type { ClickHouseSettings } from '../warehouseSettings';
import { ClickHouseHttp } from './ClickHouseHttp';
import { historiesSql } from './cutSql';
import { onEveryShardSql, statisticsSql } from './statisticsSql';

const rowsAtOnce = 20_000;

/** Opens a ClickHouse warehouse: one server of a cluster, which asks every shard to compute over its own units. */
export function openClickHouse(settings: ClickHouseSettings, password: string | undefined): Warehouse {
  const http = new ClickHouseHttp(settings, password);
  const { cluster, database } = settings;
  return {
    name: http.name,
    async countReadings() {
      let count = 0;
      for await (const [n] of http.rows(`SELECT count() FROM cluster('${cluster}', ${database}, readings)`))
        count += Number(n);
      return count;
    },
    async histories({ rules }) {
      const columns = ['unit', 'openings', 'days', 'hours', 'runs', 'start_hours'];
      const histories: UnitHistory[] = [];
      for await (const [unit = '', ...sums] of http.rows(
        onEveryShardSql(cluster, historiesSql(rules), columns),
      )) {
        const [openings = 0, days = 0, hours = 0, runs = 0, startHours = 0] = sums.map(Number);
        histories.push({ unit, openings, days, hours, runs, startHours });
      }
      return histories;
    },
    async *runStatistics(question) {
      let batch: StatisticsCells[] = [];
      for await (const cells of http.rows(
        onEveryShardSql(cluster, statisticsSql(question), statisticsColumns),
      )) {
        batch.push(cells);
        if (batch.length < rowsAtOnce) continue;
        yield batch;
        batch = [];
      }
      if (batch.length > 0) yield batch;
    },
    async close() {},
  };
}
