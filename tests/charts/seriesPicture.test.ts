import { describe, expect, test } from 'vitest';
import type { UnitSeries } from '../../lib/analysis/types';
import { seriesPicture } from '../../lib/charts/seriesPicture';
import { type SeriesPictureInput, seriesPictureData } from '../../lib/charts/seriesPictureData';
import { asOf, margin, marginWithoutForecast, reading, unitSeries } from '../app/fixture';
import { draw, schemaComplaints, theme } from './checkSpec';

function input(
  series: Partial<UnitSeries> = {},
  changes: Partial<SeriesPictureInput> = {},
): SeriesPictureInput {
  return { series: unitSeries(series), hoursNow: 48_210, asOf, nextOverhaulDate: '2028-02-01', ...changes };
}

const inputs: Readonly<Record<string, SeriesPictureInput>> = {
  typical: input(),
  'two limits': input({ margins: [margin(), margin({ limitKind: 'lower', limit_mm: 0.1 })] }),
  'no forecast': input({ sisterBand: [], ownLine: [], margins: [marginWithoutForecast()] }),
  'one reading': input({ readings: [reading()], sisterBand: [], ownLine: [], resets: [], margins: [] }),
  'nothing at all': input(
    { readings: [], sisterBand: [], ownLine: [], resets: [], margins: [], nextOverhaulUnitHours: null },
    { hoursNow: null, nextOverhaulDate: null },
  ),
};

describe.each(Object.entries(inputs))('a series with %s', (_, given) => {
  test.each([true, false])(
    'is a valid specification that draws without a warning (narrow: %s)',
    async (narrow) => {
      const spec = seriesPicture(given, theme, narrow);
      expect(schemaComplaints(spec)).toEqual([]);
      const { svg, complaints } = await draw(spec);
      expect(complaints).toEqual([]);
      expect(svg).not.toMatch(/NaN|undefined|null|Infinity/);
    },
  );
});

test('the picture names the limit, today, the next overhaul and the reset', async () => {
  const { svg } = await draw(seriesPicture(input(), theme, false));
  for (const words of [
    'upper limit 0.300\u00a0mm',
    'today, 2026-11-01',
    'next overhaul, 2028-02-01',
    'reset: TB-L',
  ]) {
    expect(svg).toContain(words);
  }
});

test('an axis about readings that hardly differ is written to the micrometre, and no finer', async () => {
  for (const readings of [[reading()], [reading({ value_mm: 0.024 }), reading({ value_mm: 0.0241 })]]) {
    const alone = input({ readings, sisterBand: [], ownLine: [], resets: [], margins: [] });
    const { svg } = await draw(seriesPicture(alone, theme, false));
    const ticks = [...svg.matchAll(/>(\d\.\d+)</g)].map(([, tick = '']) => tick);
    expect(ticks.length).toBeGreaterThan(2);
    for (const tick of ticks) expect(tick).toMatch(/^\d\.\d{1,3}$/);
  }
});

describe('seriesPictureData', () => {
  test('readings as found and as left stand apart, interval readings are bars and no points', () => {
    const data = seriesPictureData(input());
    expect(data.found.map((point) => point.value)).toEqual([0.24, 0.21]);
    expect(data.left.map((point) => point.value)).toEqual([0.14, 0.15]);
    expect(data.intervals.map((point) => [point.lower, point.upper])).toEqual([[0.25, 0.3]]);
  });

  test('the expected reading is drawn at the hours of the next overhaul, and only with a plan', () => {
    expect(seriesPictureData(input()).expected).toMatchObject([
      { hours: 52_000, lower: 0.25, median: 0.28, upper: 0.31 },
    ]);
    expect(seriesPictureData(input({ nextOverhaulUnitHours: null })).expected).toEqual([]);
  });

  test('a margin without a limit draws no limit', () => {
    expect(seriesPictureData(input({ margins: [margin({ limit_mm: null })] })).limits).toEqual([]);
  });
});
