import { type FleetStripRow, fleetStripData, type TimeWindow } from './fleetStripData';
import { formatDate, monthPattern } from './format';
import { layersWithData } from './layersWithData';
import { rowEnds, rowPicture } from './pictureFrame';
import { symbols } from './symbols';
import { type ChartTheme, chanceSteps, type Layer, type LayeredSpec } from './theme';

const rowStep = 24;
const msPerMonth = 30.44 * 86_400_000;

function timeAxis(window: TimeWindow) {
  const short = (Date.parse(window.to) - Date.parse(window.from)) / msPerMonth < 24;
  return {
    orient: 'top' as const,
    title: `today, ${formatDate(window.from)}`,
    titleAnchor: 'start' as const,
    format: short ? monthPattern() : '%Y',
    tickCount: { interval: short ? ('month' as const) : ('year' as const), step: short ? 3 : 1 },
    labelOverlap: true,
    grid: true,
  };
}

function layersOf(window: TimeWindow, theme: ChartTheme): Layer[] {
  const unit = {
    field: 'unit',
    type: 'nominal' as const,
    sort: null,
    axis: null,
  };
  const scale = { type: 'utc' as const, nice: false };
  const time = { field: 'time', type: 'temporal' as const, scale, axis: timeAxis(window) };
  const color = {
    field: 'chance',
    type: 'quantitative' as const,
    scale: { type: 'threshold' as const, domain: [...chanceSteps], range: [...theme.chance] },
    legend: null,
  };
  // Drawn twice, paper under ink, so that a tick stands out from the strongest strip.
  const tick = { type: 'tick' as const, height: { band: 0.98 }, orient: 'vertical' as const, opacity: 1 };
  return [
    {
      data: { name: 'window' },
      mark: { type: 'rect', opacity: 0 },
      encoding: { x: { ...time, field: 'from' }, x2: { field: 'to' } },
    },
    {
      data: { name: 'segments' },
      mark: { type: 'rect', height: { band: 0.56 } },
      encoding: { y: unit, x: { ...time, field: 'from' }, x2: { field: 'to' }, color },
    },
    {
      data: { name: 'hatches' },
      mark: {
        type: 'point',
        shape: symbols.hatch,
        size: 90,
        stroke: theme.muted,
        strokeWidth: 1,
      },
      encoding: { y: unit, x: time },
    },
    {
      data: { name: 'overhauls' },
      mark: { ...tick, thickness: 5, color: theme.paper },
      encoding: { y: unit, x: time },
    },
    {
      data: { name: 'overhauls' },
      mark: { ...tick, thickness: 2, color: theme.ink },
      encoding: { y: unit, x: time },
    },
    {
      data: { name: 'lives' },
      mark: {
        type: 'point',
        shape: symbols.ratedLife,
        size: 340,
        stroke: theme.ink,
        strokeWidth: 2.5,
        opacity: 1,
      },
      encoding: { y: unit, x: time },
    },
    ...rowEnds(unit, theme, 'normal'),
  ];
}

/**
 * One row a unit, time to the right: a strip whose ink grows with the chance that the first limit is met by that
 * date (each quarter carries the chance at its end), planned overhauls as ticks, the end of the rated life as a
 * bracket, hatching where there is no forecast.
 */
export function fleetStrip(
  rows: readonly FleetStripRow[],
  window: TimeWindow,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  return rowPicture(
    Math.max(1, rows.length) * rowStep,
    theme,
    layersWithData(layersOf(window, theme), fleetStripData(rows, window, narrow)),
  );
}
