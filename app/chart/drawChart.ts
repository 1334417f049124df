import type { View } from 'vega';
import type { ChartTheme, LayeredSpec } from '../../lib/charts/theme';
import { chartView } from './chartView';

/** Makes the specification for a theme, and for a box too narrow for long words. */
export type BuildSpec = (theme: ChartTheme, narrow: boolean) => LayeredSpec;

export interface ChartOptions {
  readonly theme: ChartTheme;
  /** Width in px to draw at; null follows the box. */
  readonly width: number | null;
  readonly onPick: (datum: unknown) => void;
}

const narrowBelow = 600;

function drawnView(element: HTMLElement, spec: LayeredSpec, width: number, options: ChartOptions): View {
  const view = chartView(spec);
  // A holder of its own: the view writes roles and labels of its own onto the element it is given.
  const holder = document.createElement('div');
  holder.ariaHidden = 'true';
  element.replaceChildren(holder);
  view.width(width).initialize(holder).run();
  view.addEventListener('click', (_, item) => options.onPick(item?.datum));
  return view;
}

/** Draws a chart into an element and keeps it as wide as its box; the returned function takes it away. */
export function drawChart(element: HTMLElement, build: BuildSpec, options: ChartOptions): () => void {
  const widthNow = () => Math.max(200, Math.floor(options.width ?? element.clientWidth));
  let narrow = widthNow() < narrowBelow;
  let view = drawnView(element, build(options.theme, narrow), widthNow(), options);
  let drawnWidth = widthNow();
  const observer = new ResizeObserver(() => {
    const width = widthNow();
    if (width === drawnWidth) return;
    drawnWidth = width;
    if (width < narrowBelow !== narrow) {
      narrow = width < narrowBelow;
      view.finalize();
      view = drawnView(element, build(options.theme, narrow), width, options);
    } else {
      view.width(width).run();
    }
  });
  observer.observe(element);
  return () => {
    observer.disconnect();
    view.finalize();
    element.replaceChildren();
  };
}
