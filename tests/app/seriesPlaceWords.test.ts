import { expect, test } from 'vitest';
import { seriesPlaceWords } from '../../app/words/seriesPlaceWords';
import { unitSeries } from './fixture';

const band = (lower_mm: number, median_mm: number, upper_mm: number) => [
  { unitHours: 10_000, date: null, lower_mm, median_mm, upper_mm },
  { unitHours: 20_000, date: null, lower_mm, median_mm: median_mm + 0.1, upper_mm },
];

test('a place of a series says its hours and mm, and what band and own line hold at these hours', () => {
  const series = unitSeries({ sisterBand: band(0.1, 0.2, 0.4), ownLine: [] });
  const words = seriesPlaceWords(series, { x: 15_000, y: 0.3456 }).replaceAll(/[\u00a0\u202f]/g, ' ');
  expect(words).toBe('15 000 h on the unit, 0.346 mm; sister-informed 0.250 mm (80 %: 0.100 to 0.400)');
  const both = unitSeries({ sisterBand: band(0.1, 0.2, 0.4), ownLine: band(0.1, 0.15, 0.4) });
  expect(seriesPlaceWords(both, { x: 20_000, y: 0.3 })).toContain('; own line 0.250');
  expect(seriesPlaceWords(series, { x: 20_001, y: 0.3 })).not.toContain('sister-informed');
});
