import { heldRowsCsv } from '../../records/decisions/heldRowsCsv';
import type { Connector } from '../../store/Connector';
import { everyProblem, listedProblems } from '../../store/importReport';

/** Every held row and cell of a set of records as CSV; none if nothing is open. */
export async function heldCsv(connector: Connector | undefined): Promise<string> {
  return heldRowsCsv(connector === undefined ? [] : await listedProblems(connector, everyProblem, true));
}
