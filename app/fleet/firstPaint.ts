import type { FleetResult } from '../../lib/analysis/types';
import { drawSvg } from '../../lib/charts/drawSvg';
import { lighterSvg } from '../../lib/charts/lighterSvg';
import { type ChartTheme, chanceSteps } from '../../lib/charts/theme';
import { fleetRemarks, fleetSentence } from '../words/fleetSentence';
import { everything, fleetRows } from './fleetRows';
import { pictureOf, pictureWindow, rowsPerPicture } from './pictureOf';

/** The Fleet page's answer as a page can carry it before any script has run. */
export interface FirstPaint {
  readonly sentence: string;
  readonly remarks: readonly string[];
  /** SVG text for windows of usual width and for narrow ones; its colours are the style sheet's variables. */
  readonly wide: string;
  readonly narrow: string;
}

/** Width of the content in a window of 1366 px and in one of 390 px. */
const wide_px = 1318;
const narrow_px = 358;

/** Colours by name: the style sheet says what they are, in the dark too. */
const theme: ChartTheme = {
  paper: 'var(--paper)',
  ink: 'var(--ink)',
  muted: 'var(--muted)',
  grid: 'var(--rule-faint)',
  accent: 'var(--limit)',
  hue: 'var(--hue)',
  chance: [...chanceSteps, 1].map((_, step) => `var(--chance-${step})`),
  font: 'var(--font)',
};

/** What the Fleet page shows first of a fleet, nothing filtered. */
export async function firstPaint(fleet: FleetResult): Promise<FirstPaint> {
  const rows = fleetRows(fleet, everything);
  const build = pictureOf(fleet, rows.slice(0, rowsPerPicture), pictureWindow(fleet, rows));
  return {
    sentence: fleetSentence(rows, false),
    remarks: fleetRemarks(rows),
    wide: lighterSvg(await drawSvg(build(theme, false), wide_px)),
    narrow: lighterSvg(await drawSvg(build(theme, true), narrow_px)),
  };
}
