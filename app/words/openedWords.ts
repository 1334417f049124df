import { formatDate } from '../../lib/charts/format';
import type { EngineState } from '../engine/engineState';
import { counted } from './counted';
import { capitalised } from './seriesName';
import { isDemoSite, siteFleetName } from './siteFleet';

/** Which data are open, and as of when, for the head of every page. */
export function openedWords(state: EngineState): { readonly data: string; readonly asOf: string } {
  const { fleet } = state;
  if (fleet === null)
    return { data: state.work === null ? 'nothing open' : 'opening', asOf: formatDate(null) };
  const data =
    fleet.source === 'own'
      ? `Your files: ${counted(fleet.files.length, 'file')}`
      : isDemoSite()
        ? 'Demo fleet: synthetic'
        : capitalised(siteFleetName());
  return { data, asOf: formatDate(fleet.asOf) };
}
