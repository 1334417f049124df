import type { Config, TopLevelSpec } from 'vega-lite';
import { numberStyles, writingInForce } from './writingStyle';

/** Colours and font that a chart is drawn with, as the page's style sheet gives them. */
export interface ChartTheme {
  readonly paper: string;
  readonly ink: string;
  readonly muted: string;
  readonly grid: string;
  /** The one accent: a limit. */
  readonly accent: string;
  /** The one hue: forecast and chance. */
  readonly hue: string;
  /** Chance of the steps of chanceSteps, from faint to strong. */
  readonly chance: readonly string[];
  readonly font: string;
}

/** The schema that every specification is written for. */
export const schema = 'https://vega.github.io/schema/vega-lite/v6.json';

export type LayeredSpec = Extract<TopLevelSpec, { layer: unknown }>;
export type Layer = LayeredSpec['layer'][number];

/** Upper ends of all but the last step of ink; a strip's ink changes where the chance passes one of them. */
export const chanceSteps: readonly number[] = [0.01, 0.05, 0.1, 0.25, 0.5, 0.9];

/** Words for each step of ink, faint to strong. */
export const chanceStepLabels: readonly string[] = [
  'under 1 %',
  '1 to 5 %',
  '5 to 10 %',
  '10 to 25 %',
  '25 to 50 %',
  '50 to 90 %',
  'over 90 %',
];

/** The frame that every chart shares: width from its box, ink on paper, no legend, faint rules, numbers in the style in force. */
export function chartConfig(theme: ChartTheme): Config {
  const text = { font: theme.font, fontSize: 12 };
  const { decimal, thousands } = numberStyles[writingInForce().numbers];
  return {
    locale: { number: { decimal, thousands, grouping: [3], currency: ['', ''], percent: '\u00a0%' } },
    background: theme.paper,
    font: theme.font,
    view: { stroke: null },
    // Only marks that ask for it say something of themselves; the others would recite their fields.
    mark: { aria: false },
    text: { ...text, color: theme.ink },
    axis: {
      labelFont: theme.font,
      labelFontSize: 12,
      labelColor: theme.ink,
      titleFont: theme.font,
      titleFontSize: 12,
      titleFontWeight: 'normal',
      titleColor: theme.muted,
      domainColor: theme.muted,
      tickColor: theme.muted,
      gridColor: theme.grid,
    },
  };
}
