import { layersWithData } from './layersWithData';
import { axesPicture, titleAbove } from './pictureFrame';
import { symbols } from './symbols';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

/** One plotted value of a control chart. */
export interface PanelPoint {
  /** ISO date. */
  readonly date: string;
  readonly value: number;
  readonly stage: 'found' | 'left';
  /** Outside its limit. */
  readonly outside: boolean;
  readonly hint: string;
}

/** A curve over time: a limit that changes, a second statistic, or what was foretold. */
export interface PanelCurve {
  readonly kind: 'limit' | 'statistic';
  readonly points: readonly { readonly date: string; readonly value: number }[];
}

/** A level across the panel with its words. */
export interface PanelRule {
  readonly kind: 'limit' | 'centre';
  readonly value: number;
  readonly label: string;
}

/** One control chart over dates. */
export interface PanelInput {
  readonly title: string;
  readonly points: readonly PanelPoint[];
  /** Whether the points are joined, as those of a running statistic are. */
  readonly joined: boolean;
  readonly curves: readonly PanelCurve[];
  readonly rules: readonly PanelRule[];
  /** Values foretold, as ticks beside the points. */
  readonly foretold: readonly { readonly date: string; readonly value: number }[];
}

const curveNames = ['curve0', 'curve1', 'curve2', 'curve3'] as const;

/**
 * A control chart over dates: readings as found and as left told apart by shape, those outside filled and ringed, limits in the
 * accent, the centre as a faint rule.
 */
export function controlPanel(input: PanelInput, theme: ChartTheme, narrow: boolean): LayeredSpec {
  const timed = <T extends { readonly date: string }>(rows: readonly T[]) =>
    rows.map((row) => ({ ...row, time: Date.parse(row.date) }));
  const stageOf = (stage: PanelPoint['stage']) =>
    timed(input.points.filter((point) => point.stage === stage));
  const curves = Object.fromEntries(
    input.curves.slice(0, curveNames.length).map((curve, index) => [curveNames[index], timed(curve.points)]),
  );
  const drawn = layersWithData(layersOf(input, theme), {
    ...curves,
    all: input.joined ? timed(input.points) : [],
    rules: input.rules,
    foretold: timed(input.foretold),
    found: stageOf('found'),
    left: stageOf('left'),
    outside: timed(input.points.filter(({ outside }) => outside)),
  });
  return axesPicture(narrow ? 150 : 170, 14, theme, drawn);
}

function layersOf({ title, joined, curves }: PanelInput, theme: ChartTheme): Layer[] {
  const x = {
    field: 'time',
    type: 'temporal' as const,
    title: null,
    scale: { type: 'utc' as const, nice: false, padding: 12 },
    axis: {
      grid: false,
      format: '%Y',
      tickCount: { interval: 'year' as const, step: 2 },
      labelOverlap: true,
    },
  };
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title,
    scale: { zero: false, nice: true },
    axis: {
      ...titleAbove,
      tickCount: 4,
    },
  });
  const description = { field: 'hint', type: 'nominal' as const };
  const value = { x, y: y('value') };
  const point = { type: 'point' as const, stroke: theme.ink, strokeWidth: 1.2, opacity: 1, aria: true };
  return [
    ...curves.slice(0, curveNames.length).map(
      ({ kind }, index): Layer => ({
        data: { name: curveNames[index] ?? curveNames[0] },
        mark: {
          type: 'line',
          color: kind === 'limit' ? theme.accent : theme.ink,
          strokeWidth: 1.5,
          strokeDash: kind === 'limit' ? [1, 0] : [3, 2],
        },
        encoding: value,
      }),
    ),
    {
      data: { name: 'rules' },
      mark: { type: 'rule', strokeWidth: 1.5 },
      encoding: {
        y: y('value'),
        color: {
          field: 'kind',
          type: 'nominal',
          scale: { domain: ['limit', 'centre'], range: [theme.accent, theme.muted] },
          legend: null,
        },
      },
    },
    {
      data: { name: 'rules' },
      mark: { type: 'text', align: 'left', dx: 4, dy: -7, color: theme.muted, fontSize: 11 },
      encoding: { x: { value: 0 }, y: y('value'), text: { field: 'label', type: 'nominal' } },
    },
    ...(joined
      ? [
          {
            data: { name: 'all' },
            mark: { type: 'line', color: theme.ink, strokeWidth: 1 },
            encoding: value,
          } satisfies Layer,
        ]
      : []),
    {
      data: { name: 'foretold' },
      mark: { type: 'tick', orient: 'horizontal', width: 14, thickness: 2, color: theme.hue, opacity: 1 },
      encoding: value,
    },
    {
      data: { name: 'outside' },
      mark: { type: 'point', shape: 'circle', size: 260, stroke: theme.accent, strokeWidth: 2, opacity: 1 },
      encoding: value,
    },
    {
      data: { name: 'left' },
      mark: { ...point, shape: symbols.left, size: 70, fill: theme.paper },
      encoding: { ...value, description },
    },
    {
      data: { name: 'found' },
      mark: { ...point, shape: symbols.found, size: 45, fill: theme.ink },
      encoding: { ...value, description },
    },
  ];
}
