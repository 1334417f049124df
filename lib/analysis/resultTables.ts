import { signalsTable, sistersTable } from './comparisonTables';
import { defaultSparesSettings } from './demand/sparesOf';
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
import { sisterGroups } from './sisters/sisterGroups';

/** Every table of results of an open fleet, with the settings that its pages start with: what the batch command writes. */
export async function resultTables(answers: FleetAnswers): Promise<readonly ResultTable[]> {
  const { fleet, fits } = answers.analysis;
  const spares = await answers.spares(defaultSparesSettings);
  return [
    fitsTable(fleet),
    marginsTable(fleet),
    sistersTable(sisterGroups(fits.values())),
    signalsTable(await answers.drift(usualDriftSettings)),
    demandTable(spares),
    ordersTable(spares),
    problemsTable(fleet),
  ];
}
