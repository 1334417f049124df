import { describe, expect, test } from 'vitest';
import { committed, heldLines, type Row, table, truth, usableRows } from './demoTables';

const byName = (rows: readonly Row[], column: string) => new Map(rows.map((row) => [row[column] ?? '', row]));

describe('references between the tables', () => {
  test('hold everywhere but in the rows that are to be held', async () => {
    const units = byName(await table('demo/units.csv'), 'unit');
    const overhauls = byName(await usableRows('overhauls.csv'), 'overhaul');
    const readings = await usableRows('readings.csv');
    const parts = byName(await table('demo/parts.csv'), 'part');
    const limits = await table('demo/limits.csv');
    const installations = await table('demo/installations.csv');
    expect(overhauls.size).toBe((await usableRows('overhauls.csv')).length);
    for (const overhaul of overhauls.values()) {
      const unit = units.get(overhaul.unit ?? '');
      expect(unit, overhaul.overhaul).toBeDefined();
      for (const part of (overhaul.fitted ?? '').split(';').filter((code) => code !== '')) {
        expect(parts.get(part)?.frame, `${overhaul.overhaul} ${part}`).toBe(unit?.frame);
      }
    }
    for (const row of [...installations]) expect(units.has(row.unit ?? ''), row.unit).toBe(true);
    for (const reading of readings)
      expect(overhauls.has(reading.overhaul ?? ''), reading.overhaul).toBe(true);
    for (const limit of limits) {
      if (limit.reset_by !== 'assembly') expect(parts.get(limit.reset_by ?? '')?.frame).toBe(limit.frame);
    }
    const keys = readings.map((row) => [row.overhaul, row.characteristic, row.stage, row.clock].join('/'));
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('every overhaul but a delivery lies within a stay of its unit on its engine', async () => {
    const installations = await table('demo/installations.csv');
    for (const row of await usableRows('overhauls.csv')) {
      if (row.remarks === 'delivery record') continue;
      const date = row.date ?? '';
      const stays = installations.filter(
        (stay) =>
          stay.unit === row.unit &&
          stay.engine === row.engine &&
          stay.bank === row.bank &&
          (stay.from_date ?? '') < date &&
          (stay.to_date === '' || date <= (stay.to_date ?? '')),
      );
      expect(stays, row.overhaul).toHaveLength(1);
    }
  });

  test('a unit sits in one position at a time and a position holds one unit at a time', async () => {
    const installations = await table('demo/installations.csv');
    for (const key of [(row: Row) => row.unit, (row: Row) => `${row.engine}/${row.bank}`]) {
      for (const name of new Set(installations.map(key))) {
        const stays = installations.filter((row) => key(row) === name);
        const sorted = [...stays].sort((a, b) => (a.from_date ?? '').localeCompare(b.from_date ?? ''));
        sorted.slice(1).forEach((stay, index) => {
          const before = sorted[index]?.to_date ?? '';
          expect(before !== '' && before <= (stay.from_date ?? ''), name).toBe(true);
        });
      }
    }
  });
});

describe('hours and dates', () => {
  test('hours derived from the engine meter are the true ones', async () => {
    const installations = await table('demo/installations.csv');
    const events = await table('demo/events.csv');
    const overhauls = byName(await table('demo/overhauls.csv'), 'overhaul');
    // Meter carried on over replacements and corrections: reading + everything that events up to the day add to it.
    const carried = (engine: string, date: string, reading: number) =>
      events
        .filter(
          (event) => event.engine === engine && event.kind !== 'unit_moved' && (event.date ?? '') < date,
        )
        .reduce((sum, event) => sum + Number(event.value), reading);
    const { derived_unit_hours: derived } = truth();
    expect(derived.length).toBeGreaterThanOrEqual(5);
    for (const { overhaul, unit, unit_hours } of derived) {
      const row = overhauls.get(overhaul) ?? {};
      expect(row.unit_hours).toBe('');
      const stay =
        installations.find((candidate) => candidate.unit === unit && candidate.engine === row.engine) ?? {};
      const engine = row.engine ?? '';
      const hours =
        Number(stay.unit_hours_at_fit) +
        carried(engine, row.date ?? '', Number(row.engine_hours)) -
        carried(engine, stay.from_date ?? '', Number(stay.engine_hours_at_fit));
      expect(hours, overhaul).toBe(unit_hours);
    }
    const onNewMeter = derived.filter(
      ({ overhaul }) => Number(overhauls.get(overhaul)?.engine_hours) < 30_000,
    );
    expect(onNewMeter.length).toBeGreaterThanOrEqual(2);
  });

  test('rise from record to record of a unit, from 0 at delivery to the hours in the plan', async () => {
    const derived = new Map(truth().derived_unit_hours.map((row) => [row.overhaul, row.unit_hours]));
    const rows = await usableRows('overhauls.csv');
    for (const unit of new Set(rows.map((row) => row.unit))) {
      const hours = rows
        .filter((row) => row.unit === unit)
        .sort((a, b) => (a.date ?? '').localeCompare(b.date ?? ''))
        .map(
          (row) =>
            (row.unit_hours === '' ? derived.get(row.overhaul ?? '') : Number(row.unit_hours)) ?? Number.NaN,
        );
      const now =
        truth().units.find((candidate) => candidate.unit === unit)?.hours_now ?? Number.POSITIVE_INFINITY;
      expect(hours[0], unit).toBe(0);
      [...hours, now].slice(1).forEach((value, index) => {
        expect(value >= (hours[index] ?? Number.NaN), `${unit} ${index}`).toBe(true);
      });
    }
  });

  test('planned intervals, duties and hours a year stay within what the fleet states', async () => {
    for (const row of await table('demo/plan.csv')) {
      expect(Number(row.interval_h)).toBeGreaterThanOrEqual(8000);
      expect(Number(row.interval_h)).toBeLessThanOrEqual(16_000);
      expect(Number(row.hours_per_year)).toBeGreaterThanOrEqual(4500);
      expect(Number(row.hours_per_year)).toBeLessThanOrEqual(7500);
      expect(row.hours_now_date).toBe(truth().last_day);
      expect((row.next_overhaul_date ?? '') > truth().last_day).toBe(true);
    }
    const dates = (await usableRows('overhauls.csv')).map((row) => row.date ?? '').sort();
    expect(dates.at(-1)).toBe(truth().last_day);
    expect(dates[0]?.slice(0, 4)).toBe('2013');
  });
});

describe('rows to be held', () => {
  test('are between 8 and 15, each where the truth file says', () => {
    const { held } = truth();
    expect(held.rows).toBe(held.list.length);
    expect(held.rows).toBeGreaterThanOrEqual(8);
    expect(held.rows).toBeLessThanOrEqual(15);
    for (const { file, line, raw } of held.list) {
      const lines = committed(`demo/${file}`).split('\n');
      expect(lines[line - 1], `${file} line ${line}`).toContain(raw);
    }
    expect(heldLines('overhauls.csv').size + heldLines('readings.csv').size).toBe(held.rows);
  });

  test('and no other reading is out of shape', async () => {
    for (const row of await usableRows('readings.csv')) {
      expect(['found', 'left']).toContain(row.stage);
      expect(['mm', 'um', 'mil', '0.01mm']).toContain(row.uom);
      expect((row.characteristic ?? '').startsWith('tip_') ? ['12', '3', '6', '9'] : ['']).toContain(
        row.clock,
      );
      const numbers = [row.value, row.lower, row.upper].filter((cell) => cell !== '');
      expect(numbers.length === 1 ? row.value !== '' : numbers.length === 2 && row.value === '').toBe(true);
      for (const cell of numbers) expect(cell).toMatch(/^\d+(\.\d+)?$/);
      if (row.value === '') expect(Number(row.lower)).toBeLessThan(Number(row.upper));
    }
  });
});
