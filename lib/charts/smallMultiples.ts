import type { ChartedSeries } from '../analysis/drift/types';
import { formatCount, formatScore } from './format';
import { layersWithData } from './layersWithData';
import { rowPicture } from './pictureFrame';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

const cellHeight_px = 66;
/** Scores beyond this are drawn at the edge of their cell. */
const farthest = 6;
const inset = { left: 0.05, width: 0.9, middle: 0.58, half: 0.38 };

/** One unit's cell: its scores, and whether a signal of it is open. */
export interface Multiple {
  readonly series: ChartedSeries;
  readonly found: boolean;
}

/** Cells in a row. */
export function multiplesAcross(narrow: boolean): number {
  return narrow ? 3 : 8;
}

/** Height of the picture of so many cells, px. */
export function multiplesHeight_px(cells: number, narrow: boolean): number {
  return Math.ceil(cells / multiplesAcross(narrow)) * cellHeight_px + 8;
}

/**
 * All units of a series side by side on the same scales: forecast residuals over the same years, thresholds as accent rules,
 * those beyond them large; the cell of a unit with a signal is framed in ink.
 *
 * @param threshold of single residuals
 */
export function smallMultiples(
  multiples: readonly Multiple[],
  threshold: number | null,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const across = multiplesAcross(narrow);
  const dates = multiples.flatMap(({ series }) => series.readings.map(({ date }) => Date.parse(date)));
  const [from, to] = [
    dates.reduce((a, b) => Math.min(a, b), Number.MAX_SAFE_INTEGER),
    dates.reduce((a, b) => Math.max(a, b), 0),
  ];
  const cells = multiples.map((multiple, index) =>
    cellOf(multiple, index % across, Math.floor(index / across)),
  );
  const yOf = (row: number, z: number) =>
    row + inset.middle - (inset.half * Math.max(-farthest, Math.min(farthest, z))) / farthest;
  const points = multiples.flatMap(({ series }, index) => {
    const [column, row] = [index % across, Math.floor(index / across)];
    return series.readings.flatMap(({ date, z }) =>
      z === null
        ? []
        : [
            {
              x: column + inset.left + (inset.width * (Date.parse(date) - from)) / Math.max(1, to - from),
              y: yOf(row, z),
              beyond: threshold !== null && (z > threshold || (series.sides === 'both' && z < -threshold)),
            },
          ],
    );
  });
  const levels = cells.flatMap(({ column, row, sides }) =>
    threshold === null
      ? []
      : [threshold, ...(sides === 'both' ? [-threshold] : [])].map((z) => ({
          x: column + inset.left,
          x2: column + inset.left + inset.width,
          y: yOf(row, z),
        })),
  );
  const zeros = cells.map(({ column, row }) => ({
    x: column + inset.left,
    x2: column + inset.left + inset.width,
    y: yOf(row, 0),
  }));
  const rows = Math.max(1, Math.ceil(multiples.length / across));
  const drawn = layersWithData(layersOf(across, rows, theme), {
    zeros,
    levels,
    points: points.filter(({ beyond }) => !beyond),
    beyond: points.filter(({ beyond }) => beyond),
    framed: cells.filter(({ found }) => found),
    cells,
  });
  return rowPicture(rows * cellHeight_px, theme, drawn);
}

function cellOf({ series, found }: Multiple, column: number, row: number) {
  const last = series.readings.filter(({ z }) => z !== null).at(-1);
  return {
    column,
    row,
    x: column + 0.02,
    x2: column + 0.98,
    y: row + 0.04,
    y2: row + 0.98,
    sides: series.sides,
    found,
    name: found ? `${series.unit}, signal` : series.unit,
    pick: `#${encodeURIComponent(series.unit)}`,
    hint: `${series.unit}: ${formatCount(series.readings.length)} readings, last z ${formatScore(last?.z ?? null)}${found ? ', with a signal' : ''}`,
  };
}

function layersOf(across: number, rows: number, theme: ChartTheme): Layer[] {
  const x = (field: string) => ({
    field,
    type: 'quantitative' as const,
    scale: { domain: [0, across], nice: false },
    axis: null,
  });
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    scale: { domain: [rows, 0], nice: false },
    axis: null,
  });
  const box = { x: x('x'), x2: { field: 'x2' }, y: y('y'), y2: { field: 'y2' } };
  const wide = { x: x('x'), x2: { field: 'x2' }, y: y('y') };
  return [
    { data: { name: 'zeros' }, mark: { type: 'rule', color: theme.grid, strokeWidth: 1 }, encoding: wide },
    { data: { name: 'levels' }, mark: { type: 'rule', color: theme.accent, strokeWidth: 1 }, encoding: wide },
    {
      data: { name: 'points' },
      mark: { type: 'point', shape: 'circle', size: 12, fill: theme.ink, stroke: null, opacity: 1 },
      encoding: { x: x('x'), y: y('y') },
    },
    {
      data: { name: 'beyond' },
      mark: { type: 'point', shape: 'diamond', size: 90, fill: theme.ink, stroke: theme.paper, opacity: 1 },
      encoding: { x: x('x'), y: y('y') },
    },
    {
      data: { name: 'framed' },
      mark: { type: 'rect', fill: null, stroke: theme.ink, strokeWidth: 1.5 },
      encoding: box,
    },
    {
      data: { name: 'cells' },
      mark: { type: 'text', align: 'left', baseline: 'top', dx: 4, dy: 2, fontSize: 11 },
      encoding: { x: x('x'), y: y('y'), text: { field: 'name', type: 'nominal' } },
    },
    {
      data: { name: 'cells' },
      mark: { type: 'rect', color: theme.paper, opacity: 0, aria: true },
      encoding: {
        ...box,
        description: { field: 'hint', type: 'nominal' },
        href: { field: 'pick', type: 'nominal' },
      },
    },
  ];
}
