import { defaultSparesSettings } from '../../lib/analysis/demand/defaultSparesSettings';
import { usualDriftSettings } from '../../lib/analysis/drift/driftResult';
import type { Paper } from '../../lib/analysis/report/types';
import { wholeFleet } from '../../lib/analysis/scope';
import { order } from '../analysis/report/madePapers';
import { asOf, fleet } from './fixture';

/** A paper written by hand: three units, one order, nothing held, no signal. */
export function paper(changes: Partial<Paper> = {}): Paper {
  const open = fleet();
  return {
    scope: wholeFleet,
    fleet: open,
    unitsInFleet: open.units.length,
    firstDate: '2014-02-01',
    decisions: [],
    drift: {
      asOf,
      source: 'demo',
      settings: usualDriftSettings,
      years: 12,
      readings: 240,
      thresholds: [],
      ruleCosts: [],
      findings: [],
      uncharted: [],
    },
    spares: {
      asOf,
      until: '2031-11-01',
      settings: defaultSparesSettings,
      draws: 1_000,
      seed: 1,
      demand: [],
      orders: [order('TB-L', { cost: 4_200, currency: 'EUR' })],
      stock: [],
      budget: [],
      exceedances: [],
      expectedExceedances: 1.5,
      overhauls: 12,
      totals: [{ currency: 'EUR', cost: 4_200 }],
      messages: [],
    },
    ownDemand: null,
    held: [],
    ...changes,
  };
}
