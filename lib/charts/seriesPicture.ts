import { layersWithData } from './layersWithData';
import { axesPicture } from './pictureFrame';
import { emptyLayer, lineLayers, readingLayers, ruleLayers } from './seriesLayers';
import { type SeriesPictureInput, seriesPictureData } from './seriesPictureData';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

/** A narrower stretch of values is given room, mm. */
const leastSpan_mm = 0.005;

/** Room about readings that hardly differ: without it the axis would write them to the nanometre. */
function roomLayer({ series: { readings } }: SeriesPictureInput): readonly Layer[] {
  const values = readings.map(({ value_mm }) => value_mm);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (readings.length === 0 || most - least >= leastSpan_mm) return [];
  const hours = readings[0]?.unitHours ?? 0;
  const ends = [least - leastSpan_mm, most + leastSpan_mm].map((value) => ({ hours, value }));
  return [{ ...emptyLayer, data: { values: ends } }];
}

/**
 * Readings of one series over the unit's hours, as found and as left told apart by shape and fill, interval readings
 * as bars, resets as rules, the unit's own line beside the sister-informed 80 % band, the limit, today and the range
 * expected at the next overhaul. No line crosses a reset: both lines belong to the current run only.
 */
export function seriesPicture(input: SeriesPictureInput, theme: ChartTheme, narrow: boolean): LayeredSpec {
  const drawn = layersWithData(
    [...lineLayers(theme), ...ruleLayers(theme), ...readingLayers(theme)],
    seriesPictureData(input),
  );
  const layer = drawn.layer.length > 0 ? [...drawn.layer, ...roomLayer(input)] : [emptyLayer];
  return axesPicture(narrow ? 300 : 380, 14, theme, { datasets: drawn.datasets, layer });
}
