import { parse, type Runtime, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile } from 'vega-lite';
import { type Plot, plotOf } from './plotOf';
import type { LayeredSpec } from './theme';
import { xmlText } from './xmlText';

const runtimes = new Map<string, Runtime>();
const maximumRuntimes = 40;

/** The dataflow of a specification, compiled once per shape without eval: data come afterwards. */
function runtimeOf(spec: LayeredSpec): Runtime {
  const datasets = Object.fromEntries(Object.keys(spec.datasets ?? {}).map((name) => [name, []]));
  const shape = { ...spec, datasets };
  const key = JSON.stringify(shape);
  const known = runtimes.get(key);
  if (known !== undefined) return known;
  if (runtimes.size >= maximumRuntimes) runtimes.clear();
  const runtime = parse(compile(shape).spec, {}, { ast: true });
  runtimes.set(key, runtime);
  return runtime;
}

export interface DrawnPicture {
  readonly svg: string;
  /** Null for a picture that has no two straight axes. */
  readonly plot: Plot | null;
}

/** Draws as SVG text as `drawSvg` does, and says what lies where on its axes. */
export async function drawPicture(spec: LayeredSpec, width_px: number | null = null): Promise<DrawnPicture> {
  const view = new View(runtimeOf(spec), { expr: expressionInterpreter, renderer: 'none', hover: false });
  try {
    for (const [name, rows] of Object.entries(spec.datasets ?? {})) view.data(name, rows as object[]);
    if (width_px !== null && !keepsSize(spec)) view.width(width_px);
    return { svg: xmlText(await view.toSVG()), plot: plotOf(view) };
  } finally {
    view.finalize();
  }
}

/**
 * Draws a specification as SVG text, `width_px` wide in place of the width that it states if one is given; one that is padded
 * to its own size keeps it.
 * A mark's description becomes its aria-label, its href a link round it; a character that XML cannot hold becomes U+FFFD.
 */
export async function drawSvg(spec: LayeredSpec, width_px: number | null = null): Promise<string> {
  return (await drawPicture(spec, width_px)).svg;
}

/** A picture whose shape matters, such as a circle, is not stretched to its box. */
function keepsSize({ autosize }: LayeredSpec): boolean {
  return typeof autosize === 'object' && autosize.type === 'pad';
}
