import type { SisterFunnel } from '../analysis/sisters/types';
import { formatLevel, formatPercent, formatRate, rateUnit } from './format';
import { layersWithData } from './layersWithData';
import { axesPicture, titleAbove } from './pictureFrame';
import { symbols } from './symbols';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

export type FunnelMeasure = 'rate' | 'start';

const titles = { rate: 'own wear rate', start: 'own start level' } as const;

/**
 * Own values against how well each is known, the best known at the left, with the group's value and the 95 and 99.8 % limits
 * within which sisters keep; those outside are named.
 */
export function funnelPicture(
  funnel: SisterFunnel,
  measure: FunnelMeasure,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const written = measure === 'rate' ? formatRate : formatLevel;
  const units = funnel.units.flatMap((unit) =>
    unit.reason !== null
      ? []
      : [
          {
            unit: unit.unit,
            pick: `#${encodeURIComponent(unit.unit)}`,
            value: unit.value,
            sd: unit.sd,
            name: unit.outside === 'none' ? '' : unit.unit,
            outside: unit.outside !== 'none',
            hint: `${unit.unit}: ${written(unit.value, unit.sd)}${unit.outside === 'none' ? '' : `, outside the ${formatPercent(Number(unit.outside) / 100)} limits`}`,
          },
        ],
  );
  const drawn = layersWithData(layersOf(measure, theme, narrow), {
    limits: funnel.limits,
    centre: [{ centre: funnel.centre }],
    units: units.filter((unit) => !unit.outside),
    outside: units.filter((unit) => unit.outside),
  });
  return axesPicture(narrow ? 260 : 300, 40, theme, drawn);
}

function layersOf(measure: FunnelMeasure, theme: ChartTheme, narrow: boolean): Layer[] {
  const unit = measure === 'rate' ? rateUnit() : 'mm';
  const x = {
    field: 'sd',
    type: 'quantitative' as const,
    title: `${narrow ? '' : 'how well it is known: '}standard deviation, ${unit}`,
    scale: { zero: false, nice: false },
    axis: { grid: false, tickCount: 5 },
  };
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title: `${titles[measure]}, ${unit}`,
    scale: { zero: false, nice: true },
    axis: {
      ...titleAbove,
      tickCount: 6,
    },
  });
  const limit = (field: string, dash: number[]): Layer => ({
    data: { name: 'limits' },
    mark: { type: 'line', color: theme.muted, strokeWidth: 1.2, strokeDash: dash },
    encoding: { x, y: y(field) },
  });
  const point = {
    type: 'point' as const,
    shape: symbols.found,
    size: 60,
    stroke: theme.ink,
    strokeWidth: 1,
    opacity: 1,
    aria: true,
  };
  const encoding = {
    x,
    y: y('value'),
    description: { field: 'hint', type: 'nominal' as const },
    href: { field: 'pick', type: 'nominal' as const },
  };
  return [
    limit('lower95', [5, 4]),
    limit('upper95', [5, 4]),
    limit('lower998', [1, 0]),
    limit('upper998', [1, 0]),
    {
      data: { name: 'centre' },
      mark: { type: 'rule', color: theme.hue, strokeWidth: 2 },
      encoding: { y: y('centre') },
    },
    { data: { name: 'units' }, mark: { ...point, fill: theme.paper }, encoding },
    { data: { name: 'outside' }, mark: { ...point, fill: theme.ink, size: 80 }, encoding },
    {
      data: { name: 'outside' },
      mark: { type: 'text', align: 'left', dx: 8, fontWeight: 'bold' },
      encoding: { x, y: y('value'), text: { field: 'name', type: 'nominal' } },
    },
  ];
}
