import type { SparesSettings } from '../../lib/analysis/demand/types';
import type { FleetResult } from '../../lib/analysis/types';

/** What a panel needs to show the plan and to change the address. */
export interface PlanPanelProps {
  readonly fleet: FleetResult;
  readonly settings: SparesSettings;
  readonly query: URLSearchParams;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}
