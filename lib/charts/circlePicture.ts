import type { CircleSet, ClearanceCircles, ClockPositions } from '../analysis/circle/types';
import { formatLength, formatMm } from './format';
import { layersWithData } from './layersWithData';
import { type ChartTheme, chartConfig, type Layer, type LayeredSpec, schema } from './theme';

/** The casing's radius in the picture, and the part of it that the largest gap takes. */
const casing = 1;
const largestShare = 0.62;
const steps = 96;
const diagonals = [1, 3, 5, 7].map((eighth) => (eighth * Math.PI) / 4);
/** Picture's half width, in radii of the casing. */
const reach = 1.25;
/** A pixel of a page or a print, mm. */
const pixel_mm = 25.4 / 96;
/** Where limits are named: between the positions and clear of the arrows. */
const nameAngle = (3 * Math.PI) / 8;
/** Changes below this part of the casing's radius are no arrows. */
const leastArrow = 0.02;
const clock = [
  { name: '12', key: 'c12', angle: 0 },
  { name: '3', key: 'c3', angle: Math.PI / 2 },
  { name: '6', key: 'c6', angle: Math.PI },
  { name: '9', key: 'c9', angle: (3 * Math.PI) / 2 },
] as const;

/** Gap at an angle clockwise from 12 o'clock, mm. */
function gapAt({ mean_mm, horizontal_mm, vertical_mm, ovality_mm }: ClockPositions, angle: number): number {
  return (
    mean_mm +
    vertical_mm * Math.cos(angle) +
    horizontal_mm * Math.sin(angle) +
    ovality_mm * Math.cos(2 * angle)
  );
}

/** Largest gap that the picture must hold, mm. */
export function circleScale_mm(circles: ClearanceCircles, shown: readonly CircleSet[]): number {
  const read = shown.flatMap(({ readings }) => Object.values(readings).flatMap((value) => value ?? []));
  const limits = [circles.largest_mm, circles.smallest_mm].flatMap((limit) => limit ?? []);
  return Math.max(...read, ...limits, 0.001);
}

/** How much longer than it is a gap is drawn, rounded to two digits. */
export function gapFactor(perMm: number, size_px: number): number {
  return Number(((perMm * size_px * pixel_mm) / (2 * reach)).toPrecision(2));
}

/**
 * The gap round the circle, seen from the compressor end: the casing as a circle, the rotor's outline inside it at the gap read,
 * as left before dashed, now solid, arrows of the change between the positions, limits as accent circles with their
 * names. Gaps are on one scale, drawn many times their size, which a bar and a factor state; the diameter is on none.
 *
 * @param before as left at the opening before; null if there is none
 */
export function circlePicture(
  circles: ClearanceCircles,
  before: CircleSet | null,
  now: CircleSet,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const shown = [now, ...(before === null ? [] : [before])];
  const perMm = largestShare / circleScale_mm(circles, shown);
  const at = (gap_mm: number, angle: number) => {
    const radius = casing - perMm * gap_mm;
    return { x: radius * Math.sin(angle), y: radius * Math.cos(angle) };
  };
  const ring = (gap: (angle: number) => number) =>
    Array.from({ length: steps + 1 }, (_, step) => {
      const angle = (2 * Math.PI * step) / steps;
      return { step, ...at(gap(angle), angle) };
    });
  const outline = (set: CircleSet | null) =>
    set?.positions == null ? [] : ring((angle) => gapAt(set.positions as ClockPositions, angle));
  const limit = (value: number | null) => (value === null ? [] : ring(() => value));
  const readingsOf = (set: CircleSet | null, words: string) =>
    clock.flatMap(({ name, key, angle }) => {
      const value = set?.readings[key] ?? null;
      return value === null
        ? []
        : [
            {
              ...at(value, angle),
              hint: `${words}, ${name} o’clock: ${formatMm(value)}`,
              text: formatLength(value),
            },
          ];
    });
  const arrows = arrowsOf(before?.positions ?? null, now.positions, at);
  const bar_mm = circleScale_mm(circles, shown) > 0.6 ? 0.5 : 0.2;
  const size = narrow ? 320 : 400;
  const limitName = (words: string, value: number | null) =>
    value === null ? [] : [{ ...at(value, nameAngle), text: `${words} ${formatMm(value)}` }];
  const { layer, datasets } = layersWithData(layersOf(theme), {
    casing: ring(() => 0),
    largest: limit(circles.largest_mm),
    smallest: limit(circles.smallest_mm),
    before: outline(before),
    now: outline(now),
    arrows,
    beforePoints: readingsOf(before, 'as left before'),
    nowPoints: readingsOf(now, now.stage === 'found' ? 'as found' : 'as left'),
    hours: clock.map(({ name, angle }) => ({
      x: 1.12 * Math.sin(angle),
      y: 1.12 * Math.cos(angle),
      text: name,
    })),
    limitNames: [...limitName('largest', circles.largest_mm), ...limitName('smallest', circles.smallest_mm)],
    bar: [
      {
        x: -1.2,
        x2: -1.2 + perMm * bar_mm,
        y: -1.18,
        y2: -1.18,
        text: `${formatMm(bar_mm)}: gaps drawn about ${gapFactor(perMm, size)} times their size`,
      },
    ],
  });
  return {
    $schema: schema,
    config: chartConfig(theme),
    width: size,
    height: size,
    autosize: { type: 'pad' },
    padding: 4,
    datasets,
    layer,
  };
}

type Place = (gap_mm: number, angle: number) => { readonly x: number; readonly y: number };

/** Changes of the gap between the clock positions, from as left before to now; those too small to be seen are left out. */
function arrowsOf(before: ClockPositions | null, now: ClockPositions | null, at: Place) {
  if (before === null || now === null) return [];
  return diagonals.flatMap((angle) => {
    const [from, to] = [at(gapAt(before, angle), angle), at(gapAt(now, angle), angle)];
    if (Math.hypot(to.x - from.x, to.y - from.y) < leastArrow) return [];
    const inwards = gapAt(now, angle) > gapAt(before, angle);
    const turn = (angle * 180) / Math.PI + (inwards ? 180 : 0);
    return [{ ...from, x2: to.x, y2: to.y, turn }];
  });
}

function layersOf(theme: ChartTheme): Layer[] {
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
      mark: { type: 'text', dy: -11, stroke: theme.paper, strokeWidth: 4 },
      encoding: { x, y, text },
    },
    { data: { name: 'nowPoints' }, mark: { type: 'text', dy: -11 }, encoding: { x, y, text } },
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
    { data: { name: 'bar' }, mark: { type: 'text', align: 'left', dy: -9 }, encoding: { x, y, text } },
  ];
}
