import type { FleetResult } from '../../lib/analysis/types';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { fleetWindow, type TimeWindow } from '../../lib/charts/fleetStripData';
import type { BuildSpec } from '../chart/useDrawing';
import type { FleetRow } from './fleetRows';
import { hasDates, stripRows } from './stripRows';

/** Units in one picture on the screen. */
export const rowsPerPicture = 60;

/** The stretch of time that the pictures of a fleet share, whatever rows they show. */
export function pictureWindow(fleet: FleetResult, rows: readonly FleetRow[]): TimeWindow {
  const plans = rows.flatMap(({ unit }) => unit.plannedOverhauls.slice(-1));
  return fleetWindow(fleet.asOf, rows.some(hasDates) ? fleet.quarters : [], plans);
}

/** The picture of these rows, in their order; nothing is computed before it is drawn. */
export function pictureOf(fleet: FleetResult, rows: readonly FleetRow[], window: TimeWindow): BuildSpec {
  return (theme, narrow) => fleetStrip(stripRows(rows, fleet), window, theme, narrow);
}
