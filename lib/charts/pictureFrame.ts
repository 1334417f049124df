import { type ChartTheme, chartConfig, type Layer, type LayeredSpec, schema } from './theme';

type Drawn = Pick<LayeredSpec, 'layer' | 'datasets'>;

/** A picture of rows of a fixed height: as wide as its box, its own padding round it. */
export function rowPicture(height: number, theme: ChartTheme, drawn: Drawn): LayeredSpec {
  return {
    $schema: schema,
    config: chartConfig(theme),
    width: 600,
    height,
    autosize: { type: 'fit-x', contains: 'padding' },
    padding: 4,
    ...drawn,
  };
}

/** A picture with axes that fits its box, with room above for the title of its upright axis. */
export function axesPicture(height: number, right: number, theme: ChartTheme, drawn: Drawn): LayeredSpec {
  return {
    $schema: schema,
    config: chartConfig(theme),
    width: 600,
    height,
    autosize: { type: 'fit', contains: 'padding' },
    padding: { left: 4, top: 22, bottom: 4, right },
    ...drawn,
  };
}

/** The title of an upright axis, written level above it. */
export const titleAbove = {
  titleAngle: 0,
  titleAlign: 'left' as const,
  titleAnchor: 'end' as const,
  titleX: 0,
  titleY: -12,
};

interface RowChannel {
  readonly field: string;
  readonly type: 'nominal';
  readonly sort: null;
  readonly axis: null;
}

/**
 * Names at the left of rows, notes at their right, and on top of all the whole row, which says its finding and stands for its
 * unit; from `rows` with unit, note, hint and pick.
 */
export function rowEnds(unit: RowChannel, theme: ChartTheme, noteWeight: 'normal' | 'bold'): Layer[] {
  const href = { field: 'pick', type: 'nominal' as const };
  return [
    {
      data: { name: 'rows' },
      mark: { type: 'text', align: 'right', dx: -6, limit: 110 },
      encoding: { y: unit, x: { value: 0 }, text: { field: 'unit', type: 'nominal' }, href },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'text', align: 'left', dx: 8, fontWeight: noteWeight },
      encoding: { y: unit, x: { value: 'width' }, text: { field: 'note', type: 'nominal' }, href },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'rect', color: theme.paper, opacity: 0, aria: true },
      encoding: {
        y: unit,
        x: { value: 0 },
        x2: { value: 'width' },
        description: { field: 'hint', type: 'nominal' },
        href,
      },
    },
  ];
}
