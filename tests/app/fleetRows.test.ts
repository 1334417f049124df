import { describe, expect, test } from 'vitest';
import { chanceWords, everything, fleetRows, limitedSeries } from '../../app/fleet/fleetRows';
import { rowRemark } from '../../app/words/rowRemark';
import { fleet, margin, marginWithoutForecast, unit } from './fixture';

describe('fleetRows', () => {
  test('orders by chance at the next overhaul, then early date, then without forecast, then without limit', () => {
    const units = ['none', 'reason', 'late', 'early', 'low', 'high'].map((name) => unit({ unit: name }));
    const noChance = { chanceAtNextOverhaul: null, nextOverhaulDate: null };
    const margins = [
      marginWithoutForecast({ unit: 'reason' }),
      margin({ unit: 'late', ...noChance, dateEarly: '2030-01-01' }),
      margin({ unit: 'early', ...noChance, dateEarly: '2027-01-01' }),
      margin({ unit: 'low', chanceAtNextOverhaul: 0.01 }),
      margin({ unit: 'high', chanceAtNextOverhaul: 0.9 }),
    ];
    const rows = fleetRows(fleet({ units, margins }), everything);
    expect(rows.map((row) => row.unit.unit)).toEqual(['high', 'low', 'early', 'late', 'reason', 'none']);
  });

  test('filters by site, frame and engine, and looks at one series only', () => {
    const names = (filter: Partial<typeof everything>) =>
      fleetRows(fleet(), { ...everything, ...filter }).map((row) => row.unit.unit);
    expect(names({ site: 'South Stack' })).toEqual(['L-1102']);
    expect(names({ frame: 'Heron' })).toEqual(['H-2001']);
    expect(names({ engine: 'NS-2' })).toEqual(['L-1107']);
    expect(names({ workshop: 'Fulmar Rotor Shop' })).toHaveLength(3);
    expect(names({ workshop: 'Merrow Works' })).toEqual([]);
    expect(names({ units: ['H-2001', 'L-1102'] }).toSorted()).toEqual(['H-2001', 'L-1102']);
    const runout = fleetRows(fleet(), { ...everything, series: 'runout' });
    expect(runout.find((row) => row.unit.unit === 'L-1107')?.outlook.chanceAtNextOverhaul).toBeCloseTo(
      0.1,
      12,
    );
    expect(runout.find((row) => row.unit.unit === 'L-1102')?.outlook.deciding).toBeNull();
  });

  test('only series with a limit are offered, by name', () => {
    expect(limitedSeries(fleet())).toEqual([
      { code: 'runout', name: 'Runout' },
      { code: 'thrust_play', name: 'Thrust play' },
    ]);
  });
});

describe('chanceWords', () => {
  const words = (chance: number, alone: boolean) => {
    const margins = [margin({ chanceAtNextOverhaul: chance })];
    if (!alone) margins.push(marginWithoutForecast({ series: 'runout' }));
    const [row] = fleetRows(fleet({ units: [unit()], margins }), everything);
    return row && chanceWords(row).replaceAll(/[\u202f\u00a0]/g, ' ');
  };

  test('mark a lower bound where a series has no forecast', () => {
    expect(words(0.34, true)).toBe('34 %');
    expect(words(0.34, false)).toBe('≥ 34 %');
    expect(words(0.001, false)).toBe('≥ 0 %');
    expect(words(0.999, false)).toBe('>99 %');
  });
});

describe('rowRemark', () => {
  const rowOf = (margins: ReturnType<typeof margin>[], changes: Parameters<typeof unit>[0] = {}) => {
    const [row] = fleetRows(fleet({ units: [unit(changes)], margins }), everything);
    if (row === undefined) throw new Error('the fleet has one unit');
    return row;
  };

  test('gives the reason where there is no forecast', () => {
    expect(rowRemark(rowOf([marginWithoutForecast()]))).toBe(
      'No forecast: the group has under 2 units with 2 readings in a run.',
    );
    expect(rowRemark(rowOf([]))).toBe('No limit, no verdict.');
    expect(rowRemark(rowOf([margin()]))).toBeNull();
  });

  test('gives the cautions of a forecast, and where the hours come from', () => {
    const text = rowRemark(
      rowOf([margin({ cappedByRatedLife: true, extrapolated: true })], { hoursSource: 'overhauls' }),
    );
    expect(text).toContain('Capped by the rated life');
    expect(text).toContain('an extrapolation, no reason for a longer interval');
    expect(text).toContain("the unit's own overhauls");
  });
});
