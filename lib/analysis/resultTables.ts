import { signalsTable, sistersTable } from './comparisonTables';
import { defaultSparesSettings } from './demand/defaultSparesSettings';
import { usualDriftSettings } from './drift/driftResult';
import type { FleetAnswers } from './engine/FleetAnswers';
import {
  demandTable,
  fitsTable,
  marginsTable,
  ordersTable,
  problemsTable,
  type ResultTable,
} from './fleetTables';
import { runsInStore } from './RunSource';
import { qOfSeries, sisterRatios } from './sisters/sisterRatios';

/**
 * Every table of results of an open fleet, with the settings that its pages start with: what the batch command writes. Signals
 * are read from the readings themselves, so there are none where these are elsewhere.
 */
export async function resultTables(answers: FleetAnswers): Promise<readonly ResultTable[]> {
  const { fleet, fits } = answers.analysis;
  const spares = await answers.spares(defaultSparesSettings);
  const ratios = sisterRatios(fits.values());
  const q = qOfSeries(ratios);
  return [
    fitsTable(fleet),
    marginsTable(fleet),
    sistersTable(ratios, (row) => q[row]),
    ...(answers.analysis.runs === runsInStore ? [signalsTable(await answers.drift(usualDriftSettings))] : []),
    demandTable(spares),
    ordersTable(spares),
    problemsTable(fleet),
  ];
}
