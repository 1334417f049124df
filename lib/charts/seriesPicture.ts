import { layersWithData } from './layersWithData';
import { emptyLayer, lineLayers, readingLayers, ruleLayers } from './seriesLayers';
import { type SeriesPictureInput, seriesPictureData } from './seriesPictureData';
import { type ChartTheme, chartConfig, type LayeredSpec, schema } from './theme';

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
  return {
    $schema: schema,
    config: chartConfig(theme),
    width: 600,
    height: narrow ? 300 : 380,
    autosize: { type: 'fit', contains: 'padding' },
    padding: { left: 4, top: 22, bottom: 4, right: 14 },
    datasets: drawn.datasets,
    layer: drawn.layer.length > 0 ? drawn.layer : [emptyLayer],
  };
}
