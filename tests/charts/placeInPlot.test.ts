import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandAt } from '../../lib/charts/bandAt';
import { drawPicture } from '../../lib/charts/drawSvg';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { placeInPlot } from '../../lib/charts/placeInPlot';
import { seriesPicture } from '../../lib/charts/seriesPicture';
import { asOf, reading, unitSeries } from '../app/fixture';
import { theme } from './checkSpec';

/** Where the marks of a layer are drawn, from the text of the picture: its own shift and that of the plot. */
function drawnAt(svg: string, says: string): { readonly left: number; readonly top: number } {
  const number = '(-?[\\d.]+)';
  const shift = new RegExp(`stroke-miterlimit="4" transform="translate\\(${number},${number}\\)"`).exec(svg);
  const mark = new RegExp(`aria-label="${says}[^>]*transform="translate\\(${number},${number}\\)"`).exec(svg);
  if (shift === null || mark === null) throw new Error(`nothing that says '${says}' is drawn`);
  return { left: Number(shift[1]) + Number(mark[1]), top: Number(shift[2]) + Number(mark[2]) };
}

describe('a place of a picture', () => {
  test('reads as the hours and mm of the reading that is drawn there', async () => {
    const readings = [
      reading({ unitHours: 12_345, value_mm: 0.217, date: '2020-03-04' }),
      reading({ unitHours: 41_000, value_mm: 0.284, date: '2024-05-06' }),
    ];
    const given = {
      series: unitSeries({ readings }),
      hoursNow: 48_210,
      asOf,
      nextOverhaulDate: '2028-02-01',
    };
    const { svg, plot } = await drawPicture(seriesPicture(given, theme, false), 900);
    if (plot === null) throw new Error('a series has two straight axes');
    for (const { unitHours, value_mm, date, stage } of readings) {
      const { left, top } = drawnAt(svg, `as ${stage} ${date}`);
      const place = placeInPlot(plot, left, top);
      expect(place?.x).toBeCloseTo(unitHours, 0);
      expect(place?.y).toBeCloseTo(value_mm ?? 0, 4);
    }
    expect(placeInPlot(plot, 0, 0)).toBeNull();
    expect(placeInPlot(plot, plot.x.to_px + 1, (plot.y.from_px + plot.y.to_px) / 2)).toBeNull();
  });

  test('is asked of no picture whose rows have names', async () => {
    const window = { from: asOf, to: '2027-05-01' };
    expect((await drawPicture(fleetStrip([], window, theme, false))).plot).toBeNull();
  });
});

describe('a band between its points', () => {
  const hours = fc.integer({ min: 0, max: 100_000 });

  test('of a straight line is that line at every hour, and nothing beyond its ends', () => {
    fc.assert(
      fc.property(fc.uniqueArray(hours, { minLength: 2, maxLength: 20 }), hours, (given, asked) => {
        const ends = [...given].sort((a, b) => a - b);
        const line = (at: number, start: number) => start + at * 1e-5;
        const band = ends.map((at) => ({
          unitHours: at,
          date: null,
          lower_mm: line(at, 0.1),
          median_mm: line(at, 0.2),
          upper_mm: line(at, 0.3),
        }));
        const found = bandAt(band, asked);
        const isWithin = asked >= (ends[0] ?? 0) && asked <= (ends.at(-1) ?? 0);
        expect(found !== null).toBe(isWithin);
        if (found === null) return;
        expect(found.lower_mm).toBeCloseTo(line(asked, 0.1), 9);
        expect(found.median_mm).toBeCloseTo(line(asked, 0.2), 9);
        expect(found.upper_mm).toBeCloseTo(line(asked, 0.3), 9);
      }),
    );
  });

  test('there is none', () => expect(bandAt([], 1000)).toBeNull());
});
