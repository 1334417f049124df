import type { RunSource } from '../../analysis/RunSource';
import { type Connector, normalisedText } from '../../store/Connector';
import { onOneLine, withLinesSql } from '../../store/oneLine';
import { statisticsTable } from '../../store/sql/runStatistics';
import { createWarehouseRunsSql, mergedRunsSql, seriesOfWarehouseSql, warehouseRuns } from './mergedRunsSql';
import { checkSameHistories } from './sameHistories';
import { refusedReasons } from './unusedReasons';
import { type StatisticsCells, statisticsColumns, type Warehouse, WarehouseError } from './Warehouse';
import { warehouseQuestion } from './warehouseQuestion';

/** What a warehouse had, in rows of its readings table. */
export interface ReadingsCounted {
  readonly inWarehouse: number;
  readonly used: number;
  /** Readings that no series uses, by reason. */
  readonly unused: ReadonlyMap<string, number>;
}

const refused = new Set<string>(Object.values(refusedReasons));

/**
 * Runs from a warehouse: their statistics are computed there, checked to be whole and put beside the other tables.
 *
 * @param onCounted told what became of every reading, once all are accounted for
 * @throws WarehouseError from the source if histories differ, readings are unfit, or any partition did not answer in full
 */
export function runsOfWarehouse(
  warehouse: Warehouse,
  onCounted: (counted: ReadingsCounted) => void,
): RunSource {
  return async (connector, asOf) => {
    const question = await warehouseQuestion(connector, asOf);
    await checkSameHistories(connector, warehouse, question);
    const inWarehouse = await warehouse.countReadings();
    await connector.run(createWarehouseRunsSql);
    let used = 0;
    const unused = new Map<string, number>();
    for await (const batch of warehouse.runStatistics(question)) {
      const runs = batch.filter(([unit]) => unit !== '');
      for (const cells of batch) {
        const [unit, reason = ''] = cells;
        const readings = Number(cells[statisticsColumns.length - 1]);
        if (unit === '') unused.set(reason, (unused.get(reason) ?? 0) + readings);
        else used += readings;
      }
      await addRuns(connector, runs);
    }
    checkCounts(warehouse, { inWarehouse, used, unused });
    onCounted({ inWarehouse, used, unused });
    // Weighed anew from the same few numbers: the warehouse is asked nothing.
    const make = (groupTable: string, series: string) =>
      `CREATE OR REPLACE TABLE ${statisticsTable(groupTable)} AS ${mergedRunsSql(groupTable, series)}`;
    return { seriesSql: seriesOfWarehouseSql, createSql: make, weighSql: make };
  };
}

async function addRuns(connector: Connector, runs: readonly StatisticsCells[]): Promise<void> {
  if (runs.length === 0) return;
  const body = runs.map((cells) => `${cells.map(onOneLine).join('\u001f')}\n`).join('');
  const values = statisticsColumns.map((column) =>
    column === 'unit' || column === 'series'
      ? `${withLinesSql(column)} AS ${column}`
      : `CAST(${column} AS DOUBLE) AS ${column}`,
  );
  await connector.runOnText(
    normalisedText(new TextEncoder().encode(body)),
    [...statisticsColumns],
    (rows) => `INSERT INTO ${warehouseRuns} SELECT ${values.join(', ')} FROM ${rows}`,
  );
}

function checkCounts({ name }: Warehouse, { inWarehouse, used, unused }: ReadingsCounted): void {
  const unfit = [...unused].filter(([reason]) => refused.has(reason));
  if (unfit.length > 0) {
    const counts = unfit.map(([reason, readings]) => `${readings} ${reason}`).join('; ');
    throw new WarehouseError(
      `The readings table of ${name} is not clean: ${counts}. Correct or remove these rows, or load what the intake command writes`,
    );
  }
  const counted = [...unused.values()].reduce((sum, readings) => sum + readings, used);
  if (counted !== inWarehouse)
    throw new WarehouseError(
      `${name} has ${inWarehouse} readings, but its statistics are of ${counted}: its tables changed meanwhile, or an overhaul stands twice. Start again`,
    );
  if (used === 0) throw new WarehouseError(`No reading of ${name} can be used`);
}
