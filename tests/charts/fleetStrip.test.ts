import { describe, expect, test } from 'vitest';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { type FleetStripRow, fleetStripData, fleetWindow } from '../../lib/charts/fleetStripData';
import { asOf, chances } from '../app/fixture';
import { draw, schemaComplaints, theme } from './checkSpec';

function strip(changes: Partial<FleetStripRow> = {}): FleetStripRow {
  return {
    unit: 'L-1107',
    chanceByDate: chances(0.001, 0.02, 0.03, 0.2, 0.95),
    plannedOverhauls: ['2027-05-01', '2099-01-01'],
    ratedLifeDate: null,
    note: '34 %',
    longNote: '34 %  thrust play',
    hint: 'L-1107: thrust play decides',
    ...changes,
  };
}

function windowOf(rows: readonly FleetStripRow[]) {
  const quarters = rows.flatMap(({ chanceByDate }) => chanceByDate.map(({ date }) => date));
  return fleetWindow(
    asOf,
    quarters,
    rows.flatMap(({ plannedOverhauls }) => plannedOverhauls),
  );
}

const ms = Date.parse;
const typical = [
  strip(),
  strip({ unit: 'L-1102', ratedLifeDate: '2027-03-01' }),
  strip({ unit: 'H-1', chanceByDate: [] }),
];
const inputs: Readonly<Record<string, readonly FleetStripRow[]>> = {
  typical,
  'no unit': [],
  'one unit': [strip()],
  'no forecast': [strip({ chanceByDate: [], plannedOverhauls: [] })],
};

describe.each(Object.entries(inputs))('a fleet of %s', (_, rows) => {
  test.each([true, false])(
    'is a valid specification that draws without a warning (narrow: %s)',
    async (narrow) => {
      const spec = fleetStrip(rows, windowOf(rows), theme, narrow);
      expect(schemaComplaints(spec)).toEqual([]);
      const { svg, complaints } = await draw(spec);
      expect(complaints).toEqual([]);
      expect(svg).not.toMatch(/NaN|undefined|null|Infinity/);
      for (const row of rows) expect(svg).toContain(row.unit);
    },
  );
});

test('the words at the right end are short where there is little room', async () => {
  const window = windowOf(typical);
  expect((await draw(fleetStrip(typical, window, theme, false))).svg).toContain('thrust play');
  expect((await draw(fleetStrip(typical, window, theme, true))).svg).not.toContain('thrust play</text>');
});

describe('fleetWindow', () => {
  test('runs from today to the end of the longest forecast', () => {
    expect(fleetWindow(asOf, ['2027-11-01', '2027-08-01'], ['2099-01-01'])).toEqual({
      from: asOf,
      to: '2027-11-01',
    });
  });

  test('falls back to the plan, and then to five years', () => {
    expect(fleetWindow(asOf, [], ['2099-01-01', '2027-05-01']).to).toBe('2099-01-01');
    expect(fleetWindow(asOf, [], ['2020-01-01']).to).toBe('2031-11-01');
  });
});

describe('fleetStripData', () => {
  const window = { from: asOf, to: '2027-11-01' };

  test('a strip starts today and carries the chance at the end of each stretch; equal inks join', () => {
    const { segments } = fleetStripData([strip()], window, false);
    expect(segments.map(({ from, to, chance }) => [from, to, chance])).toEqual([
      [ms(asOf), ms('2027-05-01'), 0.03],
      [ms('2027-05-01'), ms('2027-08-01'), 0.2],
      [ms('2027-08-01'), ms('2027-11-01'), 0.95],
    ]);
  });

  test('a first point after today is reached from today', () => {
    const late = strip({ chanceByDate: [{ date: '2027-01-01', chance: 0.3 }] });
    const { segments } = fleetStripData([late], window, false);
    expect(segments.map(({ from, to }) => [from, to])).toEqual([[ms(asOf), ms('2027-01-01')]]);
  });

  test('no ink past the end of the rated life: hatching instead', () => {
    const { segments, hatches } = fleetStripData([strip({ ratedLifeDate: '2027-03-01' })], window, false);
    expect(Math.max(...segments.map((segment) => segment.to))).toBe(ms('2027-03-01'));
    expect(Math.min(...hatches.map((hatch) => hatch.time))).toBeGreaterThan(ms('2027-03-01'));
    expect(hatches.length).toBeGreaterThan(10);
  });

  test('a strip without forecast is hatched from end to end, a full one not at all', () => {
    const { hatches } = fleetStripData([strip({ chanceByDate: [] })], window, false);
    expect(hatches.length).toBe(72);
    expect(fleetStripData([strip()], window, false).hatches).toEqual([]);
  });

  test('only what lies in the window is marked', () => {
    const { overhauls, lives } = fleetStripData([strip({ ratedLifeDate: '2050-01-01' })], window, false);
    expect(overhauls).toEqual([{ unit: 'L-1107', time: ms('2027-05-01') }]);
    expect(lives).toEqual([]);
  });
});
