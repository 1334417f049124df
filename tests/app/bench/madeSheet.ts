import type { BenchSheet, BoxCheck, SheetItem } from '../../../lib/analysis/bench/types';
import { unit } from '../fixture';

const expected = { lower_mm: 0.21, median_mm: 0.23, upper_mm: 0.25 };

/** One reading with a limit, by hand. */
export const thrustPlay: SheetItem = {
  characteristic: 'thrust_play',
  shape: 'single',
  boxes: [
    {
      clock: null,
      found: 'thrust_play found',
      left: 'thrust_play left',
      lastLeft_mm: 0.2,
      expectedFound: expected,
    },
  ],
  series: [
    {
      series: 'thrust_play',
      limits: [{ kind: 'upper', limit_mm: 0.3, source: 'invented table 1' }],
      assembly: { lower_mm: 0.12, upper_mm: 0.2 },
      lastLeft_mm: 0.2,
      expectedFound: expected,
      reason: null,
      chancePast: 0.18,
    },
  ],
  lastLeftDate: '2025-03-10',
  resetParts: ['TB-L'],
  gaugeSd_mm: 0.01,
  gaugeFrom: 'pairs',
  reason: null,
};

/** A sheet with one reading, by hand. */
export function sheet(changes: Partial<BenchSheet> = {}): BenchSheet {
  return {
    unit: unit(),
    asOf: '2026-11-01',
    source: 'own',
    date: '2028-02-01',
    unitHours: 56_000,
    hoursFrom: 'plan',
    last: { date: '2025-03-10', unitHours: 38_000, workshop: 'Merrow Works' },
    items: [thrustPlay],
    parts: [
      { part: 'TB-L', name: 'Thrust bearing', pieces: 1, chance: 0.42, because: 'limit' },
      { part: 'IR-L', name: null, pieces: 1, chance: null, because: 'limit' },
      { part: 'GS-L', name: 'Gasket set', pieces: 1, chance: 1, because: 'every overhaul' },
    ],
    acceptedRisk: 0.1,
    workshops: ['Merrow Works'],
    ...changes,
  };
}

/** A typed reading that nothing is asked about, by hand. */
export function boxCheck(changes: Partial<BoxCheck> = {}): BoxCheck {
  return {
    box: 'thrust_play found',
    characteristic: 'thrust_play',
    stage: 'found',
    clock: null,
    lower_mm: 0.23,
    upper_mm: 0.23,
    isOpen: false,
    unreadable: null,
    expected,
    doubts: [],
    ...changes,
  };
}
