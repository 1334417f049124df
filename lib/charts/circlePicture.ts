import type { CircleSet, ClearanceCircles, ClockPositions } from '../analysis/circle/types';
import { circleLayers } from './circleLayers';
import { formatLength, formatMm, formatSignificant } from './format';
import { layersWithData } from './layersWithData';
import { type ChartTheme, chartConfig, type LayeredSpec, schema } from './theme';

/** The casing's radius in the picture, and the part of it that the largest gap takes. */
const casing = 1;
const largestShare = 0.62;
const steps = 96;
const diagonals = [1, 3, 5, 7].map((eighth) => (eighth * Math.PI) / 4);
/** Where the bar lies, under the hours. */
const barHeight = -1.25;
/** Picture's half width, in radii of the casing. */
const reach = 1.3;
/** A pixel of a page or a print, mm. */
const pixel_mm = 25.4 / 96;
/** How far inwards of its point a reading is written, beside and above or below it, in radii of the casing. */
const inwards = { beside: 0.2, above: 0.11 } as const;
/** The limit of the largest gap is named within its circle, below the readings at 3 and 9. */
const largestName = { x: 0, y: -0.14 } as const;
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

/** How much longer than it is a gap is drawn. */
export function gapFactor(perMm: number, size_px: number): number {
  return (perMm * size_px * pixel_mm) / (2 * reach);
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
              ...labelPlace(at(value, angle)),
              hint: `${words}, ${name} o’clock: ${formatMm(value)}`,
              text: formatLength(value),
            },
          ];
    });
  const arrows = arrowsOf(before?.positions ?? null, now.positions, at);
  const bar_mm = circleScale_mm(circles, shown) > 0.6 ? 0.5 : 0.2;
  const size = narrow ? 320 : 400;
  const { largest_mm, smallest_mm } = circles;
  const { layer, datasets } = layersWithData(circleLayers(theme, reach), {
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
    limitNames: [
      ...(largest_mm === null ? [] : [{ ...largestName, text: `largest ${formatMm(largest_mm)}` }]),
      // Halfway between its circle and the casing.
      ...(smallest_mm === null
        ? []
        : [{ ...at(smallest_mm / 2, Math.PI), text: `smallest ${formatMm(smallest_mm)}` }]),
    ],
    bar: [
      {
        x: -1.2,
        x2: -1.2 + perMm * bar_mm,
        y: barHeight,
        y2: barHeight,
        end: -1.16 + perMm * bar_mm,
        text: `${formatMm(bar_mm)}: gaps drawn about ${formatSignificant(gapFactor(perMm, size), 2)} times their size`,
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

/** Where a reading is written: inwards of its point, clear of what was left before. */
function labelPlace({ x, y }: { readonly x: number; readonly y: number }) {
  const upright = Math.abs(y) > Math.abs(x);
  return {
    labelX: upright ? x : x - Math.sign(x) * inwards.beside,
    labelY: upright ? y - Math.sign(y) * inwards.above : y,
  };
}

type Place = (gap_mm: number, angle: number) => { readonly x: number; readonly y: number };

/** Changes of the gap between the clock positions, from as left before to now; those too small to be seen are left out. */
function arrowsOf(before: ClockPositions | null, now: ClockPositions | null, at: Place) {
  if (before === null || now === null) return [];
  return diagonals.flatMap((angle) => {
    const [from, to] = [at(gapAt(before, angle), angle), at(gapAt(now, angle), angle)];
    if (Math.hypot(to.x - from.x, to.y - from.y) < leastArrow) return [];
    const opens = gapAt(now, angle) > gapAt(before, angle);
    const turn = (angle * 180) / Math.PI + (opens ? 180 : 0);
    return [{ ...from, x2: to.x, y2: to.y, turn }];
  });
}
