import { parse, type Runtime, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile } from 'vega-lite';
import type { LayeredSpec } from '../../lib/charts/theme';
import { nextTask } from './nextTask';

const runtimes = new Map<string, Runtime>();
const maximumRuntimes = 40;

/** The specification without its data, and the key that tells its dataflow from others. */
function shapeOf(spec: LayeredSpec): { readonly shape: LayeredSpec; readonly key: string } {
  const datasets = Object.fromEntries(Object.keys(spec.datasets ?? {}).map((name) => [name, []]));
  const shape: LayeredSpec = { ...spec, datasets };
  return { shape, key: JSON.stringify(shape) };
}

function remember(key: string, runtime: Runtime): Runtime {
  if (runtimes.size >= maximumRuntimes) runtimes.clear();
  runtimes.set(key, runtime);
  return runtime;
}

/** The dataflow of a specification, compiled once per shape: data come afterwards. */
function runtimeOf(spec: LayeredSpec): Runtime {
  const { shape, key } = shapeOf(spec);
  return runtimes.get(key) ?? remember(key, parse(compile(shape).spec, {}, { ast: true }));
}

/** Compiles a specification in steps between which the page can answer, so that drawing it later takes no long task. */
export async function prepareChart(spec: LayeredSpec): Promise<void> {
  const { shape, key } = shapeOf(spec);
  if (runtimes.has(key)) return;
  await nextTask();
  const compiled = compile(shape).spec;
  await nextTask();
  remember(key, parse(compiled, {}, { ast: true }));
  await nextTask();
}

/** A view of a specification with its data, evaluated without eval; it is not drawn yet. */
export function chartView(spec: LayeredSpec): View {
  const view = new View(runtimeOf(spec), { expr: expressionInterpreter, renderer: 'canvas', hover: false });
  for (const [name, rows] of Object.entries(spec.datasets ?? {})) view.data(name, rows as object[]);
  return view;
}
