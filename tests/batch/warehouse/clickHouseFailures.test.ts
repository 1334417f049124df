import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ClickHouseHttp } from '../../../lib/batch/warehouse/clickhouse/ClickHouseHttp';
import type { ClickHouseServers } from '../../../lib/batch/warehouse/servers/clickHouseServers';
import { refusedReasons } from '../../../lib/batch/warehouse/unusedReasons';
import { FleetBesideWarehouse } from './FleetBesideWarehouse';
import { clickHouse, loadedClickHouse } from './warehouses';

let fleet: FleetBesideWarehouse;
beforeAll(async () => {
  fleet = await FleetBesideWarehouse.open();
});
afterAll(() => fleet.close());

describe.skipIf(clickHouse === null)('two ClickHouse shards', () => {
  let servers: ClickHouseServers;
  beforeAll(async () => {
    servers = await fleet.withAll((all) => loadedClickHouse(fleet.servers.path, clickHouse ?? '', all));
  });
  afterAll(() => servers.stop());

  /** Waits until the first server runs so many questions besides this one. */
  async function untilRunning(questions: number): Promise<void> {
    const http = new ClickHouseHttp(servers.settings, undefined);
    for (let running = -1; running < questions; await wait(50))
      for await (const [count] of http.rows('SELECT count() - 1 FROM system.processes'))
        running = Number(count);
  }

  it('keep every unit whole, and both have some', async () => {
    const onShard = async (port: number) => {
      const units: string[] = [];
      const http = new ClickHouseHttp({ ...servers.settings, port }, undefined);
      for await (const [unit = ''] of http.rows('SELECT DISTINCT unit FROM readings')) units.push(unit);
      return units;
    };
    const [first = [], second = []] = await Promise.all(servers.shards.map(({ port }) => onShard(port)));
    expect(first.filter((unit) => second.includes(unit))).toEqual([]);
    expect(first.length + second.length).toBe(60);
    expect(Math.min(first.length, second.length)).toBeGreaterThan(15);
  });

  it('refuses readings that are not clean, each reason with its count, and a question that cannot be answered', async () => {
    const http = new ClickHouseHttp(servers.settings, undefined);
    await expect(http.run('SELECT none')).rejects.toThrow(/gave no full answer \(Code: 47.*none/);
    const bad = [
      `'none', 'runout', 'found', NULL, 0.02, NULL, NULL`,
      `'T-0000000/1', 'colour', 'found', NULL, 0.02, NULL, NULL`,
      `'T-0000000/1', 'nut_stand_out', 'new', NULL, 0.02, NULL, NULL`,
      `'T-0000000/1', 'nut_stand_out', 'found', '12', 0.02, NULL, NULL`,
      `'T-0000001/1', 'nut_stand_out', 'found', '5', 0.02, NULL, NULL`,
      `'T-0000000/2', 'nut_stand_out', 'found', NULL, NULL, 0.02, NULL`,
      `'T-0000000/3', 'nut_stand_out', 'found', NULL, NULL, 0.03, 0.02`,
      `'T-0000000/4', 'seal_gap', 'left', NULL, -0.02, NULL, NULL`,
    ];
    for (const cells of bad)
      await http.run(
        `INSERT INTO all_readings SELECT ${cells.startsWith("'T-0000001") ? `'T-0000001'` : `'T-0000000'`}, ${cells}`,
      );
    await http.run(
      `INSERT INTO all_readings SELECT * FROM readings WHERE unit = 'T-0000002' AND characteristic = 'runout' AND stage = 'left'`,
    );
    const sentence = await fleet.refusal(servers.settings);
    const counts: readonly (readonly [number, string])[] = [
      [2, refusedReasons.unplaced],
      [1, refusedReasons.stage],
      [1, refusedReasons.shape],
      [1, refusedReasons.clock],
      [1, refusedReasons.noValue],
      [1, refusedReasons.interval],
      [1, refusedReasons.negative],
      [20, refusedReasons.twice],
    ];
    for (const [readings, reason] of counts) expect(sentence).toContain(`${readings} ${reason}`);
  });

  it('writes nothing when a shard ends while it answers, nor when it is away', async () => {
    const fresh = await fleet.withAll((all) =>
      loadedClickHouse(join(fleet.servers.path, 'fresh'), clickHouse ?? '', all),
    );
    await servers.stop();
    servers = fresh;
    await expect(fleet.refusal(fresh.settings)).rejects.toThrow('nothing was refused');
    fresh.pauseShard(1);
    const running = fleet.analyse(fresh.settings);
    await untilRunning(1);
    await fresh.killShard(1);
    const sentence =
      /^the ClickHouse warehouse default at 127\.0\.0\.1:\d+ gave no full answer \(Code: [\s\S]+\): see that every shard runs, then start again\n$/;
    for (const ended of [await running, await fleet.analyse(fresh.settings)]) {
      expect(ended.stderr).toMatch(sentence);
      expect(ended).toMatchObject({ status: 1, written: [] });
    }
  }, 180_000);
});
