// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot } from 'react-dom/client';
import { expect, it, vi } from 'vitest';
import { everything, fleetRows, hasRows, wholeFleetInSteps } from '../../app/fleet/fleetRows';
import { useFleetAhead } from '../../app/fleet/useFleetAhead';
import type { FleetResult } from '../../lib/analysis/types';
import { fleet, margin, unit } from './fixture';

/** A fleet of so many units, each with a margin; the chance goes down from one to the next. */
function large(count: number, asOf: string): FleetResult {
  const names = Array.from({ length: count }, (_, place) => `U-${place}`);
  return fleet({
    asOf,
    units: names.map((name) => unit({ unit: name })),
    margins: names.map((name, place) => margin({ unit: name, chanceAtNextOverhaul: 1 - place / count })),
  });
}

const shown: (string | null)[] = [];
function Probe({ of }: { readonly of: FleetResult }) {
  shown.push(useFleetAhead(of)?.asOf ?? null);
  return null;
}

it('shows a large fleet when its rows are made, step by step, and the one before it until then', async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  vi.useFakeTimers();
  const root = createRoot(document.createElement('div'));
  const [first, second] = [large(5_000, '2026-01-01'), large(5_000, '2026-02-01')];
  act(() => root.render(<Probe of={first} />));
  expect([shown.at(-1), hasRows(first)]).toEqual([null, false]);
  await act(() => vi.runAllTimersAsync());
  expect([shown.at(-1), hasRows(first)]).toEqual(['2026-01-01', true]);
  act(() => root.render(<Probe of={second} />));
  expect([shown.at(-1), hasRows(second)]).toEqual(['2026-01-01', false]);
  await act(() => vi.runAllTimersAsync());
  expect(shown.at(-1)).toBe('2026-02-01');
  // A small one needs no steps.
  act(() => root.render(<Probe of={fleet({ asOf: '2026-03-01' })} />));
  expect(shown.at(-1)).toBe('2026-03-01');
  act(() => root.unmount());
  vi.useRealTimers();
  const rows = fleetRows(second, everything);
  expect(rows).toHaveLength(5_000);
  const percents = rows.map(({ outlook }) => Math.round(100 * (outlook.chanceAtNextOverhaul ?? 0)));
  expect(percents).toEqual(percents.toSorted((one, other) => other - one));
  // Made once.
  expect(fleetRows(second, everything)).toBe(rows);
  expect(fleetRows(second, { ...everything, units: ['U-7'] })).toEqual(
    rows.filter((row) => row.unit.unit === 'U-7'),
  );
});

it('rows that several wait for are made once, and whoever cannot wait has the rest made at once', () => {
  const open = large(5_000, '2026-04-01');
  const steps = wholeFleetInSteps(open);
  expect(steps.next().done).toBe(false);
  expect(wholeFleetInSteps(open)).toBe(steps);
  const rows = fleetRows(open, everything);
  expect(steps.next().done).toBe(true);
  expect(fleetRows(open, everything)).toBe(rows);
  expect(rows.map(({ unit }) => unit.unit)).toEqual(
    fleetRows(large(5_000, '2026-04-01'), everything).map(({ unit }) => unit.unit),
  );
});
