import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Ajv from 'ajv';
import * as vega from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import type { ChartTheme } from '../../lib/charts/theme';

export const theme: ChartTheme = {
  paper: '#ffffff',
  ink: '#111111',
  muted: '#555555',
  grid: '#dddddd',
  accent: '#b3261e',
  hue: '#14497f',
  chance: ['#f1f3f5', '#d9e2ec', '#b9cbdd', '#8eadca', '#5c87b0', '#2f5f8f', '#0d2f57'],
  font: 'sans-serif',
};

const schemaFile = createRequire(import.meta.url).resolve('vega-lite/vega-lite-schema.json');
const validate = new Ajv({ strict: false, validateFormats: false, allowUnionTypes: true }).compile(
  JSON.parse(readFileSync(schemaFile, 'utf8')),
);

/** A logger that keeps every warning and error as text. */
function recordingLogger() {
  const complaints: string[] = [];
  const logger = {
    level: () => logger,
    warn: (...words: unknown[]) => {
      complaints.push(`warn: ${words.join(' ')}`);
      return logger;
    },
    error: (...words: unknown[]) => {
      complaints.push(`error: ${words.join(' ')}`);
      return logger;
    },
    info: () => logger,
    debug: () => logger,
  };
  return { logger, complaints };
}

/** Complaints of the Vega-Lite schema about a specification. */
export function schemaComplaints(spec: TopLevelSpec): readonly string[] {
  validate(spec);
  return (validate.errors ?? []).map((error) => `${error.instancePath} ${error.message}`);
}

/** Compiles and draws a specification, interpreted and without a screen; complaints are every warning on the way. */
export async function draw(spec: TopLevelSpec): Promise<{ svg: string; complaints: readonly string[] }> {
  const { logger, complaints } = recordingLogger();
  const compiled = compile(spec, { logger }).spec;
  const view = new vega.View(vega.parse(compiled, {}, { ast: true }), {
    expr: expressionInterpreter,
    logger,
    renderer: 'none',
  });
  const svg = await view.toSVG();
  view.finalize();
  return { svg, complaints };
}
