import { describe, expect, test } from 'vitest';
import { chartView } from '../../app/chart/chartView';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { seriesPicture } from '../../lib/charts/seriesPicture';
import type { LayeredSpec } from '../../lib/charts/theme';
import { draw, theme } from '../charts/checkSpec';
import { asOf, chances, unitSeries } from './fixture';

function strips(...units: readonly string[]): LayeredSpec {
  const rows = units.map((unit) => ({
    unit,
    chanceByDate: chances(0.1, 0.4, 0.95),
    plannedOverhauls: [],
    ratedLifeDate: null,
    note: '34 %',
    longNote: '34 %  thrust play',
    hint: unit,
  }));
  return fleetStrip(rows, { from: asOf, to: '2027-05-01' }, theme, false);
}

async function svgOf(spec: LayeredSpec): Promise<string> {
  const view = chartView(spec);
  const svg = await view.toSVG();
  view.finalize();
  return svg;
}

describe('chartView', () => {
  test('draws what the specification with its data draws at once', async () => {
    const bare = unitSeries({ ownLine: [], resets: [] });
    const picture = (series: typeof bare) =>
      seriesPicture({ series, hoursNow: 48_210, asOf, nextOverhaulDate: null }, theme, false);
    for (const spec of [strips('A', 'B'), picture(unitSeries()), picture(bare)]) {
      expect(await svgOf(spec)).toBe((await draw(spec)).svg);
    }
  });

  test('a second specification of the same shape shows its own data', async () => {
    await svgOf(strips('first'));
    const second = await svgOf(strips('other'));
    expect(second).toContain('other');
    expect(second).not.toContain('first');
  });
});
