import { describe, expect, test } from 'vitest';
import { chosenExample } from '../../../app/example/chosenExample';
import { presentRun } from '../../../app/example/presentRun';
import { everything, fleetRows } from '../../../app/fleet/fleetRows';
import type { Decision } from '../../../lib/analysis/decisions/types';
import { order } from '../../analysis/report/madePapers';
import { fleet, unit, unitResult, unitSeries } from '../fixture';
import { bearing, decision, followed, gasket, present } from './madeExample';

describe('the unit of the example', () => {
  const rows = fleetRows(fleet(), everything);
  const inOrder = rows.map((row) => row.unit.unit);

  test('is the first of Fleet’s order with a part that a limit calls for and that has to be ordered', () => {
    const all = inOrder.map((name) => decision(name, [gasket, bearing]));
    const chosen = (decisions: readonly Decision[], quantity = 2) =>
      chosenExample(rows, decisions, [order('GS-L'), order('TB-L', { quantity })]);
    expect(chosen(all)?.row.unit.unit).toBe(inOrder[0]);
    const onlyLast = inOrder.map((name, place) => decision(name, place === 2 ? [bearing] : [gasket]));
    expect([chosen(onlyLast)?.row.unit.unit, chosen(onlyLast)?.order?.part]).toEqual([inOrder[2], 'TB-L']);
    // A part of a later overhaul does not count, nor one that is in stock.
    expect(chosen(all.map((one) => ({ ...one, overhaul: 2 })))?.wanted).toBeNull();
    expect(chosen(all, 0)?.wanted).toBeNull();
    expect(chosenExample([], all, [])).toBeNull();
  });

  test('its present run takes readings that started with it, and not the one that ended the run before', () => {
    const run = presentRun(followed, unitSeries(), present);
    expect(run?.start_h).toBe(12_200);
    expect(run?.readings.map((one) => [one.stage, one.unitHours])).toEqual([
      ['left', 12_200],
      ['found', 20_400],
      ['found', 30_100],
    ]);
    expect(presentRun(unitResult({ unit: unit({ hoursNow: null }) }), unitSeries(), present)).toBeNull();
  });
});
