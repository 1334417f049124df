import type { Decision, PartWanted } from '../../../lib/analysis/decisions/types';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import type { Spares } from '../../../lib/analysis/demand/types';
import { order } from '../../analysis/report/madePapers';
import { asOf, margin, unitResult, unitSeries } from '../fixture';

/** A part that a limit calls for. */
export const bearing: PartWanted = { part: 'TB-L', pieces: 1, because: 'limit', series: ['thrust_play'] };
/** A part of every overhaul. */
export const gasket: PartWanted = { part: 'GS-L', pieces: 1, because: 'every overhaul', series: [] };

/** What to do at a unit's next overhaul, with these parts. */
export function decision(
  name: string,
  parts: readonly PartWanted[],
  changes: Partial<Decision> = {},
): Decision {
  const own = {
    series: 'thrust_play',
    limitKind: 'upper',
    limit_mm: 0.3,
    action: 'fit new part',
    chanceBefore: 0.06,
    chanceRunningOn: 0.61,
    chanceRenewed: 0.01,
    bringForwardTo: null,
    doubt: null,
    reason: null,
  } as const;
  return {
    unit: name,
    group: 'Lark',
    engine: 'NS-2',
    bank: 'A',
    overhaul: 1,
    date: '2028-02-01',
    unitHours: 56_000,
    followingDate: '2030-02-01',
    action: 'fit new part',
    bringForwardTo: null,
    chanceBefore: 0.06,
    chanceRunningOn: 0.61,
    drivenBy: 'thrust_play',
    series: [own],
    parts,
    ratedLifeEnds: null,
    reason: null,
    ...changes,
  };
}

/** Orders of both parts, with these changes. */
export function spares(changes: Partial<Spares> = {}): Spares {
  return {
    asOf,
    until: '2031-11-01',
    settings: defaultSparesSettings,
    draws: 2000,
    seed: 1,
    demand: [],
    orders: [
      order('GS-L', { quantity: 9 }),
      order('TB-L', { cost: 4400, currency: 'EUR', name: 'Thrust bearing' }),
    ],
    stock: [],
    budget: [],
    exceedances: [],
    expectedExceedances: 0,
    overhauls: 12,
    totals: [],
    messages: [],
    ...changes,
  };
}

// The unit stands at 48 210 h and its run started at 12 200 h.
export const present = margin({ runHours: 36_010 });
/** The unit that the example follows. */
export const followed = unitResult({ series: [unitSeries({ margins: [present] })] });
