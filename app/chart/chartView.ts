import { parse, type Runtime, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile } from 'vega-lite';
import type { LayeredSpec } from '../../lib/charts/theme';

const runtimes = new Map<string, Runtime>();
const maximumRuntimes = 40;

/** The dataflow of a specification, compiled once per shape: data come afterwards. */
function runtimeOf(spec: LayeredSpec): Runtime {
  const datasets = Object.fromEntries(Object.keys(spec.datasets ?? {}).map((name) => [name, []]));
  const shape: LayeredSpec = { ...spec, datasets };
  const key = JSON.stringify(shape);
  const known = runtimes.get(key);
  if (known !== undefined) return known;
  const runtime = parse(compile(shape).spec, {}, { ast: true });
  if (runtimes.size >= maximumRuntimes) runtimes.clear();
  runtimes.set(key, runtime);
  return runtime;
}

/** A view of a specification with its data, evaluated without eval; it is not drawn yet. */
export function chartView(spec: LayeredSpec): View {
  const view = new View(runtimeOf(spec), { expr: expressionInterpreter, renderer: 'canvas', hover: false });
  for (const [name, rows] of Object.entries(spec.datasets ?? {})) view.data(name, rows as object[]);
  return view;
}
