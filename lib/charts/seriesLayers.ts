import { titleAbove } from './pictureFrame';
import { symbols } from './symbols';
import type { ChartTheme, Layer } from './theme';

const thinDash = [5, 4];
const dots = [2, 3];

const hours = {
  field: 'hours',
  type: 'quantitative' as const,
  title: 'hours on the unit, h',
  scale: { zero: false, nice: false, padding: 14 },
  axis: {
    grid: false,
    labelFlush: false,
    tickCount: 6,
    format: ',.0f',
  },
};
/** Shown when a mark is pointed at. */
const description = { field: 'hint', type: 'nominal' as const };
const label = { field: 'label', type: 'nominal' as const };

function length(field: string) {
  return {
    field,
    type: 'quantitative' as const,
    title: 'mm',
    scale: { zero: false, nice: false, padding: 34 },
    axis: {
      ...titleAbove,
      tickCount: 6,
    },
  };
}

/** Axes alone, for a series with nothing to draw. */
export const emptyLayer: Layer = {
  data: { values: [{ hours: 0, value: 0 }] },
  mark: { type: 'point', opacity: 0 },
  encoding: { x: hours, y: length('value') },
};

/** The forecast: the sister-informed band with its median, and the unit's own line with its prediction interval. */
export function lineLayers(theme: ChartTheme): Layer[] {
  const edge = { type: 'line', color: theme.ink, strokeWidth: 0.9, strokeDash: thinDash } as const;
  return [
    {
      data: { name: 'band' },
      mark: { type: 'area', color: theme.hue, opacity: 0.2 },
      encoding: { x: hours, y: length('lower'), y2: { field: 'upper' } },
    },
    {
      data: { name: 'band' },
      mark: { type: 'line', color: theme.hue, strokeWidth: 2 },
      encoding: { x: hours, y: length('median') },
    },
    {
      data: { name: 'own' },
      mark: { ...edge, strokeDash: [1, 0] },
      encoding: { x: hours, y: length('median') },
    },
    { data: { name: 'own' }, mark: edge, encoding: { x: hours, y: length('lower') } },
    { data: { name: 'own' }, mark: edge, encoding: { x: hours, y: length('upper') } },
  ];
}

/** Rules across the picture with their words: resets, today, the next overhaul and the limits. */
export function ruleLayers(theme: ChartTheme): Layer[] {
  const upright = (name: string, color: string, strokeDash: number[]): Layer => ({
    data: { name },
    mark: { type: 'rule', color, strokeDash, strokeWidth: 1, aria: name === 'resets' },
    encoding: { x: hours, ...(name === 'resets' ? { description } : {}) },
  });
  const words = (name: string, y: number): Layer[] =>
    [{ stroke: theme.paper, strokeWidth: 4 }, { color: theme.ink }].map((look) => ({
      data: { name },
      mark: { type: 'text', align: 'right', dx: -5, fontSize: 11, ...look },
      encoding: { x: hours, y: { value: y }, text: label },
    }));
  return [
    upright('resets', theme.muted, [1, 0]),
    upright('today', theme.ink, thinDash),
    upright('next', theme.ink, dots),
    {
      data: { name: 'resets' },
      mark: {
        type: 'text',
        angle: 270,
        align: 'left',
        dx: 4,
        dy: -6,
        color: theme.muted,
        fontSize: 11,
      },
      encoding: { x: hours, y: { value: 'height' }, text: label },
    },
    // Paper under the words, so that they can be read across a rule.
    ...words('today', 8),
    ...words('next', 24),
    {
      data: { name: 'limits' },
      mark: { type: 'rule', color: theme.accent, strokeWidth: 2 },
      encoding: { y: length('limit') },
    },
    {
      data: { name: 'limits' },
      mark: { type: 'text', align: 'left', dx: 4, dy: -8, color: theme.accent, fontWeight: 'bold' },
      encoding: { x: { value: 0 }, y: length('limit'), text: label },
    },
  ];
}

/** Readings and the expected reading, on top of everything. */
export function readingLayers(theme: ChartTheme): Layer[] {
  return [
    {
      data: { name: 'expected' },
      mark: { type: 'rule', color: theme.hue, strokeWidth: 6, opacity: 0.75, aria: true },
      encoding: { x: hours, y: length('lower'), y2: { field: 'upper' }, description },
    },
    {
      data: { name: 'expected' },
      mark: { type: 'tick', orient: 'horizontal', width: 16, thickness: 2, color: theme.hue, aria: true },
      encoding: { x: hours, y: length('median'), description },
    },
    {
      data: { name: 'intervals' },
      mark: { type: 'rule', color: theme.ink, strokeWidth: 3, aria: true },
      encoding: { x: hours, y: length('lower'), y2: { field: 'upper' }, description },
    },
    {
      data: { name: 'left' },
      mark: {
        type: 'point',
        aria: true,
        shape: symbols.left,
        size: 90,
        fill: theme.paper,
        stroke: theme.ink,
        strokeWidth: 1.5,
        opacity: 1,
      },
      encoding: { x: hours, y: length('value'), description },
    },
    {
      data: { name: 'found' },
      mark: {
        type: 'point',
        aria: true,
        shape: symbols.found,
        size: 60,
        fill: theme.ink,
        stroke: theme.paper,
        strokeWidth: 1,
        opacity: 1,
      },
      encoding: { x: hours, y: length('value'), description },
    },
  ];
}
