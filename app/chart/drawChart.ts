import type { View } from 'vega';
import type { ChartTheme, LayeredSpec } from '../../lib/charts/theme';
import { chartView, prepareChart } from './chartView';
import { nextTask } from './nextTask';

/** Makes the specification for a theme, and for a box too narrow for long words. */
export type BuildSpec = (theme: ChartTheme, narrow: boolean) => LayeredSpec;

export interface ChartOptions {
  readonly theme: ChartTheme;
  /** Width in px to draw at; null follows the box. */
  readonly width: number | null;
  readonly onPick: (datum: unknown) => void;
  /** Called if the picture cannot be drawn after all. */
  readonly onFailure: (error: unknown) => void;
}

const narrowBelow = 600;

/** Puts a view that is built into the element and draws it. */
function place(view: View, element: HTMLElement, width: number, options: ChartOptions): void {
  // A holder of its own: the view writes roles and labels of its own onto the element it is given.
  const holder = document.createElement('div');
  holder.ariaHidden = 'true';
  element.replaceChildren(holder);
  view.width(width).initialize(holder).run();
  view.addEventListener('click', (_, item) => options.onPick(item?.datum));
}

/**
 * Draws a chart into an element and keeps it as wide as its box; the returned function takes it away. A chart that follows
 * its box is prepared in steps first; one of a given width, for paper, is drawn at once.
 */
export function drawChart(element: HTMLElement, build: BuildSpec, options: ChartOptions): () => void {
  const widthNow = () => Math.max(200, Math.floor(options.width ?? element.clientWidth));
  let narrow = widthNow() < narrowBelow;
  let view: View | null = null;
  let drawnWidth = 0;
  let latest = 0;
  const draw = () => {
    const spec = build(options.theme, narrow);
    const turn = ++latest;
    const show = (next: View) => {
      view?.finalize();
      view = next;
      drawnWidth = widthNow();
      place(next, element, drawnWidth, options);
    };
    if (options.width !== null) {
      show(chartView(spec));
      return;
    }
    const inSteps = async () => {
      await prepareChart(spec);
      if (turn !== latest) return;
      const next = chartView(spec);
      await nextTask();
      if (turn === latest) show(next);
      else next.finalize();
    };
    inSteps().catch(options.onFailure);
  };
  const observer = new ResizeObserver(() => {
    const width = widthNow();
    if (width === drawnWidth || view === null) return;
    if (width < narrowBelow !== narrow) {
      narrow = width < narrowBelow;
      draw();
    } else {
      drawnWidth = width;
      view.width(width).run();
    }
  });
  draw();
  observer.observe(element);
  return () => {
    latest = Number.POSITIVE_INFINITY;
    observer.disconnect();
    view?.finalize();
    element.replaceChildren();
  };
}
