import type { ChartTheme, Layer } from './theme';

/** Layers of the clearance circle in the data sets of circlePicture, in radii of the casing up to `reach` from the middle. */
export function circleLayers(theme: ChartTheme, reach: number): Layer[] {
  const scale = { domain: [-reach, reach], nice: false };
  const x = { field: 'x', type: 'quantitative' as const, scale, axis: null };
  const y = { field: 'y', type: 'quantitative' as const, scale, axis: null };
  const order = { field: 'step', type: 'quantitative' as const };
  const ring = (
    name: string,
    look: { color: string; strokeWidth: number; strokeDash?: number[] },
  ): Layer => ({
    data: { name },
    mark: { type: 'line', ...look },
    encoding: { x, y, order },
  });
  const ends = { x, y, x2: { field: 'x2' }, y2: { field: 'y2' } };
  const description = { field: 'hint', type: 'nominal' as const };
  const text = { field: 'text', type: 'nominal' as const };
  const label = { x: { ...x, field: 'labelX' }, y: { ...y, field: 'labelY' }, text };
  const point = {
    type: 'point' as const,
    shape: 'circle' as const,
    opacity: 1,
    aria: true,
    stroke: theme.ink,
  };
  return [
    ring('casing', { color: theme.muted, strokeWidth: 4 }),
    ring('largest', { color: theme.accent, strokeWidth: 1.5 }),
    ring('smallest', { color: theme.accent, strokeWidth: 1.5 }),
    ring('before', { color: theme.muted, strokeWidth: 1.5, strokeDash: [5, 4] }),
    ring('now', { color: theme.ink, strokeWidth: 2 }),
    { data: { name: 'arrows' }, mark: { type: 'rule', color: theme.hue, strokeWidth: 2.5 }, encoding: ends },
    {
      data: { name: 'arrows' },
      mark: { type: 'point', shape: 'triangle', size: 60, fill: theme.hue, stroke: null, opacity: 1 },
      encoding: {
        x: { ...x, field: 'x2' },
        y: { ...y, field: 'y2' },
        angle: { field: 'turn', type: 'quantitative', scale: null },
      },
    },
    {
      data: { name: 'beforePoints' },
      mark: { ...point, size: 55, fill: theme.paper },
      encoding: { x, y, description },
    },
    {
      data: { name: 'nowPoints' },
      mark: { ...point, size: 55, fill: theme.ink },
      encoding: { x, y, description },
    },
    {
      data: { name: 'nowPoints' },
      mark: { type: 'text', stroke: theme.paper, strokeWidth: 4 },
      encoding: label,
    },
    { data: { name: 'nowPoints' }, mark: { type: 'text' }, encoding: label },
    {
      data: { name: 'limitNames' },
      mark: { type: 'text', stroke: theme.paper, strokeWidth: 4 },
      encoding: { x, y, text },
    },
    {
      data: { name: 'limitNames' },
      mark: { type: 'text', color: theme.accent },
      encoding: { x, y, text },
    },
    {
      data: { name: 'hours' },
      mark: { type: 'text', color: theme.muted, fontWeight: 'bold' },
      encoding: { x, y, text },
    },
    { data: { name: 'bar' }, mark: { type: 'rule', color: theme.ink, strokeWidth: 3 }, encoding: ends },
    {
      data: { name: 'bar' },
      mark: { type: 'text', align: 'left' },
      encoding: { x: { ...x, field: 'end' }, y, text },
    },
  ];
}
