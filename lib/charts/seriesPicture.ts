import { layersWithData } from './layersWithData';
import { axesPicture } from './pictureFrame';
import { emptyLayer, lineLayers, readingLayers, ruleLayers } from './seriesLayers';
import { type SeriesPictureInput, seriesPictureData } from './seriesPictureData';
import type { ChartTheme, LayeredSpec } from './theme';

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
  const layer = drawn.layer.length > 0 ? drawn.layer : [emptyLayer];
  return axesPicture(narrow ? 300 : 380, 14, theme, { datasets: drawn.datasets, layer });
}
