import { describe, expect, test } from 'vitest';
import { drawSvg } from '../../lib/charts/drawSvg';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { seriesPicture } from '../../lib/charts/seriesPicture';
import type { LayeredSpec } from '../../lib/charts/theme';
import { asOf, chances, unitSeries } from '../app/fixture';
import { draw, theme } from './checkSpec';

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

describe('drawSvg', () => {
  test('draws what the specification with its data draws at once', async () => {
    const bare = unitSeries({ ownLine: [], resets: [] });
    const picture = (series: typeof bare) =>
      seriesPicture({ series, hoursNow: 48_210, asOf, nextOverhaulDate: null }, theme, false);
    for (const spec of [strips('A', 'B'), picture(unitSeries()), picture(bare)]) {
      expect(await drawSvg(spec)).toBe((await draw(spec)).svg);
    }
  });

  test('a second specification of the same shape shows its own data', async () => {
    await drawSvg(strips('first'));
    const second = await drawSvg(strips('other'));
    expect(second).toContain('other');
    expect(second).not.toContain('first');
  });

  test('a name with characters that XML cannot hold does not spoil the picture', async () => {
    const svg = await drawSvg(strips('bell\u0007 none\uFFFF \u{1F6E2} tab\t'));
    expect(svg).toContain('bell\uFFFD none\uFFFD \u{1F6E2} tab');
  });

  test('a width takes the place of the one that the specification states', async () => {
    const width = (svg: string) => Number(/<svg[^>]* width="([\d.]+)"/.exec(svg)?.[1]);
    expect(width(await drawSvg(strips('A'), 800))).toBe(800);
    expect(width(await drawSvg(strips('A'), 431))).toBe(431);
  });
});
