import type { Layer } from './theme';

type Datasets = Readonly<Record<string, readonly object[]>>;

/** The data sets that hold something, and the layers that draw them: an empty one has no extent to draw on. */
export function layersWithData(
  layers: readonly Layer[],
  datasets: Datasets,
): { readonly layer: Layer[]; readonly datasets: Record<string, object[]> } {
  const filled = Object.entries(datasets).filter(([, rows]) => rows.length > 0);
  const names = new Set(filled.map(([name]) => name));
  return {
    layer: layers.filter(
      (layer) => !layer.data || !('name' in layer.data) || names.has(layer.data.name ?? ''),
    ),
    datasets: Object.fromEntries(filled.map(([name, rows]) => [name, [...rows]])),
  };
}
