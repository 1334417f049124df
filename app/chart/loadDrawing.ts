import { nextTask } from './nextTask';

/** Loads the code that draws, part after part, so that no part's start-up makes the page wait long. */
export async function loadDrawing(): Promise<typeof import('./drawChart')> {
  await import('vega');
  await nextTask();
  await import('vega-lite');
  await nextTask();
  return import('./drawChart');
}
