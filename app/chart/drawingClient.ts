import { type Remote, wrap } from 'comlink';
import type { DrawnPicture } from '../../lib/charts/drawSvg';
import type { LayeredSpec } from '../../lib/charts/theme';
import type { Drawing } from './drawing.worker';

let drawing: { readonly api: Remote<Drawing>; readonly failure: Promise<never> } | null = null;

/** One worker draws for all pictures; it is started with the first and anew after a failure. */
function worker() {
  if (drawing !== null) return drawing;
  const started = new Worker(new URL('./drawing.worker.ts', import.meta.url), { type: 'module' });
  const failure = new Promise<never>((_, reject) => {
    started.addEventListener('error', (event) => {
      event.preventDefault();
      started.terminate();
      drawing = null;
      // An error of its script comes with a message; a script that did not come has none.
      const what = event.message ? 'stopped' : 'could not be loaded: check the connection';
      reject(new Error(`the part of the page that draws ${what}`));
    });
  });
  failure.catch(() => {});
  drawing = { api: wrap<Drawing>(started), failure };
  return drawing;
}

/** Starts the worker, if it is not there, without anything to draw. */
export function startDrawing(): void {
  worker();
}

/** Draws a specification in the worker; rejects if it cannot be drawn or the worker stops. */
export function drawInWorker(spec: LayeredSpec, width_px: number): Promise<DrawnPicture> {
  const { api, failure } = worker();
  return Promise.race([api.drawPicture(spec, width_px), failure]);
}
